import type { Box, Point } from '../geometry/shapes.ts';
import type { Fastener } from '../stock/fastener.ts';
import type { WireStock } from '../stock/goods.ts';
import type { Part } from '../stock/part.ts';
import type { RailPlan } from './rail-plan.ts';

/** What the rails are fed from; bought and approved. V, A. */
export type Supply = { readonly control: 'digital' | 'dc'; readonly volts: number; readonly tripsAt: number };

export type BusInput = {
  readonly stock: WireStock;
  readonly from: Point;
  /** corners written by the author, from `from` on; null: found */
  readonly route: readonly Point[] | null;
  /** with a written route: corners of what parts from it, from a point on the bus on; absent: nothing */
  readonly branches?: readonly (readonly Point[])[];
};

export type FeedersInput = { readonly stock: WireStock; readonly every: number };

/** Where a load is: a place on the deck, a turnout, or a place along a line. */
export type LoadPlace =
  | { readonly kind: 'place'; readonly at: Point }
  | { readonly kind: 'turnout'; readonly turnout: string }
  | { readonly kind: 'line'; readonly line: string; readonly at: number };

/** Light-emitting diodes in rows, each row with its own resistor. V, A. */
export type LedsInput = {
  readonly forward: number;
  readonly amps: number;
  readonly inRow: number;
  readonly rows: number;
};

export type LoadInput = {
  readonly id: string;
  readonly place: LoadPlace;
  readonly amps: number;
  readonly kind: 'steady' | 'pulse';
  /** for a moment as it is switched on, at least `amps`; absent: as `amps` */
  readonly inrush?: number;
  /** absent or null: no diodes */
  readonly leds?: LedsInput | null;
  /** absent or null: none written */
  readonly fuse?: number | null;
};

export type DistrictInput = { readonly id: string; readonly lines: readonly string[]; readonly tripsAt: number };

/** A bridge whose rails are lifted out: gapped at both ends and fed through a flexible lead. mm along its line. */
export type LiftInput = { readonly id: string; readonly line: string; readonly from: number; readonly to: number };

/** A place where both rails are cut, as the author wrote it. */
export type GapInput = { readonly line: string; readonly at: number };

export type WiredBench = {
  readonly id: string;
  readonly place: { readonly x: number; readonly y: number; readonly turn: number };
  readonly length: number;
  readonly width: number;
  readonly deckTop: number;
  readonly sideTop: number;
  readonly sideUnderside: number;
  readonly strutUnderside: number;
};

/** Space under the deck in notebook coordinates, square to the first bench; heights from the floor, mm. */
export type WiredSpace = { readonly id: string; readonly kind: string; readonly box: Box };

export type WiringGround = {
  readonly benches: readonly WiredBench[];
  readonly parts: readonly Part[];
  readonly spaces: readonly WiredSpace[];
  /** screws and bolts in the coordinates of their benches; absent: none known */
  readonly fasteners?: readonly Fastener[];
  /** how far a person reaches in from an edge, mm */
  readonly reach: number;
};

/** The wiring chapter as plain values with what it stands on: mm, V, A, ohm per m. */
export type WiringInput = {
  readonly supply: Supply;
  readonly bus: BusInput | null;
  readonly feeders: FeedersInput | null;
  readonly loads: readonly LoadInput[];
  readonly districts: readonly DistrictInput[];
  readonly lifts: readonly LiftInput[];
  /** null: gaps are proposed */
  readonly gaps: readonly GapInput[] | null;
  /** of one rail, ohm per m, and whether it is assumed */
  readonly rail: { readonly ohmPerMetre: number; readonly assumed: boolean };
  /** the longest train that conducts from end to end, mm; null when nothing is known to conduct */
  readonly train: number | null;
  /** share of the supply's voltage that may be lost on the way, 0 to 1 */
  readonly mayLose: number;
  /** of the copper at work, degrees Celsius */
  readonly warm: number;
  readonly rails: RailPlan;
  readonly ground: WiringGround;
  /** the measure that wires are cut by */
  readonly show: 'mm' | 'in';
  /** wires that can be bought, for proposals */
  readonly wires: readonly WireStock[];
};
