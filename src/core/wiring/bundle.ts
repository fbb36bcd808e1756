/** Diameter of the circle round n equal circles of diameter 1 (Kravitz, Packing cylinders into cylindrical containers, 1967). */
const PACKED = [0, 1, 2, 2.1547, 2.4142, 2.7013, 3, 3, 3.3048, 3.6131, 3.813];

/** Drills as sold by the millimetre and by the sixteenth of an inch, mm; common practice, no source. */
const DRILLS = {
  mm: [5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 30, 35, 40],
  in: [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 22, 24].map((sixteenths) => (sixteenths * 25.4) / 16),
} as const;

/** A hole is this much wider than its wires, so that they pull through and a grommet fits; common practice, no source. */
const EASY = 1.25;

/** Diameter of a bundle of equal wires, mm. */
export function bundleDiameter(wires: number, outside: number): number {
  const packed = PACKED[wires] ?? 1.2 * Math.sqrt(wires);
  return packed * outside;
}

/** The drill for a hole that a bundle pulls through easily, mm. */
export function holeFor(wires: number, outside: number, show: 'mm' | 'in'): number {
  const least = bundleDiameter(wires, outside) * EASY;
  return DRILLS[show].find((drill) => drill >= least - 1e-9) ?? Math.ceil(least);
}

/** Thin wires go through the deck one by one, so that their hole need be only this much wider; common practice, no source. mm */
const BARE = 0.5;

/** The drill for a hole of thin wires through the deck, mm. */
export function throughDeck(wires: number, outside: number, show: 'mm' | 'in'): number {
  const least = bundleDiameter(wires, outside) + BARE;
  return DRILLS[show].find((drill) => drill >= least - 1e-9) ?? Math.ceil(least);
}
