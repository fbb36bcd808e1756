import type { Step } from './step.ts';

/** Every tool of these steps once, in the order it is first picked up. */
export function toolsOf(steps: readonly Step[]): string[] {
  return [...new Set(steps.flatMap((step) => step.tools))];
}
