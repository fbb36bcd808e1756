import type { Mark, Spot } from './mark.ts';

/** How an area is hatched: distance between lines mm, and the slope of the lines, 1 rising or -1 falling to the right. */
export type Hatch = { readonly pitch: number; readonly slope: 1 | -1 };

/** Crossings of the line y = -slope x + c (paper, y down) with closed loops, by x. */
function hits(loops: readonly (readonly Spot[])[], slope: number, c: number): readonly number[] {
  const offset = ([x, y]: Spot) => y + slope * x - c;
  const found = loops.flatMap((loop) =>
    loop.flatMap((a, i): readonly number[] => {
      const b = loop[(i + 1) % loop.length] ?? a;
      const [fa, fb] = [offset(a), offset(b)];
      return fa > 0 === fb > 0 ? [] : [a[0] + (fa / (fa - fb)) * (b[0] - a[0])];
    }),
  );
  return found.toSorted((p, q) => p - q);
}

/** Narrow lines at 45 degrees over an area, the holes left out (ISO 128-3, hatching). */
export function hatchMarks(loops: readonly (readonly Spot[])[], { pitch, slope }: Hatch): readonly Mark[] {
  const offsets = loops.flat().map(([x, y]) => y + slope * x);
  if (offsets.length === 0) return [];
  const step = pitch * Math.SQRT2;
  const first = Math.ceil(Math.min(...offsets) / step);
  const last = Math.floor(Math.max(...offsets) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step).flatMap((c) => {
    const xs = hits(loops, slope, c);
    return xs.flatMap((x, i): readonly Mark[] => {
      const end = xs[i + 1];
      if (i % 2 === 1 || end === undefined || end - x < 0.05) return [];
      return [{ kind: 'line', from: [x, c - slope * x], to: [end, c - slope * end], pen: 'hatch', role: 'hatch' }];
    });
  });
}
