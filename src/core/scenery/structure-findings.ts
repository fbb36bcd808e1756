import type { Finding } from '../finding.ts';
import { difference } from '../geometry/booleans.ts';
import type { Point } from '../geometry/shapes.ts';
import { atLeast, length, type Sentence, say } from '../units/say.ts';
import { clipped, regionArea } from './clip.ts';
import { alongPath, insideLoop, nearestOnPath } from './distance.ts';
import { found, PRACTICE } from './found.ts';
import type { Path, PathPoint, Stretch, Water } from './land.ts';
import type { Headroom } from './line-findings.ts';
import type { BuiltStructure } from './structure.ts';

/** Shared ground smaller than this is a line drawn by hand, mm2. */
const LEAST = 100;

/** A wall that stands over the ground by more than this shows a gap; common practice, no source. mm. */
const GAP = 1;

/** What buildings stand among. */
export type Among = {
  readonly decks: readonly (readonly Point[])[];
  readonly paths: readonly Path[];
  readonly tunnels: readonly Stretch[];
  readonly water: readonly Water[];
  readonly headroom: Headroom;
};

/** Buildings that trains touch, that hang over an edge or stand in water, in each other or on a slope. */
export function structureFindings(structures: readonly BuiltStructure[], among: Among): readonly Finding[] {
  return structures.flatMap((one, i) => [
    ...overEdge(one, among.decks),
    ...among.paths.flatMap((path) => onLine(one, path, among)),
    ...among.water.flatMap((water) => inWater(one, water)),
    ...structures.slice(i + 1).flatMap((other) => inOther(one, other)),
    ...onSlope(one),
  ]);
}

function overEdge({ id, corners, bench }: BuiltStructure, decks: Among['decks']): readonly Finding[] {
  const outside = difference([corners], decks).flatMap(({ outline }) => outline);
  const over = Math.max(0, ...outside.map((corner) => offDecks(corner, decks)));
  if (over <= 0.01) return [];
  return [
    found({
      ...{ rule: 'structure-over-edge', level: bench === null ? 'halt' : 'care', where: id, figure: over, limit: 0 },
      what: say`${id} stands ${atLeast(over)} over the deck's edge.`,
      mend: say`Move it in by ${atLeast(over)}, or turn it along the edge.`,
      source: 'geometry',
    }),
  ];
}

function offDecks(point: Point, decks: Among['decks']): number {
  if (decks.some((loop) => insideLoop(loop, point))) return 0;
  return Math.min(...decks.map((loop) => nearestOnPath(alongPath(loop), point).distance));
}

/** A line passes a building at its foot's level: its middle keeps what trains need, and not under a tunnel's roof. */
function onLine(one: BuiltStructure, path: Path, { tunnels, headroom }: Among): readonly Finding[] {
  const tight = path.points.flatMap((point, i): readonly Tight[] => {
    const free = freeOf(one, point);
    const needed = point.clear ?? 0;
    if (free >= needed || !passes(one, point, headroom) || isHidden(path, point, tunnels)) return [];
    const [from, to] = [path.points[Math.max(0, i - 1)] ?? point, path.points[i + 1] ?? point];
    return [{ point, free, needed, heading: Math.atan2(to.y - from.y, to.x - from.x) }];
  });
  const [first, ...others] = tight;
  if (first === undefined) return [];
  const worst = others.reduce(
    (least, each) => (each.free - each.needed < least.free - least.needed ? each : least),
    first,
  );
  const { point, free, needed } = worst;
  return [
    found({
      ...{ rule: 'structure-on-line', level: free > 0 ? 'care' : 'halt', where: one.id, figure: free, limit: needed },
      what: say`${one.id} stands ${length(free)} from the middle of ${path.id}, ${length(point.at)} along it; trains need ${length(needed)}.`,
      mend: asideWords(one, path.id, tight),
      source: 'NEM 102, BL1, or the reach of the vehicles that must run where that is more',
    }),
  ];
}

/** A place of a line that a building stands too near to, and which way the line runs there. */
type Tight = { readonly point: PathPoint; readonly free: number; readonly needed: number; readonly heading: number };

function passes({ ground, height }: BuiltStructure, { z }: PathPoint, { train }: Headroom): boolean {
  return z < ground.low + height && z + train > ground.low;
}

function isHidden({ id }: Path, { at }: PathPoint, tunnels: Among['tunnels']): boolean {
  return tunnels.some(({ line, from, to }) => line === id && at >= Math.min(from, to) && at <= Math.max(from, to));
}

/** How far the whole building has to go square to the line, to the side where that is less. */
function asideWords({ corners }: BuiltStructure, line: string, tight: readonly Tight[]): Sentence {
  const shift = (side: 1 | -1) =>
    Math.max(
      ...tight.map(({ point, needed, heading }) => {
        const off = corners.map(
          ([x, y]) => side * (Math.cos(heading) * (y - point.y) - Math.sin(heading) * (x - point.x)),
        );
        return needed - Math.min(...off);
      }),
    );
  const [left, right] = [shift(1), shift(-1)];
  return say`Move it ${atLeast(Math.min(left, right))} square to the line, to the ${left <= right ? 'left' : 'right'} of a train that runs along ${line}.`;
}

/** How far a building is from a place, 0 for one inside; mm. */
function freeOf({ corners }: BuiltStructure, { x, y }: PathPoint): number {
  return insideLoop(corners, [x, y]) ? 0 : nearestOnPath(alongPath(corners), [x, y]).distance;
}

function sharesGround(corners: readonly Point[], loop: readonly Point[]): boolean {
  return regionArea(clipped([{ outline: corners, holes: [] }], loop)) >= LEAST;
}

function inWater({ id, corners }: BuiltStructure, water: Water): readonly Finding[] {
  if (!sharesGround(corners, water.outline)) return [];
  return [
    found({
      ...{ rule: 'structure-in-water', level: 'care', where: id },
      what: say`${id} stands in ${water.id}, over the hole that is cut for it.`,
      mend: say`Move it to the water's edge, or draw ${water.id} around it.`,
      source: 'geometry',
    }),
  ];
}

function inOther(one: BuiltStructure, other: BuiltStructure): readonly Finding[] {
  if (!sharesGround(one.corners, other.corners)) return [];
  return [
    found({
      ...{ rule: 'structures-overlap', level: 'care', where: one.id },
      what: say`${one.id} and ${other.id} stand in each other.`,
      mend: say`Move one of them, or write the two as one building.`,
      source: 'geometry',
    }),
  ];
}

function onSlope({ id, ground: { low, high } }: BuiltStructure): readonly Finding[] {
  if (high - low <= GAP) return [];
  return [
    found({
      ...{ rule: 'structure-on-slope', level: 'note', where: id, figure: high - low, limit: GAP },
      what: say`The ground under ${id} falls by ${length(high - low)}, from ${length(high)} to ${length(low)} over the deck.`,
      mend: say`Level it with a bank as large as its plan and ${length(low)} to ${length(high)} high, or build its foot ${length(high - low)} taller on the low side.`,
      source: PRACTICE,
    }),
  ];
}
