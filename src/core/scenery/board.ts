import { loopArea } from '../geometry/polygon.ts';
import type { Point, Pose } from '../geometry/shapes.ts';
import { partMass } from '../stock/mass.ts';
import type { AreaMass, Feature, Part } from '../stock/part.ts';
import type { Field } from './field.ts';
import type { BoardAsk, Edge } from './land.ts';
import { simplifiedLine } from './simplified.ts';
import { type Site, toNotebook } from './site.ts';

/** A profile board ends where the ground is this low, mm: thinner wood breaks. */
export const LEAST_BOARD = 5;

/** Heights along an edge are taken this far apart, mm, and drawn within this much of true. */
const STEP = 2.5;
const BY_SAW = 0.1;

/** A stretch of edge that stands above the deck: heights over distance from the edge's start; mm. */
export type Profile = { readonly points: readonly Point[] };

/** An edge of a bench: where it starts and which way it runs, on the bench's plane; mm. */
export type EdgeLine = { readonly start: Point; readonly along: Point; readonly length: number };

export function edgeLine({ bench }: Site, edge: Edge): EdgeLine {
  const { length, width } = bench;
  if (edge === 'front') return { start: [0, 0], along: [1, 0], length };
  if (edge === 'back') return { start: [0, width], along: [1, 0], length };
  return { start: [edge === 'left' ? 0 : length, 0], along: [0, 1], length: width };
}

/** The stretches of an edge where the ground is a board's height or more, with their heights. */
export function edgeProfiles(field: Field, site: Site, edge: Edge): readonly Profile[] {
  const line = edgeLine(site, edge);
  const count = Math.ceil(line.length / STEP);
  const heights = Array.from({ length: count + 1 }, (_, i): Point => {
    const s = (line.length * i) / count;
    const [x, y] = toNotebook(site.pose, [line.start[0] + line.along[0] * s, line.start[1] + line.along[1] * s]);
    return [s, field(x, y)];
  });
  return runs(heights).filter(({ points }) => points.length > 1);
}

function runs(heights: readonly Point[]): readonly Profile[] {
  const found: Point[][] = [];
  let open: Point[] | null = null;
  heights.forEach(([s, h], i) => {
    const [before, low] = heights[i - 1] ?? [s, h];
    const crossing: Point | null =
      h >= LEAST_BOARD === low >= LEAST_BOARD
        ? null
        : [before + ((LEAST_BOARD - low) * (s - before)) / (h - low), LEAST_BOARD];
    if (h >= LEAST_BOARD && open === null) {
      open = crossing === null ? [] : [crossing];
      found.push(open);
    }
    if (h >= LEAST_BOARD) open?.push([s, h]);
    else {
      if (crossing !== null) open?.push(crossing);
      open = null;
    }
  });
  return found.map((points) => ({ points: simplifiedLine(points, BY_SAW) }));
}

/** The boards of one edge as parts: they stand on the deck, outer face flush with the frame, top edge along the ground. */
export function boardParts(asked: Omit<Boarding, 'profile' | 'number'> & { readonly field: Field }): readonly Part[] {
  const profiles = edgeProfiles(asked.field, asked.site, asked.ask.edge);
  return profiles.map((profile, i) => boardPart({ ...asked, profile, number: profiles.length === 1 ? null : i + 1 }));
}

type Boarding = {
  readonly ask: BoardAsk;
  readonly site: Site;
  readonly profile: Profile;
  readonly number: number | null;
  /** cut-outs where lines pass through a board that starts at `first` along its edge */
  readonly mouths: (board: {
    readonly first: number;
    readonly length: number;
    readonly width: number;
  }) => readonly Feature[];
};

function boardPart({ ask, site, profile, number, mouths }: Boarding): Part {
  const [first = [0, 0], last = [0, 0]] = [profile.points[0], profile.points[profile.points.length - 1]];
  const length = last[0] - first[0];
  const width = profile.points.reduce((most, [, h]) => Math.max(most, h), 0);
  const id = `board.${ask.id}${number === null ? '' : `-${number}`}`;
  const label = `P-${ask.id}${number === null ? '' : `-${number}`}`;
  const thickness = ask.stock.thickness.listed;
  const top = profile.points.map(([s, h]): Point => [s - first[0], h]);
  return {
    ...{ id, label, role: 'profile-board', chapter: 'scenery', bench: site.bench.id, stock: ask.stock.id },
    blank: { length, width, thickness, grain: 'length' },
    features: [...aboveProfile(top, width), ...mouths({ first: first[0], length, width })],
    places: [{ id, label, pose: boardPose(site, ask.edge, { at: first[0], thickness }), marks: [] }],
    cutAfterMeasuring: false,
    phase: site.bench.phase,
  };
}

/** The waste over a profile, parted at its highest point where it meets the edge of the blank. */
function aboveProfile(top: readonly Point[], width: number): readonly Feature[] {
  const peak = top.reduce((best, [, h], i) => (h > (top[best]?.[1] ?? 0) ? i : best), 0);
  const [first, last] = [top[0], top[top.length - 1]];
  if (first === undefined || last === undefined) return [];
  const left: readonly Point[] = [...top.slice(0, peak + 1), [first[0], width]];
  const right: readonly Point[] = [...top.slice(peak), [last[0], width]];
  return [left, right]
    .filter((loop) => loop.length > 2)
    .map((outline, i) => ({ id: `cut-out-${i + 1}`, kind: 'cut-out', outline }));
}

type Seat = { readonly at: number; readonly thickness: number };

function boardPose({ bench }: Site, edge: Edge, { at, thickness }: Seat): Pose {
  const z = bench.deckTop;
  if (edge === 'left') return { origin: [0, at, z], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] };
  if (edge === 'right') return { origin: [bench.length - thickness, at, z], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] };
  const y = edge === 'front' ? thickness : bench.width;
  return { origin: [at, y, z], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] };
}

/** The strip of deck a board's edge stands on, in notebook coordinates: foam keeps out of it. */
export function boardFoot(ask: BoardAsk, site: Site, profiles: readonly Profile[]): readonly (readonly Point[])[] {
  const t = ask.stock.thickness.listed;
  const { start, along } = edgeLine(site, ask.edge);
  const inward: Point =
    ask.edge === 'front' ? [0, t] : ask.edge === 'back' ? [0, -t] : ask.edge === 'left' ? [t, 0] : [-t, 0];
  return profiles.map(({ points }) => {
    const [from, to] = [points[0]?.[0] ?? 0, points[points.length - 1]?.[0] ?? 0];
    const on = (s: number): Point => [start[0] + along[0] * s, start[1] + along[1] * s];
    const [a, b] = [on(from), on(to)];
    const loop: readonly Point[] = [a, b, [b[0] + inward[0], b[1] + inward[1]], [a[0] + inward[0], a[1] + inward[1]]];
    return loop.map((point) => toNotebook(site.pose, point));
  });
}

/** A board's mass over the strip of deck it stands on. */
export function boardMass(part: Part, foot: readonly Point[], density: number): AreaMass {
  const area = Math.abs(loopArea(foot)) * 1e-6;
  return { of: part.id, outline: foot, perSquareMetre: area === 0 ? 0 : partMass(part, density) / area };
}
