import type { BenchInput, BenchworkInput, Material, Struts } from './input.ts';
import { dadoDepth, lapDepth, slotWidth, tidy } from './machining.ts';
import { cells } from './spans.ts';

/** The bit taken when nobody named one: 1/4 in. */
export const ASSUMED_BIT = 6.35;

/** Every figure a lapped grid is laid out from; bench coordinates, mm. */
export type Grid = {
  readonly length: number;
  readonly width: number;
  readonly side: number;
  readonly strut: number;
  readonly clearance: number;
  readonly frame: Material;
  readonly deck: Material | null;
  /** mean thickness of the frame's sheet */
  readonly t: number;
  readonly dado: number;
  readonly lap: number;
  /** what each half of a lap is deeper than half the strut, after rounding */
  readonly relief: number;
  readonly slot: number;
  readonly bit: number;
  readonly deckTop: number;
  readonly sideTop: number;
  readonly sideUnderside: number;
  readonly strutUnderside: number;
  /** x of the middles of the across struts, y of the middles of the along struts */
  readonly across: readonly number[];
  readonly along: readonly number[];
};

/** The figures of a lapped grid; its inputs are known to be there and above zero. */
export function lappedGrid(input: BenchworkInput, bench: BenchInput): Grid | null {
  const frame = input.materials.frame;
  const deck = input.materials.deck ?? null;
  const sizes = gridSizes(input.dimensions);
  if (frame === undefined || sizes === null || bench.struts === null) return null;
  const { step, bit } = input.machining;
  const t = frame.thickness.mean;
  const lap = lapDepth(sizes.strut, sizes.lapRelief, step);
  const sideTop = tidy(sizes.height - (bench.deck === null || deck === null ? 0 : deck.thickness.mean));
  const { lapRelief: _asked, height: deckTop, ...named } = sizes;
  return {
    ...named,
    frame,
    deck,
    t,
    dado: dadoDepth(t, step),
    lap,
    relief: tidy(lap - sizes.strut / 2),
    slot: slotWidth(frame.thickness.thickest, sizes.clearance),
    bit: bit ?? ASSUMED_BIT,
    deckTop,
    sideTop,
    sideUnderside: tidy(sideTop - sizes.side),
    strutUnderside: tidy(sideTop - sizes.strut),
    across: middles(bench.struts.across, sizes.length, t),
    along: middles(bench.struts.along, sizes.width, t),
  };
}

type Sizes = {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly side: number;
  readonly strut: number;
  readonly clearance: number;
  readonly lapRelief: number;
};

function gridSizes(dimensions: Readonly<Record<string, number>>): Sizes | null {
  const { length, width, height, side, strut, clearance } = dimensions;
  const lapRelief = dimensions['lap-relief'];
  if (length === undefined || width === undefined || height === undefined || side === undefined) return null;
  if (strut === undefined || clearance === undefined || lapRelief === undefined) return null;
  return { length, width, height, side, strut, clearance, lapRelief };
}

/** Middles of struts between two boards of thickness t that stand an outside apart; mm from that outside. */
export function middles(struts: Struts, outside: number, t: number): readonly number[] {
  if (struts.kind === 'at') return struts.at;
  const bay = cells(outside - 2 * t, { count: struts.count + 1, web: t });
  return Array.from({ length: struts.count }, (_, i) => tidy(t + (i + 1) * bay + i * t + t / 2));
}

/** Clear widths of the bays between middles, the boards at the ends included; mm. */
export function bays(centres: readonly number[], outside: number, t: number): readonly number[] {
  const edges = [t, ...centres.flatMap((c) => [c - t / 2, c + t / 2]), outside - t];
  return Array.from({ length: centres.length + 1 }, (_, i) => tidy((edges[2 * i + 1] ?? 0) - (edges[2 * i] ?? 0)));
}
