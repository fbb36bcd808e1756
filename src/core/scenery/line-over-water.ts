import type { Finding } from '../finding.ts';
import { atLeast, length, say } from '../units/say.ts';
import { alongPath, insideLoop, nearestOnPath } from './distance.ts';
import { found } from './found.ts';
import type { Land, Path, PathPoint, Stretch, Water } from './land.ts';
import { samples } from './line-findings.ts';

/** A bed that hangs less than this over a water is cut off by eye, mm; common practice, no source. */
const BY_EYE = 1;

/** Places along a line where its bed lies over water; `over` is how far it reaches in, mm. */
type Wet = { readonly at: number; readonly over: number; readonly middle: boolean };

/** Track over water that no bridge carries, and bridges over a water they don't cross. */
export function lineOverWater({ water, bridges }: Pick<Land, 'water' | 'bridges'>, paths: readonly Path[]) {
  return [
    ...paths.flatMap((path) => {
      const own = bridges.filter(({ line }) => line === path.id);
      return water.flatMap((one) =>
        runsOf(wetPlaces(path, one).filter(({ at }) => !own.some((bridge) => carries(bridge, at)))).map((run) =>
          unbridged({ run, path, water: one, bridges: own }),
        ),
      );
    }),
    ...bridges.flatMap((bridge) => elsewhere(bridge, paths, water)),
  ];
}

function carries({ from, to }: Stretch, at: number): boolean {
  return at >= Math.min(from, to) - 1e-6 && at <= Math.max(from, to) + 1e-6;
}

/** The places of a line whose bed reaches into a water. */
function wetPlaces(path: Path, water: Water): readonly Wet[] {
  const end = path.points[path.points.length - 1]?.at ?? 0;
  return samples(path, 0, end).flatMap((place) => wetAt(place, path, water) ?? []);
}

function wetAt({ at, x, y }: PathPoint, { bed = 0 }: Path, { outline }: Water): Wet | null {
  const { distance } = nearestOnPath(alongPath(outline), [x, y]);
  const middle = insideLoop(outline, [x, y]);
  const over = middle ? bed + distance : bed - distance;
  return over > BY_EYE ? { at, over, middle } : null;
}

/** Samples of a line are never farther apart than this, mm. */
const GAP = 10.1;

function runsOf(wet: readonly Wet[]): readonly (readonly Wet[])[] {
  const runs: Wet[][] = [];
  for (const one of wet) {
    const last = runs[runs.length - 1];
    const before = last?.[last.length - 1];
    if (last !== undefined && before !== undefined && one.at - before.at <= GAP) last.push(one);
    else runs.push([one]);
  }
  return runs;
}

type Unbridged = {
  readonly run: readonly Wet[];
  readonly path: Path;
  readonly water: Water;
  readonly bridges: readonly Stretch[];
};

function unbridged({ run, path, water, bridges }: Unbridged): Finding {
  const [from, to] = [run[0]?.at ?? 0, run[run.length - 1]?.at ?? 0];
  const over = run.reduce((most, one) => Math.max(most, one.over), 0);
  const near = bridges.find((bridge) => carries(bridge, from - GAP) || carries(bridge, to + GAP));
  const [low, high] = [Math.max(0, Math.floor(from)), Math.ceil(to)];
  const mend =
    near === undefined
      ? say`Write a bridge on ${path.id} from ${length(low)} to ${length(high)} over ${water.id}, or move ${water.id} ${length(Math.ceil(over))} off it.`
      : say`Let bridge ${near.id} reach from ${length(Math.min(low, near.from, near.to))} to ${length(Math.max(high, near.from, near.to))}, or pull ${water.id} in by ${atLeast(Math.ceil(over))} there.`;
  const level = run.some(({ middle }) => middle) ? 'halt' : 'care';
  return found({
    ...{ rule: 'line-over-water', level, where: path.id, figure: over, limit: 0 },
    what: say`From ${length(from)} to ${length(to)} along it, ${path.id} lies up to ${length(over)} over ${water.id} with no bridge; the deck is cut away there.`,
    mend,
    source: 'geometry',
  });
}

/** A bridge that names a water and touches it nowhere. */
function elsewhere(bridge: Stretch, paths: readonly Path[], waters: readonly Water[]): readonly Finding[] {
  const [path, water] = [
    paths.find(({ id }) => id === bridge.line),
    waters.find(({ id }) => id === (bridge.over ?? null)),
  ];
  if (path === undefined || water === undefined) return [];
  const wet = wetPlaces(path, water);
  if (wet.some(({ at }) => carries(bridge, at))) return [];
  const [first, last] = [wet[0]?.at, wet[wet.length - 1]?.at];
  const mend =
    first === undefined || last === undefined
      ? say`${path.id} never crosses ${water.id}: name the water it does cross, or leave out over:.`
      : say`${path.id} lies over ${water.id} from ${length(Math.floor(first))} to ${length(Math.ceil(last))}: set the bridge there.`;
  return [
    found({
      ...{ rule: 'bridge-elsewhere', level: 'care', where: bridge.id, figure: 0, limit: 0 },
      what: say`Bridge ${bridge.id}, from ${length(bridge.from)} to ${length(bridge.to)} along ${path.id}, is nowhere over ${water.id}.`,
      mend,
      source: 'geometry',
    }),
  ];
}
