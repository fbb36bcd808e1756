import type { Finding } from '../finding.ts';
import { distance, nearestOnStraight } from '../geometry/straight.ts';
import { atLeast, length, say } from '../units/say.ts';
import { bite } from './bite.ts';
import { HOLE_FROM_CUT } from './cut-limits.ts';
import type { Blank, Feature } from './part.ts';

type Hole = Extract<Feature, { readonly kind: 'hole' }>;

/** A hole that was asked for, and all else that is cut into its piece. */
type Beside = { readonly hole: Hole; readonly others: readonly Feature[] };

/** Wood between a hole and each other cut of its final piece; one that runs into another is told elsewhere. */
export function nearCuts(blank: Blank, id: string, { hole, others }: Beside): readonly Finding[] {
  return others.flatMap((other) => {
    const wood = woodBetween(blank, hole, other);
    if (wood === null || wood < 0 || wood >= HOLE_FROM_CUT - 1e-6) return [];
    return [
      {
        ...{ rule: 'hole-near-cut', level: 'care', where: id, chapter: 'benchwork' },
        what: say`The hole for ${hole.for ?? 'a request'} in ${id} leaves ${length(wood)} of wood to its ${other.kind}${other.for === undefined ? '' : ` for ${other.for}`}.`,
        mend: say`Drill it ${atLeast(HOLE_FROM_CUT - wood)} farther off, or move what the ${other.kind} is for.`,
        ...{ figure: wood, limit: HOLE_FROM_CUT, unit: 'mm', source: 'common practice, no source', accepted: null },
      },
    ];
  });
}

/** From a hole's rim to the nearest point of another cut, mm; null for one that takes no wood across the piece. */
export function woodBetween(blank: Blank, { at, diameter }: Hole, other: Feature): number | null {
  if (other.kind === 'trim' || other.kind === 'counterbore') return null;
  if (other.kind === 'hole') return distance(at, other.at) - (diameter + other.diameter) / 2;
  const lost = bite(blank, other);
  if (lost === null) return null;
  const off = lost.loops.flatMap((loop) =>
    loop.map((to, i) => distance(at, nearestOnStraight(loop.at(i - 1) ?? to, to, at))),
  );
  return off.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY) - diameter / 2;
}
