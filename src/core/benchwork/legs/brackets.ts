import type { Pose, Vector } from '../../geometry/shapes.ts';
import type { Fitting, Site } from '../fitting.ts';
import { fetched, itemOf } from '../hardware/count.ts';
import { drivenTogether, metalScrewed } from '../hardware/driven.ts';
import { tidy } from '../machining.ts';
import type { Span } from './corners.ts';
import { LEDGE } from './figures.ts';
import { type PadFigures, padId } from './pad.ts';

/** Brackets in the corner of foot and pad, with screws into face grain only, since screws in end grain don't count. */
const BRACKETS = 2;
/** How long a bracket's legs are where stock doesn't say, and its metal under a screw's head; common practice, no source. mm. */
const LEG = 40;
const METAL = 1.5;
/** Two screws in each leg, at these shares of its length from the corner; common practice, no source. */
const ALONG_LEG: readonly number[] = [0.25, 0.75];
/** Where the two brackets may stand across a foot, from either edge: the first that keeps off the pad's holes. */
const ACROSS_FOOT: readonly number[] = [0.25, 0.3, 0.35, 0.2, 0.15];
/** Wood between a screw and a hole beside it, and the thickest screw of a bracket; common practice, no source. mm. */
const BESIDE_HOLE = 3;
const SCREW = 4.2;

/** A foot on its pad, as seen from before the leg's side: `behind` is the foot's inner face, where the ledge begins; mm. */
export type Foot = {
  readonly view: Pose;
  readonly where: string;
  /** the piece whose inner face the brackets stand against */
  readonly upright: string;
  readonly u: Span;
  readonly behind: number;
  readonly pad: PadFigures;
};

type Spot = readonly [number, number];

/** How far the brackets' middles lie from the foot's edges, as a share of its width. */
function shareOf({ u, behind, pad }: Foot, reaches: readonly number[]): number {
  const wide = u[1] - u[0];
  const middles = (share: number) => [u[0] + share * wide, u[1] - share * wide];
  const nearest = (share: number) =>
    Math.min(
      ...middles(share).flatMap((at) =>
        reaches.flatMap((reach) => pad.holes.map(([x, y]) => Math.hypot(at - x, behind + reach - y))),
      ),
    );
  const clear = pad.hole / 2 + SCREW / 2 + BESIDE_HOLE;
  const found = ACROSS_FOOT.find((share) => nearest(share) >= clear);
  return found ?? ACROSS_FOOT.reduce((best, share) => (nearest(share) > nearest(best) ? share : best));
}

/** Where the brackets' screws go: from the corner along each leg, and across the foot; mm. */
function bracketSpots(foot: Foot, leg: number): readonly Spot[] {
  const reaches = ALONG_LEG.map((share) => tidy(share * Math.min(leg, LEDGE)));
  const across = shareOf(foot, reaches) * (foot.u[1] - foot.u[0]);
  return [tidy(foot.u[0] + across), tidy(foot.u[1] - across)].flatMap((u) => reaches.map((reach): Spot => [u, reach]));
}

/** Two brackets for one foot, half their screws into its inner face and half down into the ledge of its pad. */
export function bracketed(site: Site, foot: Foot): Pick<Fitting, 'fasteners' | 'hardware' | 'findings'> {
  const { view, where, upright, behind, pad } = foot;
  const bracket = fetched(site.goods, { form: 'bracket', where }, BRACKETS);
  const item = site.goods === null ? null : itemOf(site.goods, { form: 'bracket' });
  const spots = bracketSpots(foot, item?.length ?? LEG);
  const top = tidy(pad.low + 2 * pad.t);
  const drive = (piece: string, direction: Vector, headAt: (spot: Spot) => Vector) =>
    metalScrewed(
      site.goods,
      { view, holds: `bracket.${piece}`, heads: spots.map(headAt), direction, through: [piece] },
      { through: METAL, into: pad.t },
    );
  const screws = drivenTogether([
    drive(upright, [0, -1, 0], ([u, reach]) => [u, tidy(behind + METAL), tidy(top + reach)]),
    drive(padId(pad, 2), [0, 0, -1], ([u, reach]) => [u, tidy(behind + reach), tidy(top + METAL)]),
  ]);
  return { ...screws, hardware: bracket.hardware, findings: [...bracket.findings, ...screws.findings] };
}
