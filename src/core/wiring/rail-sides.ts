import type { RailPlan, RailSegment } from './rail-plan.ts';

/** Which rail of a segment wire a goes to, seen along its line from the line's start. */
export type Side = 'left' | 'right';

function other(side: Side): Side {
  return side === 'left' ? 'right' : 'left';
}

/** A segment's end at a piece of metal: whether the line runs there as the metal's own direction does. */
type Meeting = { readonly metal: string; readonly along: boolean };

/**
 * The side of wire a for every segment: the same metal has the same wire everywhere, carried on from each line that
 * nothing has reached yet, where a is left. Sections that reverse hand nothing on; theirs is for a reverser at rest.
 */
export function railSides(
  { metal, segments }: Pick<RailPlan, 'metal' | 'segments'>,
  reversing: ReadonlySet<string>,
): ReadonlyMap<string, Side> {
  const sides = new Map<string, Side>();
  const known = new Map<string, Side>();
  const meetings = new Map(segments.map((one) => [one.id, meetingsOf(metal, one)]));
  const plain = segments.filter(({ id }) => !reversing.has(id));
  const carry = (id: string): void => {
    const side = sides.get(id);
    const open = (meetings.get(id) ?? []).filter((one) => !known.has(one.metal));
    if (side === undefined) return;
    for (const { along, metal: at } of open) known.set(at, along ? side : other(side));
    for (const { metal: at } of open) for (const next of plain) if (!sides.has(next.id)) from(next.id, at);
  };
  const from = (id: string, at: string): void => {
    const meeting = (meetings.get(id) ?? []).find((one) => one.metal === at);
    const side = known.get(at);
    if (meeting === undefined || side === undefined) return;
    sides.set(id, meeting.along ? side : other(side));
    carry(id);
  };
  for (const { id } of plain) {
    if (sides.has(id)) continue;
    sides.set(id, 'left');
    carry(id);
  }
  for (const { id } of segments.filter((one) => reversing.has(one.id))) {
    const [first] = meetings.get(id) ?? [];
    const side = known.get(first?.metal ?? '') ?? 'left';
    sides.set(id, first?.along === false ? other(side) : side);
  }
  return sides;
}

/** Leaving an outlet or entering an inlet a line runs as the metal does. */
function meetingsOf(metal: RailPlan['metal'], { from, to }: RailSegment): readonly Meeting[] {
  return [
    { end: from.end, leaves: true },
    { end: to.end, leaves: false },
  ].flatMap(({ end, leaves }) => {
    const owner = metal.find(({ inlets, outlets }) => inlets.includes(end) || outlets.includes(end));
    return owner === undefined ? [] : [{ metal: owner.id, along: owner.outlets.includes(end) === leaves }];
  });
}
