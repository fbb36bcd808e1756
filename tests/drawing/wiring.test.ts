import { describe, expect, it } from 'vitest';
import { compute } from '../../src/core/notebook.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import type { Mark } from '../../src/drawing/mark.ts';
import { type PaperName, papers } from '../../src/drawing/paper.ts';
import { textBox } from '../../src/drawing/text.ts';
import { clippedPath } from '../../src/drawing/wiring/bay-blocks.ts';
import { mirrored } from '../../src/drawing/wiring/mirrored.ts';
import { oneLineBlocks } from '../../src/drawing/wiring/one-line.ts';
import { wiringEntries } from '../../src/drawing/wiring/wiring-drawings.ts';
import { picture } from '../../src/drawing/wiring/wiring-plan.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { complaints } from './checker.ts';

const content = readContent(await loadWithShipped('content', 'content'));
const plan = content.plans.find(({ slug }) => slug === 'bittern-basin');
const answer = plan === undefined ? null : compute(plan);
if (answer === null || !answer.ok) throw new Error('the demo notebook does not compute');
const book = answer.value;
const wiring = book.wiring;
if (wiring === null) throw new Error('the demo notebook has no wiring');
const options = { unit: 'mm', paper: 'A3' } as const;
const above = picture({ book, wiring, options, scale: 10 });
const below = mirrored(above);

/** A mark's points or, for words, the middle of their box, as numbers in a fixed order. */
function places(mark: Mark): readonly (readonly [number, number])[] {
  switch (mark.kind) {
    case 'line':
      return [mark.from, mark.to];
    case 'polyline':
      return mark.points;
    case 'polygon':
      return mark.rings.flat();
    case 'circle':
    case 'arc':
      return [mark.centre];
    case 'text': {
      const { x0, x1, y0, y1 } = textBox(mark);
      return [[(x0 + x1) / 2, (y0 + y1) / 2]];
    }
  }
}

function unlike(marks: readonly Mark[]): readonly string[] {
  return above.marks.flatMap((mark, i) => {
    const other = marks[i];
    if (other === undefined || other.kind !== mark.kind) return [`${i}: another kind`];
    const [here, there] = [places(mark), places(other)];
    const same =
      here.length === there.length &&
      here.every(([x, y], k) => Math.abs(x + (there[k]?.[0] ?? Number.NaN)) < 1e-9 && y === there[k]?.[1]);
    const words = mark.kind !== 'text' || (other.kind === 'text' && other.text === mark.text);
    return same && words ? [] : [`${i}: a ${mark.role} ${mark.kind} is not mirrored`];
  });
}

describe('the wires from below', () => {
  it('are the exact mirror of the wires from above, their words readable', () => {
    expect(above.marks.length).toBeGreaterThan(50);
    expect(unlike(below.marks)).toEqual([]);
  });

  it('planted fault: one wire left as it was is seen', () => {
    const wire = above.marks.findIndex(({ kind, role }) => kind === 'polyline' && role === 'feature');
    expect(unlike(below.marks.map((mark, i) => (i === wire ? (above.marks[i] ?? mark) : mark)))).toHaveLength(1);
  });

  it('mirrored twice are the wires from above', () => {
    expect(unlike(mirrored(mirrored(above)).marks.map((mark) => mark))).not.toEqual([]);
    expect(mirrored(below).marks).toEqual(above.marks);
  });
});

describe('drawings of the wiring', () => {
  const ids = wiringEntries(book).map(({ id }) => id);

  it('are five, and none for a notebook without wires', () => {
    expect(ids).toEqual(['wiring.above', 'wiring.below', 'wiring.bays', 'wiring.one-line', 'wiring.voltage']);
    expect(wiringEntries({ ...book, wiring: null })).toEqual([]);
  });

  for (const id of ids) {
    it(`${id} has nothing crossed, clipped or overlapping on any paper, in either unit`, () => {
      const names = Object.keys(papers).filter((name): name is PaperName => name in papers);
      const found = names.flatMap((paper) =>
        (['mm', 'in'] as const).flatMap((unit) => complaints(layOutDrawing(book, id, { unit, paper }), paper)),
      );
      expect(found).toEqual([]);
    });
  }

  it('name every pair, hole and cut from above', () => {
    const words = above.marks.flatMap((mark) => (mark.kind === 'text' ? mark.text.split(' ') : []));
    const pairs = [...new Set(wiring.wires.map(({ label }) => label.replace(/[a-z]$/, '')))];
    expect(words).toEqual(expect.arrayContaining(pairs));
    expect(words).toEqual(expect.arrayContaining(wiring.holes.map(({ id }) => id.replace('hole-', 'H'))));
    expect(words).toEqual(expect.arrayContaining(wiring.gaps.map(({ id }) => id.replace('gap-', 'G'))));
    expect(words).toEqual(expect.arrayContaining(wiring.units.map((_, i) => `U${i + 1}`)));
  });
});

describe('the wiring on one line', () => {
  it('lists what hangs on each bus in the order it is met, sampled along the bus every millimetre', () => {
    // how far each place is from the supply along the bus, limb by limb, every millimetre
    const met = new Map<string, number>();
    const key = ([x, y]: readonly number[]) => `${Math.round(x ?? 0)} ${Math.round(y ?? 0)}`;
    for (const limb of [wiring.bus?.path ?? [], ...(wiring.bus?.branches ?? [])]) {
      let along = met.get(key(limb[0] ?? [])) ?? 0;
      for (const [i, to] of limb.entries()) {
        const from = limb[i - 1] ?? to;
        const steps = Math.max(1, 4 * Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1])));
        for (let k = 0; k <= steps; k += 1) {
          const at = [from[0] + ((to[0] - from[0]) * k) / steps, from[1] + ((to[1] - from[1]) * k) / steps];
          if (!met.has(key(at))) met.set(key(at), along + (Math.hypot(to[0] - from[0], to[1] - from[1]) * k) / steps);
        }
        along += Math.hypot(to[0] - from[0], to[1] - from[1]);
      }
    }
    const metBy = (number: string) => {
      const [tap = [0, 0, 0]] = wiring.wires.find(({ label }) => label === `${number}a`)?.path ?? [];
      return met.get(key(tap)) ?? Number.NaN;
    };
    const blocks = oneLineBlocks({ book, wiring, options: { unit: 'mm', paper: 'A4' }, scale: 1 });
    const rows = blocks.map(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' ? [/^(\d+) .* of /.exec(mark.text)?.[1] ?? []].flat() : [])),
    );
    expect(rows.flat().length).toBeGreaterThan(5);
    for (const row of rows) {
      const along = row.map(metBy);
      expect(along.every(Number.isFinite)).toBe(true);
      expect(along.every((one, i) => i === 0 || one >= (along[i - 1] ?? 0) - 3)).toBe(true);
    }
  });
});

describe('a path in a bay', () => {
  it('is cut at the bay', () => {
    const path = [
      [-10, 5, 0],
      [30, 5, 0],
      [30, 40, 0],
    ] as const;
    expect(clippedPath(path, { low: [0, 0], high: [20, 20] })).toEqual([
      [
        [0, 5],
        [20, 5],
      ],
    ]);
    expect(clippedPath(path, { low: [50, 50], high: [60, 60] })).toEqual([]);
  });
});
