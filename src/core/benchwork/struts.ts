import type { Pose, Vector } from '../geometry/shapes.ts';
import type { Feature, MatingMark } from '../stock/part.ts';
import type { Grid } from './grid.ts';
import type { Instance } from './instance.ts';
import { tidy } from './machining.ts';
import { lying } from './rails.ts';
import { betweenRabbets } from './spans.ts';

const UP: Vector = [0, 0, 1];

/** How one family of struts lies: its outside, what it stands between, whom it crosses and from which edge. */
type Family = {
  readonly outside: number;
  readonly between: readonly [string, string];
  readonly crossing: readonly number[];
  readonly crossed: 'along' | 'across';
  readonly edge: 'top' | 'bottom';
};

/** Across struts, between the sides; their slots open upward. */
export function acrossStruts(grid: Grid): readonly Instance[] {
  const family: Family = {
    outside: grid.width,
    between: ['side.front', 'side.back'],
    crossing: grid.along,
    crossed: 'along',
    edge: 'top',
  };
  return grid.across.map((x, i) => {
    const origin: Vector = [tidy(x - grid.t / 2), tidy(grid.t - grid.dado), grid.strutUnderside];
    const pose: Pose = { origin, x: [0, 1, 0], y: UP, z: [1, 0, 0] };
    return { ...strut(grid, family), id: `strut.across-${i + 1}`, label: `C${i + 1}`, pose };
  });
}

/** Along struts, between the ends; their slots open downward. */
export function alongStruts(grid: Grid): readonly Instance[] {
  const family: Family = {
    outside: grid.length,
    between: ['end.left', 'end.right'],
    crossing: grid.across,
    crossed: 'across',
    edge: 'bottom',
  };
  return grid.along.map((y, i) => {
    const origin: Vector = [tidy(grid.t - grid.dado), tidy(y + grid.t / 2), grid.strutUnderside];
    const pose: Pose = { origin, x: [1, 0, 0], y: UP, z: [0, -1, 0] };
    return { ...strut(grid, family), id: `strut.along-${i + 1}`, label: `L${i + 1}`, pose };
  });
}

function strut(grid: Grid, family: Family): Omit<Instance, 'id' | 'label' | 'pose'> {
  const { strut: high, t, dado } = grid;
  const length = betweenRabbets(family.outside, t, dado);
  const slots = family.crossing.map((at, i) => slot(grid, family, { at: tidy(at - (t - dado)), number: i + 1 }));
  const seat = (x: number, text: string): MatingMark => ({ text, side: 'face', at: [x, high / 2], kind: 'mate' });
  const [near, far] = family.between;
  const ways: readonly [string, string] = [near.slice(near.indexOf('.') + 1), far.slice(far.indexOf('.') + 1)];
  return {
    role: 'strut',
    material: 'frame',
    blank: { length, width: high, thickness: t, grain: 'length' },
    features: slots.map(({ feature }) => feature),
    marks: [
      seat(dado / 2, near),
      ...slots.map(({ mark }) => mark),
      seat(length - dado / 2, far),
      ...lying(grid, { length, high }, ways),
    ],
  };
}

type Crossing = { readonly at: number; readonly number: number };

/** A slot through the strut, and the mate's name on the wood that is left beside its end. */
function slot(grid: Grid, family: Family, { at, number }: Crossing): { feature: Feature; mark: MatingMark } {
  const { strut: high, lap } = grid;
  const mate = `strut.${family.crossed}-${number}`;
  const left = tidy(high - lap);
  const [y0, y1] = family.edge === 'top' ? [left, high] : [0, lap];
  const patch = { x0: tidy(at - grid.slot / 2), x1: tidy(at + grid.slot / 2), y0, y1 };
  return {
    feature: { id: '', for: mate, kind: 'notch', edge: family.edge, patch, corner: 0 },
    mark: { text: mate, side: 'face', at: [at, family.edge === 'top' ? left / 2 : high - left / 2], kind: 'mate' },
  };
}
