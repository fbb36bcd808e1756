import { describe, expect, it } from 'vitest';
import { checkPlacingOrder } from '../../../src/core/assembly/placing-order.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { allLinked, type Block, pieceOf } from './puzzle.ts';

/** A tray with four walls, a block that fills it, and a lid over both. Made for the test: only in that order. */
const FLOOR: Block = [
  [0, 0, 0],
  [5, 5, 1],
];
const WALLS: readonly Block[] = [
  [
    [0, 0, 1],
    [1, 5, 3],
  ],
  [
    [4, 0, 1],
    [5, 5, 3],
  ],
  [
    [1, 0, 1],
    [4, 1, 3],
  ],
  [
    [1, 4, 1],
    [4, 5, 3],
  ],
];
const tray = pieceOf('tray', [FLOOR, ...WALLS]);
const block = pieceOf('block', [
  [
    [1, 1, 1],
    [4, 4, 3],
  ],
]);
const lid = pieceOf('lid', [
  [
    [0, 0, 3],
    [5, 5, 4],
  ],
]);
const bodies = [tray, block, lid];
const built = { bodies, links: allLinked(bodies), proved: ['tray', 'block', 'lid'], tilts: [] };

function step(...parts: string[]) {
  return { step: `benchwork.${parts.join('-')}`, title: `Put in ${parts.join(' and ')}`, parts };
}

function told(steps: readonly ReturnType<typeof step>[], tilts: readonly string[] = []) {
  return checkPlacingOrder({ ...built, steps, tilts }).map(({ level, where, what, mend }) => ({
    level,
    where,
    what: spoken(what, String),
    mend: spoken(mend, String),
  }));
}

describe('the order in which steps put pieces in', () => {
  it('is free when the block goes into its tray before the lid', () => {
    expect(told([step('tray'), step('block'), step('lid')])).toEqual([]);
  });

  it('stops a block that comes after its lid, says what is in the way and the order that works', () => {
    expect(told([step('tray'), step('lid'), step('block')])).toEqual([
      {
        level: 'halt',
        where: 'benchwork.block',
        what: "'Put in block' puts in block when lid stands already, and no straight way is left past it",
        mend: "what this step and 'Put in lid' put in goes together in this order: block, lid",
      },
    ]);
  });

  it('lets pieces of one step go in one after the other', () => {
    expect(told([step('tray'), step('lid', 'block')])).toEqual([]);
    expect(told([step('lid'), step('block', 'tray')])).toEqual([]);
  });

  it('lets the tray come up from below to a block and a lid', () => {
    expect(told([step('block'), step('lid'), step('tray')])).toEqual([]);
  });

  it('believes a tilt that is declared', () => {
    expect(told([step('tray'), step('lid'), step('block')], ['block'])).toEqual([]);
  });
});
