import { standing } from '../geometry/pose.ts';
import type { Part } from '../stock/part.ts';
import { type Bay, baysOf, footprintOf } from './routing/bays.ts';
import type { Wall } from './routing/site.ts';
import { wallsOf } from './routing/walls.ts';

/** What the bays of benches follow from; a whole notebook will do. */
export type BenchBook = {
  readonly benches: readonly {
    readonly id: string;
    readonly place: { readonly x: number; readonly y: number; readonly turn: number };
  }[];
  readonly parts: readonly Part[];
};

/** Boards on edge of all benches, whatever their phase; notebook coordinates, mm. */
export function benchWalls({ benches, parts }: BenchBook): readonly Wall[] {
  const poses = benches.map(({ id, place }) => ({ bench: id, pose: standing([place.x, place.y], place.turn) }));
  return wallsOf(
    parts.map((part) => ({ ...part, phase: 'now' as const })),
    poses,
  );
}

/** Every bay of every bench, column by column from the left, each from the front; notebook coordinates, mm. */
export function benchBays(book: BenchBook): readonly Bay[] {
  const walls = benchWalls(book);
  const footprints = book.benches.flatMap(({ id }) => footprintOf(id, walls) ?? []);
  return baysOf({ footprints, walls });
}
