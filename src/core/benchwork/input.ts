import type { Finding } from '../finding.ts';
import type { BoardStock, SheetStock } from '../stock/goods.ts';
import type { Envelope, Joint, Part } from '../stock/part.ts';
import type { KnownThickness } from '../stock/thickness.ts';
import type { Bench, Seam } from './bench.ts';

/** What a role is cut from. */
export type Material = { readonly stock: SheetStock | BoardStock; readonly thickness: KnownThickness };

/** Struts evenly spread, or with their middles at given places from the frame's left or front outside; mm. */
export type Struts =
  | { readonly kind: 'even'; readonly count: number }
  | { readonly kind: 'at'; readonly at: readonly number[] };

export type Flush = 'front-left' | 'front-right' | 'back-left' | 'back-right';

/** A seam along x or y on the middle of a strut, named without its bench. */
export type SeamInput = { readonly parallelTo: 'x' | 'y'; readonly on: string };

export type DeckInput = { readonly overhang: number; readonly flush: Flush; readonly seams: readonly SeamInput[] };

/** A bench with every quantity evaluated; `at` is its path in the plan, for faults. */
export type BenchInput = {
  readonly id: string;
  readonly at: string;
  readonly place: { readonly x: number; readonly y: number; readonly turn: number };
  readonly phase: 'now' | 'later';
  readonly construction: 'lapped-grid' | 'open-grid' | 'girder' | 'shelf' | 'listed';
  readonly struts: { readonly along: Struts; readonly across: Struts } | null;
  /** width of the strips under the struts */
  readonly flangeStrips: number | null;
  readonly deck: DeckInput | null;
};

/** Everything a bench is made from, as numbers: mm and radians. */
export type BenchworkInput = {
  readonly dimensions: Readonly<Record<string, number>>;
  readonly materials: Readonly<Record<string, Material>>;
  /** step of the machine's settings; diameter of the bit that runs past inner corners, null when nobody said */
  readonly machining: { readonly step: number; readonly bit: number | null };
  readonly benches: readonly BenchInput[];
};

/** The benchwork as computed: parts in bench coordinates. */
export type BenchworkModel = {
  readonly benches: readonly Bench[];
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly seams: readonly Seam[];
  readonly envelopes: readonly Envelope[];
  readonly findings: readonly Finding[];
};
