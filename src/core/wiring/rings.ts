import type { Point } from '../geometry/shapes.ts';

/** Steps in which a place is looked for round another, and in how many directions; mm. */
const LOOK = { step: 10, ways: 16 } as const;

/** A point and places on rings round it as far as asked, the nearest first; mm. */
export function ringsAbout([x, y]: Point, most: number): readonly Point[] {
  const rings = Math.floor(most / LOOK.step);
  return [
    [x, y],
    ...Array.from({ length: rings * LOOK.ways }, (_, i): Point => {
      const off = (Math.floor(i / LOOK.ways) + 1) * LOOK.step;
      const turn = (2 * Math.PI * (i % LOOK.ways)) / LOOK.ways;
      return [x + off * Math.cos(turn), y + off * Math.sin(turn)];
    }),
  ];
}
