import { standing, within } from '../geometry/pose.ts';
import type { Point } from '../geometry/shapes.ts';
import type { Part, Placement } from '../stock/part.ts';
import { requestFeature } from '../stock/request-feature.ts';
import type { BenchBook } from './bench-bays.ts';
import { type BusHole, holeRequests } from './holes.ts';

/** A hole for the bus as its piece's drawing shows it. */
export type HoleOnPart = {
  /** what is written on the piece */
  readonly label: string;
  /** its middle from the left end and the bottom edge, mm; null when it misses the piece */
  readonly at: Point | null;
  /** what is marked at that end, `front`; null where the end bears no mark */
  readonly end: string | null;
  /** which edge the bottom one is in place */
  readonly edge: 'underside' | 'upper edge' | 'bottom edge';
};

/** Where a hole lies on its piece; null when there is no such piece. */
export function holeOnPart({ benches, parts }: BenchBook, hole: BusHole): HoleOnPart | null {
  const part = parts.find(({ places }) => places.some(({ id }) => id === hole.part));
  const place = part?.places.find(({ id }) => id === hole.part);
  const bench = benches.find(({ id }) => id === part?.bench);
  if (part === undefined || place === undefined || bench === undefined) return null;
  const pose = within(standing([bench.place.x, bench.place.y], bench.place.turn), place.pose);
  const [request] = holeRequests([hole]);
  const feature = request === undefined ? null : requestFeature(part.blank, pose, request);
  const up = pose.y[2];
  return {
    label: place.label,
    at: feature?.kind === 'hole' ? feature.at : null,
    end: leftMark(part, place),
    edge: up > 0.99 ? 'underside' : up < -0.99 ? 'upper edge' : 'bottom edge',
  };
}

/** The mark that tells which end of the bench a piece's left end comes to. */
function leftMark({ blank }: Part, { marks }: Placement): string | null {
  return marks.find(({ at, kind }) => kind === 'end' && at[0] < blank.length / 2)?.text ?? null;
}
