/** A break of grade: distance along the line and height there, mm. */
export type Break = { readonly at: number; readonly height: number };

/** A parabola that rounds a break: from and to along the line, slopes before and after as ratios. */
export type VerticalCurve = {
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly before: number;
  readonly after: number;
  /** length the rule or the author asked for, mm */
  readonly wanted: number;
};

/** Heights along a line: straight grades between breaks, level before the first and after the last. */
export type Profile = { readonly breaks: readonly Break[]; readonly curves: readonly VerticalCurve[] };

/** A break as asked: its own length of curve, or the rule's. */
export type BreakAsked = Break & { readonly curve: number | null };

/** Radius of a parabola at its middle: length / change of slope (change as a ratio, more than 0); mm. */
export function verticalRadius({ length, change }: { readonly length: number; readonly change: number }): number {
  return length / change;
}

/** How far the parabola stands off the break it rounds: change x length / 8; mm. */
export function verticalOffset({ length, change }: { readonly length: number; readonly change: number }): number {
  return (change * length) / 8;
}

/** Rise over a vertical curve from level to `change`: change x length / 2; mm. */
export function verticalRise({ length, change }: { readonly length: number; readonly change: number }): number {
  return (change * length) / 2;
}

/** Length of vertical curve for a change of slope, by a rule of so many mm for each 1 %; mm. */
export function verticalLength({
  change,
  perPercent,
}: {
  readonly change: number;
  readonly perPercent: number;
}): number {
  return Math.abs(change) * 100 * perPercent;
}

function slopes(breaks: readonly Break[]): readonly number[] {
  const between = breaks.slice(1).map((one, i) => {
    const before = breaks[i] ?? one;
    return one.at === before.at ? 0 : (one.height - before.height) / (one.at - before.at);
  });
  return [0, ...between, 0];
}

/** The profile of a line of a length: every break rounded as asked, or as far as its neighbours and the ends leave room. */
export function profileOf(
  asked: readonly BreakAsked[],
  { length, perPercent }: { readonly length: number; readonly perPercent: number },
): Profile {
  const grades = slopes(asked);
  const wanted = asked.map(({ curve }, i) => {
    const change = (grades[i + 1] ?? 0) - (grades[i] ?? 0);
    return Math.abs(change) < 1e-12 ? 0 : (curve ?? verticalLength({ change, perPercent }));
  });
  const room = asked.map((_, i) => Math.min(share(asked, wanted, i - 1), share(asked, wanted, i)));
  const curves = asked.flatMap(({ at }, i): readonly VerticalCurve[] => {
    const [before, after, want] = [grades[i] ?? 0, grades[i + 1] ?? 0, wanted[i] ?? 0];
    const half = Math.min((want * (room[i] ?? 1)) / 2, at, Math.max(0, length - at));
    if (Math.abs(after - before) < 1e-12) return [];
    return [{ at, from: at - half, to: at + half, before, after, wanted: want }];
  });
  return { breaks: asked.map(({ at, height }) => ({ at, height })), curves };
}

/** How much of their wish the curves at breaks i and i + 1 can have, so that they do not meet. */
function share(breaks: readonly Break[], wanted: readonly number[], i: number): number {
  const [a, b] = [breaks[i], breaks[i + 1]];
  if (a === undefined || b === undefined) return 1;
  const halves = ((wanted[i] ?? 0) + (wanted[i + 1] ?? 0)) / 2;
  return halves <= b.at - a.at ? 1 : (b.at - a.at) / halves;
}

/** Height of the straight grades at a distance, mm. */
function unrounded(breaks: readonly Break[], at: number): number {
  const after = breaks.findIndex((one) => one.at > at);
  const [a, b] = [breaks[after < 0 ? breaks.length - 1 : after - 1], breaks[after]];
  if (a === undefined) return b?.height ?? 0;
  if (after < 0 || b === undefined) return a.height;
  return a.height + ((b.height - a.height) * (at - a.at)) / (b.at - a.at);
}

function curveOver({ curves }: Profile, at: number): VerticalCurve | undefined {
  return curves.find(({ from, to }) => from < at && at < to);
}

/** Height of the roadbed's underside above the deck's top at a distance along the line; mm. */
export function heightAt(profile: Profile, at: number): number {
  const curve = curveOver(profile, at);
  if (curve === undefined) return unrounded(profile.breaks, at);
  const { from, to, before, after } = curve;
  const start = unrounded(profile.breaks, from);
  const s = at - from;
  return start + before * s + ((after - before) * s * s) / (2 * (to - from));
}

/** Slope at a distance, as a ratio, positive upwards; at an unrounded break the slope after it. */
export function slopeAt(profile: Profile, at: number): number {
  const curve = curveOver(profile, at);
  if (curve !== undefined) {
    const { from, to, before, after } = curve;
    return before + ((after - before) * (at - from)) / (to - from);
  }
  const after = profile.breaks.findIndex((one) => one.at > at);
  const [a, b] = [profile.breaks[after - 1], profile.breaks[after]];
  return after < 0 || a === undefined || b === undefined ? 0 : (b.height - a.height) / (b.at - a.at);
}

/** Steepest slope between two distances, as a ratio without its sign. */
export function steepestBetween(profile: Profile, from: number, to: number): number {
  const stops = [
    from,
    to,
    ...profile.curves.flatMap((curve) => [curve.from, curve.to]),
    ...profile.breaks.map(({ at }) => at),
  ];
  const inside = stops.filter((at) => at >= from && at <= to).toSorted((a, b) => a - b);
  const middles = inside.slice(1).map((at, i) => (at + (inside[i] ?? at)) / 2);
  return [...inside, ...middles].reduce((most, at) => Math.max(most, Math.abs(slopeAt(profile, at))), 0);
}
