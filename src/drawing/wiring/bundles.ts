import type { Point } from '../../core/geometry/shapes.ts';
import type { WiringModel } from '../../core/wiring/wiring.ts';
import { pairNumber, pairsOf } from './wiring-stage.ts';

type Straight = readonly [Point, Point];

/** Lengths of bus that hang together with the same pairs in them, from above; notebook mm. */
export type Bundle = { readonly numbers: readonly string[]; readonly straights: readonly Straight[] };

/** Places nearer than this are one, mm. */
const ONE = 0.5;

/** Every length of the bus with all pairs that run along it: parted where a pair begins, ends or leaves it. */
export function bundlesOf(wiring: WiringModel): readonly Bundle[] {
  const all = pairsOf(wiring)
    .filter(({ kind }) => kind === 'bus')
    .flatMap(({ label, path }) =>
      path.slice(1).map((to, i) => ({ number: pairNumber({ label }), straight: flat(path[i] ?? to, to) })),
    );
  const stops = all.flatMap(({ straight }) => straight);
  const edges = new Map<string, { readonly straight: Straight; readonly numbers: string[] }>();
  for (const { number, straight } of all) {
    for (const piece of partedAt(straight, stops)) {
      const known = edges.get(keyOf(piece));
      if (known === undefined) edges.set(keyOf(piece), { straight: piece, numbers: [number] });
      else if (!known.numbers.includes(number)) known.numbers.push(number);
    }
  }
  return gathered([...edges.values()].map(({ numbers, straight }) => ({ numbers, straights: [straight] })));
}

/** Bundles of the same pairs that touch, as one. */
export function gathered(bundles: readonly Bundle[]): readonly Bundle[] {
  const groups: Bundle[] = [];
  for (const bundle of bundles) {
    const near = groups.filter((one) => alike(one, bundle) && touch(one, bundle));
    const rest = groups.filter((one) => !near.includes(one));
    groups.splice(0, groups.length, ...rest, {
      numbers: bundle.numbers,
      straights: [...near.flatMap(({ straights }) => straights), ...bundle.straights],
    });
  }
  return groups;
}

/** The longest straight of a bundle: where its pairs are named. */
export function longestOf({ straights }: Bundle): Straight | null {
  return straights.reduce<Straight | null>(
    (best, one) => (best === null || lengthOf(one) > lengthOf(best) + 1e-6 ? one : best),
    null,
  );
}

function flat([x0, y0]: readonly [number, number, number], [x1, y1]: readonly [number, number, number]): Straight {
  return [
    [x0, y0],
    [x1, y1],
  ];
}

function lengthOf([from, to]: Straight): number {
  return apart(from, to);
}

function apart(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

function keyOf(straight: Straight): string {
  return straight
    .map(([x, y]) => `${Math.round(x / ONE)} ${Math.round(y / ONE)}`)
    .toSorted()
    .join(' ');
}

/** A straight parted at every stop that lies on it. */
function partedAt([from, to]: Straight, stops: readonly Point[]): readonly Straight[] {
  const long = apart(from, to);
  if (long < ONE) return [];
  const on = stops.filter((stop) => Math.abs(apart(from, stop) + apart(stop, to) - long) < 1e-3);
  const sorted = [from, ...on, to].toSorted((a, b) => apart(from, a) - apart(from, b));
  return sorted.slice(1).flatMap((next, i): readonly Straight[] => {
    const before = sorted[i] ?? next;
    return apart(before, next) < ONE ? [] : [[before, next]];
  });
}

function alike(a: Bundle, b: Bundle): boolean {
  return a.numbers.length === b.numbers.length && a.numbers.every((one) => b.numbers.includes(one));
}

function touch(a: Bundle, b: Bundle): boolean {
  return a.straights.some((one) => b.straights.some((other) => one.some((p) => other.some((q) => apart(p, q) < ONE))));
}
