import type { Gap } from './gap.ts';
import type { GapInput } from './input.ts';
import type { RailPlan, RailSegment, SegmentEnd } from './rail-plan.ts';

/** Two frogs that face each other over less than this share one cut in the middle; common practice, no source. mm */
const LINK = 300;

const TOUCH = 1e-6;

/** The turnout whose live frog a segment's end comes from: its points are before the frog, its other ends beyond. */
export function liveFrogAt({ turnouts }: Pick<RailPlan, 'turnouts'>, { end }: SegmentEnd): string | null {
  const [owner, side] = end.split('.');
  if (side === 'points') return null;
  return turnouts.find(({ id, frog }) => id === owner && frog === 'live')?.id ?? null;
}

/**
 * Cuts beyond live frogs: a frog takes the polarity of the route that is set, so what is fed beyond it must not touch it.
 * At each end beyond the frog, or where the author cut the same rails; frogs that face each other closely share one cut
 * through both rails.
 */
export function frogGaps(rails: Pick<RailPlan, 'segments' | 'turnouts'>, written: readonly GapInput[]): readonly Gap[] {
  return rails.segments.flatMap((segment): readonly Gap[] => {
    const { id, line, from, to } = segment;
    const [before, after] = [liveFrogAt(rails, from), liveFrogAt(rails, to)];
    const own = written.filter((one) => one.line === line && one.at >= from.at - TOUCH && one.at <= to.at + TOUCH);
    const gap = (at: number, of: string, side: Gap['rails']): Gap => ({
      ...{ id: '', line, at, segment: id, why: 'frog', of },
      rails: side,
    });
    const near = (end: number) =>
      own.map(({ at }) => at).toSorted((a, b) => Math.abs(a - end) - Math.abs(b - end))[0] ?? end;
    if (before !== null && after !== null && to.at - from.at < LINK)
      return [gap(near((from.at + to.at) / 2), `${before} and ${after}`, 'both')];
    return [
      ...(before === null ? [] : [gap(near(from.at), before, 'frog')]),
      ...(after === null ? [] : [gap(near(to.at), after, 'frog')]),
    ];
  });
}

/** Rails between a live frog and the cut beyond it: fed through the frog alone, never by a feeder. mm */
export function belongsToFrog(
  rails: Pick<RailPlan, 'segments' | 'turnouts'>,
  gaps: readonly Gap[],
  run: { readonly line: string; readonly from: number; readonly to: number },
): boolean {
  const cutAt = ({ id }: RailSegment, at: number) =>
    gaps.some((one) => one.segment === id && Math.abs(one.at - at) < TOUCH);
  return rails.segments.some((segment) => {
    const { line, from, to } = segment;
    if (line !== run.line || run.from < from.at - TOUCH || run.to > to.at + TOUCH) return false;
    const begins = Math.abs(run.from - from.at) < TOUCH && liveFrogAt(rails, from) !== null && !cutAt(segment, from.at);
    const ends = Math.abs(run.to - to.at) < TOUCH && liveFrogAt(rails, to) !== null && !cutAt(segment, to.at);
    return begins || ends;
  });
}
