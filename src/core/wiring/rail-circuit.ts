import type { Branch } from './circuit.ts';
import type { Feeder } from './feeders.ts';
import type { Gap } from './gap.ts';
import type { RailPlan, RailSegment } from './rail-plan.ts';

/** A length of rail as a branch: there and back along both rails. */
export type RailBranch = Branch & { readonly line: string; readonly start: number; readonly end: number };

/** The node of the rails that a feeder is soldered to. */
export function feederNode(feeder: string): string {
  return `rail ${feeder}`;
}

/** Rails as branches, parted where they are cut and at every feeder; ohm per m is one rail's. */
export function railBranches(
  { segments, ways }: Pick<RailPlan, 'segments' | 'ways'>,
  fed: { readonly gaps: readonly Gap[]; readonly feeders: readonly Feeder[]; readonly ohmPerMetre: number },
): { readonly rails: readonly RailBranch[]; readonly turnouts: readonly Branch[] } {
  const ohm = (length: number) => (2 * fed.ohmPerMetre * length) / 1000;
  return {
    rails: segments.flatMap((segment) => segmentBranches(segment, fed, ohm)),
    turnouts: ways.map(({ from, to, length }) => ({ id: `${from} to ${to}`, from, to, ohm: ohm(length) })),
  };
}

type Mark = { readonly at: number; readonly kind: 'feeder' | 'cut'; readonly id: string };

function segmentBranches(
  segment: RailSegment,
  { gaps, feeders }: { readonly gaps: readonly Gap[]; readonly feeders: readonly Feeder[] },
  ohm: (length: number) => number,
): readonly RailBranch[] {
  const { from, to } = segment;
  const marks: readonly Mark[] = [
    ...feeders.filter((one) => one.segment === segment.id).map(({ at, id }): Mark => ({ at, kind: 'feeder', id })),
    ...gaps.filter((one) => one.segment === segment.id).map(({ at, id }): Mark => ({ at, kind: 'cut', id })),
  ].toSorted((a, b) => a.at - b.at);
  const cutAt = (end: number) => marks.find(({ kind, at }) => kind === 'cut' && Math.abs(at - end) < 1e-6);
  const inner = marks.filter(({ kind, at }) => kind === 'feeder' || (at > from.at + 1e-6 && at < to.at - 1e-6));
  const [first, last] = [cutAt(from.at), cutAt(to.at)];
  const branches: RailBranch[] = [];
  let [node, start] = [first === undefined ? from.node : `${first.id} on`, from.at];
  const until = (next: string, end: number) =>
    branches.push({
      id: `${segment.id}/${branches.length + 1}`,
      from: node,
      to: next,
      ohm: ohm(end - start),
      line: segment.line,
      start,
      end,
    });
  for (const { at, kind, id } of inner) {
    until(kind === 'cut' ? `${id} to` : feederNode(id), at);
    [node, start] = [kind === 'cut' ? `${id} on` : feederNode(id), at];
  }
  until(last === undefined ? to.node : `${last.id} to`, to.at);
  return branches;
}
