import { fromWorld, standing, toWorld } from '../geometry/pose.ts';
import type { Point } from '../geometry/shapes.ts';
import type { WiredBench } from './input.ts';
import { nearestBay } from './routing/bays.ts';
import { outward, type Under } from './under.ts';

/** The nearest point of any bench to a point, and how far off it lies; notebook coordinates, mm. Null without a bench. */
export function nearestOnBenches(
  benches: readonly Pick<WiredBench, 'place' | 'length' | 'width'>[],
  point: Point,
): { readonly at: Point; readonly off: number } | null {
  const all = benches.map(({ length, place, width }) => {
    const pose = standing([place.x, place.y], place.turn);
    const [x, y] = fromWorld(pose, [point[0], point[1], 0]);
    const held: Point = [Math.min(length, Math.max(0, x)), Math.min(width, Math.max(0, y))];
    const [atX, atY] = toWorld(pose, [held[0], held[1], 0]);
    return { at: [atX, atY] as const, off: Math.hypot(held[0] - x, held[1] - y) };
  });
  const [first] = all;
  return first === undefined ? null : all.reduce((best, one) => (one.off < best.off ? one : best), first);
}

/** The bench that a place of the frame lies under, and where from that bench's front left corner; mm. */
export function onBench(
  under: Under,
  benches: readonly WiredBench[],
  at: Point,
): { readonly bench: string; readonly place: Point } {
  const bench = benches.find(({ id }) => id === nearestBay(under.bays, at)?.bay.bench) ?? under.bench;
  const [x, y] = fromWorld(standing([bench.place.x, bench.place.y], bench.place.turn), outward(under, at, 0));
  return { bench: bench.id, place: [x, y] };
}
