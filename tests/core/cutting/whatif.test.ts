import { describe, expect, it } from 'vitest';
import type { CutJob } from '../../../src/core/cutting/job.ts';
import { layOut } from '../../../src/core/cutting/layout.ts';
import { whatIf } from '../../../src/core/cutting/whatif.ts';

type Case = {
  readonly name: string;
  readonly sheet: readonly [length: number, width: number];
  readonly kerf: number;
  readonly parts: readonly (readonly [id: string, length: number, width: number, quantity: number])[];
  /** worked by hand: part, side, smallest change in mm */
  readonly saves: readonly [part: string, side: 'length' | 'width', change: number] | null;
};

/** Made so that the sum along one side misses by a known amount. Grain holds every part along the sheet. */
const CASES: readonly Case[] = [
  {
    name: 'two lengths miss by 5',
    sheet: [1000, 100],
    kerf: 0,
    parts: [
      ['a', 605, 100, 1],
      ['b', 400, 100, 1],
    ],
    saves: ['a', 'length', 5],
  },
  {
    name: 'the kerf alone is too much',
    sheet: [1000, 100],
    kerf: 3,
    parts: [
      ['a', 600, 100, 1],
      ['b', 400, 100, 1],
    ],
    saves: ['a', 'length', 3],
  },
  {
    name: 'three strips miss by 2',
    sheet: [800, 300],
    kerf: 0,
    parts: [
      ['a', 800, 102, 1],
      ['b', 800, 120, 1],
      ['c', 800, 80, 1],
    ],
    saves: ['b', 'width', 2],
  },
  {
    name: 'ten strips and nine kerfs',
    sheet: [800, 1000],
    kerf: 2,
    parts: [['a', 800, 100, 10]],
    saves: ['a', 'width', 2],
  },
  {
    name: 'a corner too wide by 1',
    sheet: [600, 400],
    kerf: 0,
    parts: [
      ['a', 600, 300, 1],
      ['b', 301, 100, 1],
      ['c', 300, 100, 1],
    ],
    saves: ['b', 'length', 1],
  },
  {
    name: 'both sides of a lane',
    sheet: [1200, 200],
    kerf: 4,
    parts: [
      ['a', 700, 98, 2],
      ['b', 500, 98, 2],
    ],
    saves: ['a', 'length', 4],
  },
  {
    name: 'strips that miss in width',
    sheet: [500, 500],
    kerf: 0,
    parts: [
      ['a', 500, 260, 1],
      ['b', 500, 247, 1],
    ],
    saves: ['a', 'width', 7],
  },
  {
    name: 'four lengths that cannot be split',
    sheet: [2400, 100],
    kerf: 0,
    parts: [
      ['a', 1300, 100, 1],
      ['b', 1120, 100, 1],
    ],
    saves: ['a', 'length', 20],
  },
  {
    name: 'too far off to tell',
    sheet: [1000, 100],
    kerf: 0,
    parts: [
      ['a', 900, 100, 1],
      ['b', 900, 100, 1],
    ],
    saves: null,
  },
  { name: 'nothing to save on one sheet', sheet: [1000, 100], kerf: 0, parts: [['a', 400, 100, 1]], saves: null },
];

function jobOf({ sheet, kerf, parts }: Case): CutJob {
  return {
    stock: [
      {
        ...{ id: 's', length: sheet[0], width: sheet[1], grain: 'length', price: 1 },
        ...{ count: null, offcut: false, noGo: [] },
      },
    ],
    parts: parts.map(([id, length, width, quantity]) => ({ id, length, width, quantity, grain: 'length' })),
    ...{ kerf, trim: 0, style: { kind: 'saw', stages: 'any' }, keep: 1e6, budget: 30 },
  };
}

describe('the smallest change that saves a sheet', () => {
  it.each(CASES)('$name', (one) => {
    const job = jobOf(one);
    const saving = whatIf(job, { tick: 1, most: 60 });
    expect(saving === null ? null : [saving.part, saving.side, saving.from - saving.to]).toEqual(one.saves);
    if (saving === null) return;
    const at = (size: number) =>
      job.parts.map((part) => (part.id === saving.part ? { ...part, [saving.side]: size } : part));
    expect(layOut({ ...job, parts: at(saving.to) }).sheets.length).toBeLessThan(saving.sheets);
    expect(layOut({ ...job, parts: at(saving.to + 1) }).sheets.length).toBe(saving.sheets);
  });
});
