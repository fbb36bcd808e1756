import type { Block } from '../block.ts';
import type { Mark, Spot } from '../mark.ts';
import type { PenName } from '../pens.ts';
import { lettering, smallText } from '../text.ts';
import { crossedSquare, oblong } from './wiring-stage.ts';

/** Paper between the rows of a diagram, and between the columns of its bus, mm. */
export const ROW = 5;
export const STEP = 9;

/** What stands at the end of a row of a one-line diagram. */
export type Sign = 'supply' | 'breaker' | 'unit' | 'switch' | 'plug' | 'rails' | 'motor' | 'load' | 'bus';

/** Half of what a sign takes along a line and across it; the line ends there, mm. */
export const HALF: Readonly<Record<Sign, Spot>> = {
  supply: [1.8, 1.8],
  breaker: [2.6, 2.1],
  unit: [2.6, 2.1],
  switch: [2.6, 2.1],
  motor: [2.1, 2.1],
  load: [2.1, 2.1],
  rails: [0.6, 1.9],
  plug: [0, 0],
  bus: [0, 0],
};

const SIGNS: Readonly<Record<Exclude<Sign, 'bus'>, string>> = {
  supply: 'supply',
  breaker: 'breaker, trips over its current',
  unit: 'unit that turns polarity',
  switch: 'switch',
  plug: 'plug and socket',
  rails: 'rails',
  motor: 'motor of a turnout',
  load: 'other load',
};

/** What the signs stand for: those that are used. */
export function signKey(used: ReadonlySet<Sign>): Block {
  const signs = (Object.keys(SIGNS) as (keyof typeof SIGNS)[]).filter((sign) => used.has(sign));
  const marks = signs.flatMap((sign, i) => [
    ...signMarks(sign, [3 + (sign === 'plug' ? STEP / 2 : 0), (i + 1) * ROW]),
    lettering(SIGNS[sign], [9, (i + 1) * ROW + smallText / 2]),
  ]);
  const bus = (signs.length + 1) * ROW;
  const wide = [straight([0, bus], [6, bus], 'cut-edge'), lettering('bus', [9, bus + smallText / 2])];
  return { marks: [lettering('Key', [0, 0], { weight: 'bold' }), ...marks, ...wide], views: [], dimensions: [] };
}

/** A line of a diagram. */
export function straight(from: Spot, to: Spot, pen: PenName): Mark {
  return { kind: 'line', from, to, pen, role: 'feature' };
}

/** A row's sign about the end of its line. */
export function signMarks(sign: Sign, [x, y]: Spot): readonly Mark[] {
  const circle: Mark = {
    kind: 'circle',
    centre: [x, y],
    radius: HALF.load[0],
    fill: 'paper',
    pen: 'feature',
    role: 'symbol',
  };
  const word = (text: string) => lettering(text, [x, y + smallText / 2], { anchor: 'middle' });
  switch (sign) {
    case 'supply':
      return crossedSquare([x, y]);
    case 'breaker':
      return [oblong([x, y], HALF[sign], 'paper'), word('I>')];
    case 'unit':
      return [oblong([x, y], HALF[sign], 'paper'), word('±')];
    case 'switch':
      return [oblong([x, y], HALF[sign], 'paper'), straight([x - 1.8, y + 0.8], [x + 1.6, y - 1.2], 'feature')];
    case 'plug':
      return [oblong([x - STEP / 2, y], [1.5, 1], 'paper')];
    case 'rails':
      return [-0.6, 0.6].map((off) => straight([x + off, y - HALF.rails[1]], [x + off, y + HALF.rails[1]], 'edge'));
    case 'motor':
      return [circle, word('M')];
    case 'load':
      return [
        circle,
        straight([x - 1.5, y - 1.5], [x + 1.5, y + 1.5], 'feature'),
        straight([x - 1.5, y + 1.5], [x + 1.5, y - 1.5], 'feature'),
      ];
    case 'bus':
      return [];
  }
}
