import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StepsAnswer } from '../../src/core/steps/plan.ts';
import { schedule } from '../../src/core/steps/schedule.ts';
import type { Step } from '../../src/core/steps/step.ts';
import { planned, words } from '../core/steps/demo.ts';
import { type Chapters, randomSteps } from './random-steps.ts';

const RUNS = 1000;

type Sample = { readonly chapters: Chapters; readonly answer: StepsAnswer };
type Law = (sample: Sample) => readonly string[];

const samples: readonly Sample[] = fc.sample(randomSteps, { numRuns: RUNS, seed: 20261125 }).map((chapters) => ({
  chapters,
  answer: planned(chapters.benchwork, { wiring: chapters.wiring }),
}));
const valid = samples.filter(({ answer }) => answer.faults.length === 0);

const allLines = planned([])
  .steps.flatMap((step) => words(step).split('\n'))
  .sort();

const everyAfterComesBefore: Law = ({ answer }) => {
  const at = new Map(answer.steps.map((step, i) => [step.id, i]));
  return answer.steps.flatMap((step, i) =>
    step.after.filter((id) => (at.get(id) ?? Number.POSITIVE_INFINITY) >= i).map((id) => `${step.id} before ${id}`),
  );
};

/** What an author wrote after `after` is kept, by the step itself or by what stands for it. */
const authorsOrderHolds: Law = ({ chapters, answer }) => {
  const at = new Map(answer.steps.map((step, i) => [step.id, i]));
  return Object.entries(chapters).flatMap(([chapter, steps]) =>
    steps.flatMap((step) =>
      (step.after ?? [])
        .filter((id) => at.has(id) && (at.get(id) ?? 0) > (at.get(`${chapter}.${step.id}`) ?? 0))
        .map((id) => `${step.id} before ${id}`),
    ),
  );
};

const everyStepOnce: Law = ({ chapters, answer }) => {
  const ids = answer.steps.map((step) => step.id);
  const written = Object.entries(chapters).flatMap(([chapter, steps]) => steps.map((step) => `${chapter}.${step.id}`));
  const missing = written.filter((id) => !ids.includes(id));
  return [...missing, ...(new Set(ids).size === ids.length ? [] : ['a step comes twice'])];
};

const FENCE = /^Fence at (\S+) from (\S+): (\S+) of strip/;

/** Runs of strip by fence setting and stock, added up over the steps that share it; to a tenth. */
function runs(lines: readonly string[]): readonly string[] {
  const sums = new Map<string, number>();
  for (const line of lines) {
    const [, at, stock, run] = FENCE.exec(line) ?? [];
    if (run !== undefined) sums.set(`${at} ${stock}`, (sums.get(`${at} ${stock}`) ?? 0) + Number(run));
  }
  return [...sums].map(([key, run]) => `${key} ${run.toFixed(1)}`).sort();
}

/**
 * Whoever takes over a generated step takes its numbers: every sentence is said once, by somebody. A fence that two steps
 * set is said by both, each with its own run of strip, and the runs add up.
 */
const noNumberIsLost: Law = ({ answer }) => {
  const lines = answer.steps.flatMap((step) => words(step).split('\n')).filter((line) => line !== '');
  if (runs(lines).join('\n') !== runs(allLines).join('\n')) return ['the runs of strip do not add up'];
  const said = lines.filter((line) => !FENCE.test(line)).sort();
  const wanted = allLines.filter((line) => line !== '' && !FENCE.test(line));
  return said.join('\n') === wanted.join('\n') ? [] : [`${said.length} sentences for ${wanted.length}`];
};

/** The critical path is a chain of waits, as long as its steps, and no step alone is longer. */
const criticalPathIsAChain =
  (plan: typeof schedule): Law =>
  ({ answer }) => {
    const timed = answer.steps.map((step, i) => ({ ...step, minutes: (i % 5) * 10 }));
    const { critical, criticalMinutes } = plan(timed, []);
    const on = critical.map((id) => timed.find((step) => step.id === id));
    const length = on.reduce((sum, step) => sum + (step?.minutes ?? 0) + (step?.wait ?? 0), 0);
    const broken = on.slice(1).filter((step, i) => !step?.after.includes(critical[i] ?? ''));
    const longest = Math.max(0, ...timed.map((step) => (step.minutes ?? 0) + step.wait));
    return [
      ...broken.map((step) => `${step?.id} does not wait for the one before`),
      ...(length === criticalMinutes ? [] : [`${length} for ${criticalMinutes}`]),
      ...(criticalMinutes >= longest ? [] : ['shorter than its longest step']),
    ];
  };

function breaches(law: Law, list: readonly Sample[]): readonly string[] {
  return list.flatMap(law);
}

function tampered(change: (steps: readonly Step[]) => readonly Step[]): readonly Sample[] {
  return valid.map((sample) => ({ ...sample, answer: { ...sample.answer, steps: change(sample.answer.steps) } }));
}

describe('steps', () => {
  it('come from generators that give mostly valid plans', () => {
    console.info(`steps: ${valid.length} of ${samples.length} plans valid`);
    expect(valid.length / samples.length).toBeGreaterThan(0.7);
    expect(samples.length - valid.length).toBeGreaterThan(20);
  });

  it('come after what they wait for, rings or not', () => expect(breaches(everyAfterComesBefore, samples)).toEqual([]));
  it("keep their author's order", () => expect(breaches(authorsOrderHolds, valid)).toEqual([]));
  it('come each once', () => expect(breaches(everyStepOnce, samples)).toEqual([]));
  it('say every generated number once', () => expect(breaches(noNumberIsLost, samples)).toEqual([]));
  it('have a critical path that is a chain', () => expect(breaches(criticalPathIsAChain(schedule), valid)).toEqual([]));
  it('tell of every ring', () => {
    const rings = samples.filter(({ answer }) => answer.faults.length > 0);
    expect(rings.every(({ answer }) => answer.faults.some((fault) => fault.rule === 'step-cycle'))).toBe(true);
  });
});

describe('a planted fault is caught', () => {
  it('two steps swapped', () => {
    const swapped = tampered((steps) => [...steps].reverse());
    expect(breaches(everyAfterComesBefore, swapped).length).toBeGreaterThan(0);
    expect(breaches(authorsOrderHolds, swapped).length).toBeGreaterThan(0);
  });
  it('a step left out, or there twice', () => {
    expect(
      breaches(
        everyStepOnce,
        tampered((steps) => steps.filter((step) => step.generated)),
      ).length,
    ).toBeGreaterThan(0);
    expect(
      breaches(
        everyStepOnce,
        tampered((steps) => [...steps, ...steps.slice(0, 1)]),
      ).length,
    ).toBeGreaterThan(0);
  });
  it('a fence that a step keeps for strips another step rips', () => {
    const kept = tampered((steps) =>
      steps.map((step) => ({
        ...step,
        lines: [...step.lines, ...step.lines.filter((line) => /^Fence/.test(String(line[0])))],
      })),
    );
    expect(breaches(noNumberIsLost, kept).length).toBeGreaterThan(0);
  });
  it('a sentence lost on the way to its taker', () => {
    const lost = tampered((steps) =>
      steps.map((step) => (step.generated ? step : { ...step, lines: step.lines.slice(1) })),
    );
    expect(breaches(noNumberIsLost, lost).length).toBeGreaterThan(0);
  });
  it('a critical path that forgets waits, or a link', () => {
    const hurried: typeof schedule = (steps, done) => ({
      ...schedule(steps, done),
      criticalMinutes: schedule(
        steps.map((step) => ({ ...step, wait: 0 })),
        done,
      ).criticalMinutes,
    });
    const gap: typeof schedule = (steps, done) => {
      const plan = schedule(steps, done);
      return { ...plan, critical: plan.critical.filter((_, i) => i !== 1) };
    };
    expect(breaches(criticalPathIsAChain(hurried), valid).length).toBeGreaterThan(0);
    expect(breaches(criticalPathIsAChain(gap), valid).length).toBeGreaterThan(0);
  });
});
