import { describe, expect, test } from 'vitest';
import { schedule } from '../../src/core/steps/schedule.ts';
import type { Step } from '../../src/core/steps/step.ts';
import published from './critical-path.json' with { type: 'json' };

function step(id: string, minutes: number, after: readonly string[]): Step {
  const words = { title: id, chapter: 'benchwork', generated: false, closes: null, child: 'watches', where: 'workshop' } as const;
  return { id, ...words, minutes, after, makes: [], tools: [], people: 1, wait: 0, cautions: [], lines: [] };
}

describe('the critical path of a published network', () => {
  const steps = published.activities.map(({ id, days, after }) => step(id, days, after));

  test('has its steps and its length', () => {
    const plan = schedule(steps, []);
    expect(plan.criticalMinutes).toBe(published.days);
    expect(plan.critical).toEqual(published.critical);
    expect(plan.ready).toEqual(['A', 'B']);
  });

  test('is short of what is done', () => {
    expect(schedule(steps, ['A', 'B', 'C', 'D']).criticalMinutes).toBe(11 + 7 + 6 + 5 + 30);
    expect(schedule(steps, steps.map((one) => one.id))).toMatchObject({ criticalMinutes: 0, critical: [], ready: [], minutesLeft: 0 });
  });

  test('takes waits in', () => {
    const waiting = steps.map((one) => (one.id === 'I' ? { ...one, wait: 100 } : one));
    expect(schedule(waiting, []).critical).toEqual(['A', 'C', 'G', 'I', 'K']);
    expect(schedule(waiting, []).waitLeft).toBe(100);
  });
});
