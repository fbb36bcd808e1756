import { describe, expect, test } from 'vitest';
import { stepContent } from '../../../src/core/steps/content.ts';
import type { WrittenStep } from '../../../src/core/steps/schema.ts';
import { toolsOf } from '../../../src/core/steps/tools.ts';
import { parseQuantity } from '../../../src/core/units/parse.ts';
import type { Quantity } from '../../../src/core/units/quantity.ts';
import { ids, planned, stepNamed, words } from './demo.ts';

function minutes(text: string): Quantity<'duration'> {
  const tree = parseQuantity(text, 'duration', { bare: null });
  if (!tree.ok) throw new Error(text);
  return { dimension: 'duration', text, tree: tree.value, at: 'benchwork.steps.0.wait' };
}

const RIP: WrittenStep = {
  id: 'rip-strips',
  do: 'Rip the frame strips',
  makes: ['side', 'end', 'strut'],
  with: ['table-saw'],
  minutes: 40,
};

describe('a written step', () => {
  test('takes over the roles it makes, with their numbers, and leaves the rest', () => {
    const answer = planned([RIP]);
    const own = stepNamed(answer, 'benchwork.rip-strips');
    expect(own.generated).toBe(false);
    expect(own.title).toBe('Rip the frame strips');
    expect(words(own)).toContain('strut: 4 pieces 135 wide, the longest 1576.4.');
    expect(own.makes).toContain('side.front');
    expect(stepNamed(answer, 'benchwork.rip').makes.every((id) => id.startsWith('flange'))).toBe(true);
    expect(stepNamed(answer, 'benchwork.crosscut').after).toEqual(['benchwork.rip', 'benchwork.rip-strips']);
  });

  test('that makes all roles of a generated step leaves nothing of it', () => {
    const answer = planned([{ ...RIP, makes: ['side', 'end', 'strut', 'flange-strip'] }]);
    expect(ids(answer)).not.toContain('benchwork.rip');
    expect(words(stepNamed(answer, 'benchwork.rip-strips'))).toContain('Fence at 170');
    expect(stepNamed(answer, 'benchwork.rip-strips').people).toBe(2);
  });

  test('takes over by instances, by kind of machining, or by the generated id', () => {
    const bySides = planned([{ id: 'sides', do: 'Rip the sides', makes: ['side.front', 'side.back'] }]);
    expect(words(stepNamed(bySides, 'benchwork.sides'))).toContain('side: 2 pieces 170 wide');
    const byWork = planned([{ id: 'machine', do: 'Rout', makes: ['rabbet', 'dado', 'lap'] }]);
    expect(words(stepNamed(byWork, 'benchwork.machine'))).toContain('Slots 18 wide and 67.9 deep.');
    expect(ids(byWork).filter((id) => id === 'benchwork.rout' || id === 'benchwork.slots')).toEqual([]);
    const byId = planned([{ id: 'rout', do: 'My way with the router' }]);
    expect(stepNamed(byId, 'benchwork.rout').generated).toBe(false);
    expect(words(stepNamed(byId, 'benchwork.rout'))).toContain('rabbet 5.9 deep');
  });

  test('inherits what the step it replaces waits for, and passes on what waits for it', () => {
    const answer = planned([{ id: 'machine', do: 'Rout', makes: ['rabbet', 'dado', 'lap'] }]);
    expect(stepNamed(answer, 'benchwork.machine').after).toContain('benchwork.crosscut');
    expect(stepNamed(answer, 'benchwork.table-dry-fit').after).toContain('benchwork.machine');
  });

  test("keeps its author's order even against the usual one", () => {
    const answer = planned([{ ...RIP, makes: ['side', 'end', 'strut', 'flange-strip'], after: ['crosscut'] }]);
    expect(answer.faults).toEqual([]);
    expect(ids(answer).indexOf('benchwork.rip-strips')).toBeGreaterThan(ids(answer).indexOf('benchwork.crosscut'));
  });

  test("waits for another chapter's step", () => {
    const answer = planned([{ id: 'cover', do: 'Close the box', after: ['wiring.test-feeders'] }], {
      wiring: [{ id: 'test-feeders', do: 'Test the feeders' }],
    });
    expect(stepNamed(answer, 'benchwork.cover').after).toEqual(['wiring.test-feeders']);
    expect(ids(answer).indexOf('benchwork.cover')).toBe(ids(answer).indexOf('wiring.test-feeders') + 1);
    expect(stepNamed(answer, 'wiring.test-feeders').where).toBe('room');
  });

  test('has its wait in minutes, and its caution by its tool', () => {
    const answer = planned([{ id: 'cast', do: 'Pour', with: ['plaster', 'resin'], wait: minutes('1 h 30 min') }]);
    const cast = stepNamed(answer, 'benchwork.cast');
    expect(cast.wait).toBe(90);
    expect(cast.cautions.map((caution) => caution.id)).toEqual(['resin', 'plaster']);
    expect(cast.child).toBe('away');
  });

  test('that gives a child a machine is told', () => {
    const answer = planned([{ id: 'saw', do: 'Saw', with: ['table-saw'], child: 'does alone' }]);
    expect(answer.findings).toMatchObject([{ rule: 'child-at-machine', level: 'care', where: 'benchwork.saw' }]);
    expect(planned([{ id: 'saw', do: 'Saw', with: ['table-saw'], child: 'watches' }]).findings).toEqual([]);
  });
});

describe('mistakes', () => {
  test('a name in after that no step has, with the nearest one', () => {
    const { faults, steps } = planned([
      { id: 'a', do: 'A' },
      { id: 'b', do: 'B', after: ['a', 'crosscutt'] },
    ]);
    expect(faults).toEqual([
      {
        rule: 'step-unknown',
        at: 'benchwork.steps.1.after.1',
        what: "no step is called 'crosscutt'",
        mend: "did you mean 'crosscut'?",
      },
    ]);
    expect(steps.map((step) => step.id)).toContain('benchwork.b');
  });

  test('a part that is none', () => {
    const { faults } = planned([{ id: 'a', do: 'A', makes: ['strutt'] }]);
    expect(faults).toMatchObject([
      { rule: 'step-makes', at: 'benchwork.steps.0.makes.0', mend: "did you mean 'strut'?" },
    ]);
  });

  test('two steps of one name', () => {
    expect(
      planned([
        { id: 'a', do: 'A' },
        { id: 'a', do: 'B' },
      ]).faults,
    ).toMatchObject([{ rule: 'step-duplicate', at: 'benchwork.steps.1.id' }]);
  });

  test('a ring of steps, over two chapters, names the ring and one place in it', () => {
    const { faults, steps } = planned(
      [
        { id: 'a', do: 'A', after: ['wiring.c'] },
        { id: 'b', do: 'B', after: ['a'] },
      ],
      { wiring: [{ id: 'c', do: 'C', after: ['benchwork.b'] }] },
    );
    expect(faults).toHaveLength(1);
    expect(faults[0]?.rule).toBe('step-cycle');
    expect(faults[0]?.at).toBe('wiring.steps.0.after.0');
    expect(faults[0]?.what).toContain('wiring.c after benchwork.b after benchwork.a after wiring.c');
    for (const id of ['benchwork.a', 'benchwork.b', 'wiring.c']) {
      expect(faults[0]?.what).toContain(id);
      expect(steps.map((step) => step.id)).toContain(id);
    }
  });

  test('a step that waits for itself', () => {
    expect(planned([{ id: 'a', do: 'A', after: ['a'] }]).faults).toMatchObject([
      { rule: 'step-cycle', at: 'benchwork.steps.0.after.0' },
    ]);
  });

  test('a long chain and a long ring end quickly', () => {
    const chain = Array.from(
      { length: 20_000 },
      (_, i): WrittenStep => ({ id: `s-${i}`, do: 'S', after: i === 0 ? [] : [`s-${i - 1}`] }),
    );
    expect(planned(chain).faults).toEqual([]);
    const ring = chain.map((step, i) => (i === 0 ? { ...step, after: ['s-19999'] } : step));
    expect(planned(ring).faults).toMatchObject([{ rule: 'step-cycle' }]);
    const strangers = chain.slice(0, 5000).map((step, i) => ({ ...step, after: [`stranger-${i}`] }));
    expect(planned(strangers).faults).toHaveLength(5000);
  });
});

describe('what a step says', () => {
  test('is one text as long as nothing it says changes', () => {
    const before = stepNamed(planned([RIP]), 'benchwork.rip-strips');
    const moved = stepNamed(planned([{ id: 'first', do: 'First' }, RIP]), 'benchwork.rip-strips');
    expect(stepContent(moved)).toBe(stepContent(before));
    const changed = stepNamed(planned([{ ...RIP, do: 'Rip them' }]), 'benchwork.rip-strips');
    expect(stepContent(changed)).not.toBe(stepContent(before));
  });

  test('the tools of a chapter, each once, as they are picked up', () => {
    const answer = planned([
      { id: 'a', do: 'A', with: ['caliper', 'pencil'] },
      { id: 'b', do: 'B', with: ['pencil', 'square'] },
    ]);
    expect(toolsOf(answer.steps.filter((step) => !step.generated))).toEqual(['caliper', 'pencil', 'square']);
  });
});
