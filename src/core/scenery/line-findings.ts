import type { Finding } from '../finding.ts';
import { atLeast, atMost, length, say } from '../units/say.ts';
import type { Field } from './field.ts';
import { found } from './found.ts';
import type { Land, Path, PathPoint, Stretch } from './land.ts';
import { between } from './path-pieces.ts';

/** Height of trains over the roadbed's underside that a tunnel must clear, and the roof over it; mm. */
export type Headroom = { readonly train: number; readonly roof: number; readonly source: string };

/** Foam and plaster over a tunnel hold from here on; common practice, no source. mm. */
export const LEAST_ROOF = 10;

/** A cutting this much deeper than a tunnel needs is still the way into one; common practice, no source. mm. */
const PORTAL = 5;

const STEP = 10;

/** Where hills and trains want the same room: tunnels too low under their hill, and cuttings as deep as a tunnel. */
export function lineFindings(
  land: Land,
  ground: { readonly bent: Field; readonly paths: readonly Path[] },
  headroom: Headroom,
): readonly Finding[] {
  return ground.paths.flatMap((path) => {
    const stretches = [...land.tunnels, ...land.bridges].filter(({ line }) => line === path.id);
    const tunnels = land.tunnels.filter(({ line }) => line === path.id);
    return [
      ...stretches.flatMap((stretch) => pastEnd(stretch, path)),
      ...tunnels.flatMap((tunnel) => lowRoof({ tunnel, path, bent: ground.bent }, headroom)),
      ...deepCutting({ tunnels, path, bent: ground.bent }, headroom),
      ...dugHill({ tunnels, path, bent: ground.bent }, headroom),
    ];
  });
}

/** A tunnel or bridge that begins before its line or ends after it, or that ends where it begins. */
function pastEnd({ id, from, to }: Stretch, path: Path): readonly Finding[] {
  const end = path.points[path.points.length - 1]?.at ?? 0;
  const over = Math.max(0, -Math.min(from, to), Math.max(from, to) - end);
  if (over <= 0.01 && to > from) return [];
  return [
    found({
      ...{ rule: 'stretch-off-line', level: 'halt', where: id, figure: over, limit: 0 },
      what: say`${id} goes from ${length(from)} to ${length(to)} along ${path.id}, which is ${length(end)} long.`,
      mend: say`Write “from” and “to” between 0 and ${atMost(end)}, “from” before “to”.`,
      source: 'geometry',
    }),
  ];
}

type Tunnel = { readonly tunnel: Stretch; readonly path: Path; readonly bent: Field };

/** The ground over a tunnel must clear the train and keep a roof; the worst place is told. */
function lowRoof({ tunnel, path, bent }: Tunnel, { train, roof, source }: Headroom): readonly Finding[] {
  const worst = samples(path, tunnel.from, tunnel.to)
    .map((p) => ({ at: p.at, over: bent(p.x, p.y) - p.z }))
    .reduce<{ at: number; over: number } | null>((low, one) => (low === null || one.over < low.over ? one : low), null);
  const need = train + roof;
  if (worst === null || worst.over >= need) return [];
  const short = need - worst.over;
  return [
    found({
      ...{ rule: 'hill-through-train', level: 'halt', where: tunnel.id, figure: worst.over, limit: need },
      what: say`In ${tunnel.id}, ${length(worst.at)} along ${path.id}, the hill stands ${length(worst.over)} over the roadbed; a train and a roof need ${length(need)}.`,
      mend: say`Raise the hill there by ${atLeast(short)}, lower the line, or shorten the tunnel to where the ground is high enough.`,
      source,
    }),
  ];
}

type Cutting = { readonly tunnels: readonly Stretch[]; readonly path: Path; readonly bent: Field };

/** A line that a hill stands over without a tunnel is dug free; deep enough for a tunnel, that is worth saying. */
function deepCutting({ tunnels, path, bent }: Cutting, { train, roof, source }: Headroom): readonly Finding[] {
  const last = path.points[path.points.length - 1]?.at ?? 0;
  const deep = samples(path, 0, last)
    .filter(({ at }) => !tunnels.some(({ from, to }) => at >= from && at <= to))
    .map((p) => ({ at: p.at, cut: bent(p.x, p.y) - p.z }))
    .filter(({ cut }) => cut >= train + roof + PORTAL);
  const [first, worst] = [deep[0], deep.reduce((most, { cut }) => Math.max(most, cut), 0)];
  if (first === undefined) return [];
  const end = deep[deep.length - 1]?.at ?? first.at;
  return [
    found({
      ...{ rule: 'hill-over-line', level: 'care', where: path.id, figure: worst, limit: train + roof },
      what: say`A hill stands over ${path.id} from ${length(first.at)} to ${length(end)}, up to ${length(worst)} over its roadbed; it is dug away to a cutting there.`,
      mend: say`Write a tunnel on ${path.id} from ${length(first.at)} to ${length(end)}, or move the hill.`,
      source,
    }),
  ];
}

/** A line cut this deep into a hill is no longer trimmed by eye; common practice, no source. mm. */
const TRIMMED = 10;

/** A hill too low for a tunnel that a line runs through: it is dug free there; ways to a tunnel's mouth are meant. */
function dugHill({ tunnels, path, bent }: Cutting, { train, roof, source }: Headroom): readonly Finding[] {
  const last = path.points[path.points.length - 1]?.at ?? 0;
  const cuts = samples(path, 0, last).map((p) => ({ at: p.at, cut: bent(p.x, p.y) - p.z }));
  const mouth = (at: number) =>
    tunnels.some(({ from, to }) => at >= Math.min(from, to) - STEP && at <= Math.max(from, to) + STEP);
  return cutRuns(cuts).flatMap((run): readonly Finding[] => {
    const deepest = run.reduce((most, { cut }) => Math.max(most, cut), 0);
    const [from, to] = [run[0]?.at ?? 0, run[run.length - 1]?.at ?? 0];
    if (deepest >= train + roof + PORTAL || run.some(({ at }) => mouth(at))) return [];
    return [
      found({
        ...{ rule: 'hill-dug-away', level: 'care', where: path.id, figure: deepest, limit: TRIMMED },
        what: say`A hill stands over ${path.id} from ${length(from)} to ${length(to)}, up to ${length(deepest)} over its roadbed, too low for a tunnel; it is dug away to a cutting there.`,
        mend: say`Move the hill off the line, lower it there by ${atLeast(deepest)}, or raise it by ${atLeast(train + roof + PORTAL - deepest)} and write a tunnel.`,
        source,
      }),
    ];
  });
}

type Cut = { readonly at: number; readonly cut: number };

/** Neighbouring places that are cut deeper than by eye. */
function cutRuns(cuts: readonly Cut[]): readonly (readonly Cut[])[] {
  const runs: Cut[][] = [];
  cuts.forEach((one, i) => {
    if (one.cut <= TRIMMED) return;
    const before = cuts[i - 1];
    const last = runs[runs.length - 1];
    if (last !== undefined && before !== undefined && before.cut > TRIMMED) last.push(one);
    else runs.push([one]);
  });
  return runs;
}

/** Points of a path every 10 mm between two distances. */
export function samples({ points }: Path, from: number, to: number): readonly PathPoint[] {
  return points.slice(1).flatMap((b, i) => {
    const a = points[i] ?? b;
    const [lo, hi] = [Math.max(a.at, from), Math.min(b.at, to)];
    if (hi < lo) return [];
    const count = Math.max(1, Math.ceil((hi - lo) / STEP));
    return Array.from({ length: count + 1 }, (_, k) => between(a, b, lo + ((hi - lo) * k) / count));
  });
}
