import type { BenchworkModel } from '../../../src/core/benchwork/input.ts';
import { planSteps, type StepsAnswer, type StepsInput } from '../../../src/core/steps/plan.ts';
import type { WrittenStep } from '../../../src/core/steps/schema.ts';
import type { Step } from '../../../src/core/steps/step.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { model, PLY_9, PLY_18, table } from '../benchwork/example.ts';

export const MODEL: BenchworkModel = model(table([17.7]));

/** The demo table's steps with these written ones, benchwork's first. */
export function planned(
  benchwork: readonly WrittenStep[],
  others: Readonly<Record<string, readonly WrittenStep[]>> = {},
  more: Partial<StepsInput> = {},
): StepsAnswer {
  const chapters = Object.entries({ benchwork, ...others }).map(([chapter, steps]) => ({ chapter, steps }));
  return planSteps({
    parts: MODEL.parts,
    joints: MODEL.joints,
    frames: MODEL.benches,
    stock: [PLY_18, PLY_9],
    scope: {},
    chapters,
    ...more,
  });
}

export function stepNamed(answer: StepsAnswer, id: string): Step {
  const found = answer.steps.find((step) => step.id === id);
  if (found === undefined) throw new Error(`no step ${id} among ${answer.steps.map((step) => step.id).join(', ')}`);
  return found;
}

/** What a step says, lengths in mm as they are. */
export function words(step: Step): string {
  return step.lines.map((line) => spoken(line, (mm) => `${Math.round(mm * 1000) / 1000}`)).join('\n');
}

export function ids(answer: StepsAnswer): string[] {
  return answer.steps.map((step) => step.id);
}
