import { cautionsFor } from './cautions.ts';
import type { Step } from './step.ts';

/** The generated step after which there is power on the rails, by full id. */
export const POWER_ON = 'wiring.connect-supply';

/**
 * Steps in their order with the cautions that hang on the wiring: those of the wiring that wait for the supply have its
 * cautions, and wet work has its own only over wires, so not in the benchwork and not in a notebook without wiring.
 */
export function poweredSteps(steps: readonly Step[]): Step[] {
  const wired = steps.some(({ chapter }) => chapter === 'wiring');
  const live = waitersFor(POWER_ON, steps);
  return steps.map((step) => {
    const isLive = step.chapter === 'wiring' && live.has(step.id);
    const cautions = isLive ? cautionsFor(['power-supply'], step.cautions) : step.cautions;
    const dry = !wired || step.chapter === 'benchwork';
    return { ...step, cautions: dry ? cautions.filter(({ id }) => id !== 'wet-by-wires') : cautions };
  });
}

/** A step and those that wait for it, directly or through others. */
function waitersFor(first: string, inOrder: readonly Step[]): ReadonlySet<string> {
  const found = new Set([first]);
  for (const { id, after } of inOrder) if (after.some((one) => found.has(one))) found.add(id);
  return found;
}
