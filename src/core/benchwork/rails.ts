import type { Pose, Vector } from '../geometry/shapes.ts';
import type { Feature, MatingMark } from '../stock/part.ts';
import type { Grid } from './grid.ts';
import type { Instance } from './instance.ts';
import { tidy } from './machining.ts';
import { betweenRabbets } from './spans.ts';

const UP: Vector = [0, 0, 1];

/** A pocket across the inner face of a side or end: its middle along the part, and who enters. */
type Seat = { readonly at: number; readonly mate: string };

/** The two sides: full length, inner faces with a rabbet at each end and a dado for every across strut. */
export function sides(grid: Grid): readonly Instance[] {
  const { length, width } = grid;
  const fromLeft = grid.across.map((x, i): Seat => ({ at: x, mate: `strut.across-${i + 1}` }));
  const fromRight = fromLeft.map(({ at, mate }): Seat => ({ at: tidy(length - at), mate })).reverse();
  const low = grid.sideUnderside;
  const front: Pose = { origin: [length, 0, low], x: [-1, 0, 0], y: UP, z: [0, 1, 0] };
  const back: Pose = { origin: [0, width, low], x: [1, 0, 0], y: UP, z: [0, -1, 0] };
  const ends = ['end.left', 'end.right'] as const;
  return [
    { ...side(grid, fromRight, [ends[1], ends[0]]), id: 'side.front', label: 'S1', pose: front },
    { ...side(grid, fromLeft, ends), id: 'side.back', label: 'S2', pose: back },
  ];
}

type Blanked = Omit<Instance, 'id' | 'label' | 'pose'>;

function side(grid: Grid, seats: readonly Seat[], [near, far]: readonly [string, string]): Blanked {
  const { length, side: high, t, slot, dado: depth } = grid;
  const rabbet = (x0: number, mate: string): Feature => ({
    id: '',
    for: mate,
    kind: 'rabbet',
    side: 'face',
    patch: { x0, x1: tidy(x0 + slot), y0: 0, y1: high },
    depth,
    corner: 0,
  });
  const end = (x: number, text: string): MatingMark => ({ text, side: 'face', at: [x, high * 0.5], kind: 'mate' });
  return {
    role: 'side',
    material: 'frame',
    blank: { length, width: high, thickness: t, grain: 'length' },
    features: [rabbet(0, near), ...seats.map((seat) => seatDado(grid, seat)), rabbet(tidy(length - slot), far)],
    marks: [
      end(slot / 2, near),
      ...seats.map((seat) => seatMark(grid, seat)),
      end(length - slot / 2, far),
      ...lying(grid, { length, high }, [near.slice(4), far.slice(4)]),
    ],
  };
}

/** The two ends: between the sides, in their rabbets, with a dado for every along strut. */
export function ends(grid: Grid): readonly Instance[] {
  const { length, width, t, dado } = grid;
  const inset = tidy(t - dado);
  const fromFront = grid.along.map((y, i): Seat => ({ at: tidy(y - inset), mate: `strut.along-${i + 1}` }));
  const own = betweenRabbets(width, t, dado);
  const fromBack = fromFront.map(({ at, mate }): Seat => ({ at: tidy(own - at), mate })).reverse();
  const low = grid.sideUnderside;
  const left: Pose = { origin: [0, inset, low], x: [0, 1, 0], y: UP, z: [1, 0, 0] };
  const right: Pose = { origin: [length, tidy(width - inset), low], x: [0, -1, 0], y: UP, z: [-1, 0, 0] };
  return [
    { ...endBoard(grid, fromFront, ['side.front', 'side.back']), id: 'end.left', label: 'E1', pose: left },
    { ...endBoard(grid, fromBack, ['side.back', 'side.front']), id: 'end.right', label: 'E2', pose: right },
  ];
}

function endBoard(grid: Grid, seats: readonly Seat[], [near, far]: readonly [string, string]): Blanked {
  const { side: high, t, dado } = grid;
  const length = betweenRabbets(grid.width, t, dado);
  const mate = (x: number, text: string): MatingMark => ({ text, side: 'face', at: [x, high / 2], kind: 'mate' });
  return {
    role: 'end',
    material: 'frame',
    blank: { length, width: high, thickness: t, grain: 'length' },
    features: seats.map((seat) => seatDado(grid, seat)),
    marks: [
      mate(dado / 2, near),
      ...seats.map((seat) => seatMark(grid, seat)),
      mate(length - dado / 2, far),
      ...lying(grid, { length, high }, [near.slice(5), far.slice(5)]),
    ],
  };
}

/** Open at the top and stopped at the strut's underside, the bit run past the stopped corners so that a square strut seats. */
function seatDado(grid: Grid, { at, mate }: Seat): Feature {
  const low = tidy(grid.side - grid.strut);
  const patch = { x0: tidy(at - grid.slot / 2), x1: tidy(at + grid.slot / 2), y0: low, y1: grid.side };
  const pocket = { id: '', for: mate, side: 'face', patch, depth: grid.dado, corner: 0 } as const;
  return low > 0 ? { ...pocket, kind: 'stopped-dado', relief: tidy(grid.bit / 2) } : { ...pocket, kind: 'dado' };
}

function seatMark(grid: Grid, { at, mate }: Seat): MatingMark {
  return { text: mate, side: 'face', at: [at, tidy(grid.side - grid.strut / 2)], kind: 'mate' };
}

type Size = { readonly length: number; readonly high: number };

/** Which way is up and which end is which, written where no mate comes. */
export function lying(
  grid: Grid,
  { length, high }: Size,
  [near, far]: readonly [string, string],
): readonly MatingMark[] {
  const clear = grid.slot + 12;
  return [
    { text: 'up', side: 'back', at: [length / 2, high - Math.min(20, high / 4)], kind: 'up' },
    { text: near, side: 'back', at: [clear, high / 2], kind: 'end' },
    { text: far, side: 'back', at: [length - clear, high / 2], kind: 'end' },
  ];
}
