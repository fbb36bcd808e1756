import { describe, expect, test } from 'vitest';
import type { Assembly, Placing } from '../../src/core/assembly/assembly.ts';
import { compute, type Notebook } from '../../src/core/notebook.ts';
import { putInBy } from '../../src/core/stages/assembly.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';

const files = await loadContent(new URL('../../content', import.meta.url).pathname);
const notebooks = readContent(files).plans.flatMap((plan): readonly Notebook[] => {
  const result = compute(plan);
  return result.ok ? [result.value] : [];
});

function orderOf({ poses, chosen }: Assembly): readonly Placing[] {
  return poses.find(({ pose }) => pose === chosen)?.order ?? [];
}

/** Pieces that the assembly puts in before one that an earlier step puts in. */
function tooEarly(order: readonly Placing[], steps: ReadonlyMap<string, number>): readonly string[] {
  const placed = order.filter(({ within }) => within === null).flatMap(({ parts }) => parts);
  return placed.filter((part, i) =>
    placed.slice(i + 1).some((later) => (steps.get(later) ?? 0) < (steps.get(part) ?? 0)),
  );
}

describe('the order of the assembly pages', () => {
  for (const { slug, assembly, steps } of notebooks) {
    test(`is the order of the steps in ${slug}, every piece once and every piece in a step`, () => {
      const putIn = putInBy(steps);
      for (const one of assembly) {
        const order = orderOf(one);
        expect(order.length).toBeGreaterThan(0);
        expect(tooEarly(order, putIn)).toEqual([]);
        const placed = order.filter(({ within }) => within === null).flatMap(({ parts }) => parts);
        expect(new Set(placed).size).toBe(placed.length);
        expect(placed.filter((part) => !putIn.has(part))).toEqual([]);
      }
    });
  }

  test('is not that of the steps once a step is moved to the front: the fault that shows this can fail', () => {
    const [basin] = notebooks;
    const deckFirst = basin?.steps.toSorted((a, b) => Number(b.id.endsWith('-deck')) - Number(a.id.endsWith('-deck')));
    expect(tooEarly(orderOf(basin?.assembly[0] ?? expect.fail('no bench')), putInBy(deckFirst ?? []))).toContain(
      'side.front',
    );
  });
});
