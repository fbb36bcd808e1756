/** From and to along a line, the lesser first; mm. */
export type Span = readonly [from: number, to: number];

/** What is left of some spans without the stretches of others; what is left under 1e-6 mm is nothing. */
export function spansWithout(spans: readonly Span[], others: readonly Span[]): readonly Span[] {
  return others.reduce<readonly Span[]>(
    (kept, [low, high]) =>
      kept
        .flatMap(([from, to]): readonly Span[] => [
          [from, Math.min(to, low)],
          [Math.max(from, high), to],
        ])
        .filter(([from, to]) => to - from > 1e-6),
    spans,
  );
}
