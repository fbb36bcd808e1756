/** Where a value stands in what the author wrote. Lines and columns count from 1; path is the key path in the file. */
export type Spot = {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly path: string;
};

/**
 * A mistake in the content, found anywhere from the first byte to the last computation.
 * `at` names the value (`benchwork.dimensions.side`); `offset` counts characters into its text.
 */
export type Fault = {
  readonly rule: string;
  readonly at: string;
  readonly offset?: number;
  readonly what: string;
  readonly mend: string;
};

/** A fault at its place in the file, ready to print. */
export type Problem = Spot & {
  readonly rule: string;
  readonly what: string;
  readonly mend: string;
};

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Places of all values of a plan by their dotted path, chapter first: `benchwork.benches.0.legs.form`. */
export type Spots = Readonly<Record<string, Spot>>;

export function done<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function failed(...faults: readonly Fault[]): Result<never> {
  return { ok: false, faults };
}

/** The nearest known place: the value itself, else the closest thing that contains it. */
function spotOf(spots: Spots, at: string): Spot {
  for (let path = at; path !== ''; path = path.slice(0, Math.max(0, path.lastIndexOf('.')))) {
    const spot = spots[path];
    if (spot !== undefined) return spot;
  }
  return spots[''] ?? { file: '', line: 1, column: 1, path: at };
}

export function problemAt(spots: Spots, fault: Fault): Problem {
  const spot = spotOf(spots, fault.at);
  const column = spot.column + (fault.offset ?? 0);
  return { ...spot, column, rule: fault.rule, what: fault.what, mend: fault.mend };
}

/** File, then line, then column, then rule; by code unit, so that every machine prints the same list. */
export function inReadingOrder(a: Problem, b: Problem): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  if (a.line !== b.line) return a.line - b.line;
  if (a.column !== b.column) return a.column - b.column;
  return a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0;
}
