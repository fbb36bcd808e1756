import type { Finding } from '../finding.ts';
import type { Fastener, HardwareUse } from '../stock/fastener.ts';
import type { BoardStock, CasterStock, HardwareStock, SheetStock } from '../stock/goods.ts';
import type { Envelope, Joint, Part } from '../stock/part.ts';
import type { KnownThickness } from '../stock/thickness.ts';
import type { Bench, Seam } from './bench.ts';
import type { Goods } from './goods.ts';
import type { Outside } from './outside.ts';

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

/** Under a box and above it in its opening, and how far an overlaid face reaches past the opening; mm, null: as usual. */
export type Gaps = {
  readonly under: number | null;
  readonly liftOut: number | null;
  readonly overlap: number | null;
};

/** Drawers of one kind in some bays of one side; `at` is their path in the plan. mm. */
export type DrawersInput = {
  readonly at: string;
  readonly side: Outside;
  readonly bays: readonly number[];
  readonly slides: { readonly length: number; readonly clearance: number };
  readonly faces: 'cut-out' | 'overlaid';
  /** diameter of the bit that cuts the openings */
  readonly bit: number;
  readonly corners: 'dado' | 'rabbet';
  readonly pull: 'bar' | 'none';
  /** height of the opening, and wood kept above and below it; null: what the side allows */
  readonly opening: number | null;
  readonly ligament: number | null;
  /** what is written of the gaps round box and face; usual where it is null or absent */
  readonly gaps?: Gaps;
  /** roles of the materials of box and bottom */
  readonly material: string;
  readonly bottom: string;
  /** keys nobody wrote, whose usual figure stands here */
  readonly unsaid?: readonly ('clearance' | 'bit')[];
};

/** What a leg stands on; heights from the floor to the leg's end, mm. */
export type Stand =
  | { readonly kind: 'caster'; readonly caster: CasterStock; readonly free: CasterStock | null }
  | { readonly kind: 'foot'; readonly foot: HardwareStock; readonly travel: number; readonly height: number }
  | { readonly kind: 'floor' };

export type LegsInput = {
  readonly at: string;
  readonly form: 'post' | 'angle' | 'trestle';
  readonly material: string;
  /** sheets glued face to face in a post; 1 for a solid one */
  readonly layers: number;
  /** across a post, one half of an angle, an upright of a trestle; null: as thick as it is */
  readonly width: number | null;
  /** what a tapered half of an angle keeps at its foot; null: three quarters */
  readonly footWidth: number | null;
  readonly stand: Stand;
};

/** Shelves of one kind in some bays of one side; `below` is how far the shelf lies below the deck, null: as low as it goes. */
export type ShelvesInput = {
  readonly at: string;
  readonly side: Outside;
  readonly bays: readonly number[];
  readonly material: string;
  readonly below: number | null;
};

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
  readonly drawers?: readonly DrawersInput[];
  readonly legs?: LegsInput | null;
  readonly shelves?: readonly ShelvesInput[];
};

/** Everything a bench is made from, as numbers: mm and radians. */
export type BenchworkInput = {
  readonly dimensions: Readonly<Record<string, number>>;
  readonly materials: Readonly<Record<string, Material>>;
  /** step of the machine's settings; diameter of the bit that runs past inner corners, null when nobody said */
  readonly machining: { readonly step: number; readonly bit: number | null };
  readonly benches: readonly BenchInput[];
  /** what screws and bolts are counted from; absent: nothing is counted */
  readonly goods?: Goods;
};

/** The benchwork as computed: parts in bench coordinates. */
export type BenchworkModel = {
  readonly benches: readonly Bench[];
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly seams: readonly Seam[];
  readonly envelopes: readonly Envelope[];
  readonly fasteners: readonly Fastener[];
  readonly hardware: readonly HardwareUse[];
  readonly findings: readonly Finding[];
};
