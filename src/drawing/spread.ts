/** A label on a line: where it wants to stand and how much room it takes on each side, mm. */
export type Wanted = { readonly at: number; readonly half: number };

type Run = { readonly from: number; readonly count: number; readonly at: number };

/** Offsets at which labels would stand if they touched each other in order. */
function packedOffsets(wanted: readonly Wanted[]): readonly number[] {
  let offset = 0;
  return wanted.map((label, i) => {
    const before = wanted[i - 1];
    if (before !== undefined) offset += before.half + label.half;
    return offset;
  });
}

/** Runs that would overlap are joined about the mean of what their labels want (pool adjacent violators). */
function pooled(aims: readonly number[]): readonly Run[] {
  const runs: Run[] = [];
  aims.forEach((aim, i) => {
    let run: Run = { from: i, count: 1, at: aim };
    for (let last = runs.at(-1); last !== undefined && last.at > run.at; last = runs.at(-1)) {
      runs.pop();
      const count = last.count + run.count;
      run = { from: last.from, count, at: (last.at * last.count + run.at * run.count) / count };
    }
    runs.push(run);
  });
  return runs;
}

/**
 * Where labels stand so that none overlaps and the sum of squared moves is least; the order (by `at`) is kept.
 * Within `bounds` when they hold all labels, else centred on them. mm.
 */
export function spread(
  wanted: readonly Wanted[],
  bounds: { readonly from: number; readonly to: number },
): readonly number[] {
  const offsets = packedOffsets(wanted);
  const last = wanted.at(-1);
  const first = wanted[0];
  if (first === undefined || last === undefined) return [];
  const taken = (offsets.at(-1) ?? 0) + first.half + last.half;
  const slack = bounds.to - bounds.from - taken;
  const low = (slack < 0 ? bounds.from + slack / 2 : bounds.from) + first.half;
  const high = low + Math.max(0, slack);
  const runs = pooled(wanted.map((label, i) => label.at - (offsets[i] ?? 0)));
  return runs.flatMap((run) =>
    Array.from({ length: run.count }, (_, i) => Math.min(high, Math.max(low, run.at)) + (offsets[run.from + i] ?? 0)),
  );
}
