import type { Point } from '../../core/geometry/shapes.ts';
import { overlap, padded } from '../labels.ts';
import type { Extent, Mark, Spot } from '../mark.ts';
import { lettering, smallText, textWidth } from '../text.ts';
import { onPaper, type View } from '../view.ts';

/** A fix by its number in the register, where it is in the plane of the view; mm. */
export type Flag = { readonly number: number; readonly at: Point };

/** A flag on its staff: the cloth is lettered with the number. Paper mm. */
type Planted = { readonly flag: Flag; readonly foot: Spot; readonly cloth: Extent };

const CLOTH = 4.6;
const DOT = 0.7;

/** Lengths and sides of staffs that are tried, the shortest first; paper mm. */
const STAFFS: readonly Spot[] = [9, 16, 23, 30].flatMap((length): Spot[] => [
  [0, -length],
  [length * 0.6, -length],
  [-length * 0.6, -length],
  [length, -length * 0.4],
  [-length, -length * 0.4],
]);

function clothAt([x, y]: Spot, number: number): Extent {
  const width = textWidth(String(number), smallText, 'bold') + 2.6;
  return { x0: x, y0: y, x1: x + width, y1: y + CLOTH };
}

function dotOf([x, y]: Spot): Extent {
  return { x0: x - DOT, y0: y - DOT, x1: x + DOT, y1: y + DOT };
}

/** Where each flag stands: clear of the cloths and dots of the others where any of the staffs tried is. */
function planted(view: View, flags: readonly Flag[]): readonly Planted[] {
  const dots = flags.map(({ at }) => dotOf(onPaper(view, at)));
  const done: Planted[] = [];
  for (const flag of flags) {
    const foot = onPaper(view, flag.at);
    const cloths = STAFFS.map(([dx, dy]) => clothAt([foot[0] + dx, foot[1] + dy], flag.number));
    const taken = [...done.map(({ cloth }) => padded(cloth, 0.8)), ...dots];
    const cloth = cloths.find((one) => !taken.some((box) => overlap(one, box))) ?? cloths.at(-1);
    if (cloth !== undefined) done.push({ flag, foot, cloth });
  }
  return done;
}

function ringOf({ x0, y0, x1, y1 }: Extent): readonly Spot[] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

/** Flags with the numbers of the register, each on a staff from its place. */
export function flagMarks(view: View, flags: readonly Flag[]): readonly Mark[] {
  const all = planted(view, flags);
  const staffs = all.flatMap(({ foot, cloth }): readonly Mark[] => [
    { kind: 'line', from: foot, to: [cloth.x0, cloth.y1], pen: 'symbol', role: 'leader' },
    { kind: 'circle', centre: foot, radius: DOT, fill: 'ink', pen: 'symbol', role: 'symbol' },
  ]);
  const cloths = all.flatMap(({ flag, cloth }): readonly Mark[] => [
    { kind: 'polygon', rings: [ringOf(padded(cloth, 0.4))], fill: 'paper', pen: 'none', role: 'symbol' },
    { kind: 'polygon', rings: [ringOf(cloth)], fill: 'none', pen: 'symbol', role: 'symbol' },
    lettering(String(flag.number), [(cloth.x0 + cloth.x1) / 2, cloth.y1 - (CLOTH - smallText) / 2], {
      weight: 'bold',
      anchor: 'middle',
      role: 'label',
    }),
  ]);
  return [...staffs, ...cloths];
}
