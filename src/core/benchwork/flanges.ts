import type { Pose } from '../geometry/shapes.ts';
import type { Joint, MatingMark } from '../stock/part.ts';
import type { Grid } from './grid.ts';
import type { Instance } from './instance.ts';
import { joint } from './joints.ts';
import { tidy } from './machining.ts';

type Strips = { readonly instances: readonly Instance[]; readonly joints: readonly Joint[] };

/** A stretch of a strip, from and to along its strut, mm. */
type Stretch = { readonly from: number; readonly to: number };

/**
 * Strips flat under the struts between the inner faces: in one piece under the along struts, in pieces between those
 * under the across struts.
 */
export function flangeStrips(grid: Grid, width: number): Strips {
  const along = grid.along.map((y, i) => alongStrip(grid, width, { at: y, number: i + 1 }));
  const across = grid.across.flatMap((x, i) =>
    betweenStrips(grid, width).map((stretch, k) =>
      acrossStrip(grid, width, { at: x, number: i + 1, stretch, piece: k + 1 }),
    ),
  );
  const instances = [...along, ...across];
  return { instances, joints: instances.map(({ id }) => joint('bearing', [`strut.${strutOf(id)}`, id], 0)) };
}

/** `flange.across-2-1` lies under `across-2`. */
function strutOf(id: string): string {
  const name = id.slice('flange.'.length);
  return name.startsWith('along') ? name : name.slice(0, name.lastIndexOf('-'));
}

/** What is left of the clear width between the along strips. */
function betweenStrips(grid: Grid, width: number): readonly Stretch[] {
  const edges = [
    grid.t,
    ...grid.along.flatMap((y) => [tidy(y - width / 2), tidy(y + width / 2)]),
    tidy(grid.width - grid.t),
  ];
  const pairs = Array.from(
    { length: grid.along.length + 1 },
    (_, i): Stretch => ({ from: edges[2 * i] ?? 0, to: edges[2 * i + 1] ?? 0 }),
  );
  return pairs.filter(({ from, to }) => to > from);
}

function alongStrip(
  grid: Grid,
  width: number,
  { at, number }: { readonly at: number; readonly number: number },
): Instance {
  const length = tidy(grid.length - 2 * grid.t);
  const origin = [grid.t, tidy(at - width / 2), tidy(grid.strutUnderside - grid.t)] as const;
  const pose: Pose = { origin, x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
  const marks = stripMarks({ length, width, mate: `strut.along-${number}`, ways: ['left', 'right'] });
  return { ...strip(grid, length, width), id: `flange.along-${number}`, label: `FL${number}`, pose, marks };
}

type Piece = { readonly at: number; readonly number: number; readonly stretch: Stretch; readonly piece: number };

function acrossStrip(grid: Grid, width: number, { at, number, stretch, piece }: Piece): Instance {
  const length = tidy(stretch.to - stretch.from);
  const origin = [tidy(at + width / 2), stretch.from, tidy(grid.strutUnderside - grid.t)] as const;
  const pose: Pose = { origin, x: [0, 1, 0], y: [-1, 0, 0], z: [0, 0, 1] };
  const marks = stripMarks({ length, width, mate: `strut.across-${number}`, ways: ['front', 'back'] });
  const id = `flange.across-${number}-${piece}`;
  return { ...strip(grid, length, width), id, label: `FC${number}-${piece}`, pose, marks };
}

function strip(grid: Grid, length: number, width: number): Omit<Instance, 'id' | 'label' | 'pose' | 'marks'> {
  const blank = { length, width, thickness: grid.t, grain: 'length' } as const;
  return { role: 'flange-strip', material: 'frame', blank, features: [] };
}

type Marking = {
  readonly length: number;
  readonly width: number;
  readonly mate: string;
  readonly ways: readonly [string, string];
};

function stripMarks({ length, width, mate, ways }: Marking): readonly MatingMark[] {
  const inset = Math.min(20, length / 4);
  return [
    { text: mate, side: 'face', at: [length / 2, width / 2], kind: 'mate' },
    { text: 'up', side: 'face', at: [length / 4, width / 2], kind: 'up' },
    { text: ways[0], side: 'back', at: [inset, width / 2], kind: 'end' },
    { text: ways[1], side: 'back', at: [length - inset, width / 2], kind: 'end' },
  ];
}
