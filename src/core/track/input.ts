import type { Convex } from '../geometry/convex.ts';
import type { Envelope, Part } from '../stock/part.ts';
import type { Piece } from './piece.ts';
import type { Stance } from './stretch.ts';
import type { Train } from './train.schema.ts';
import type { Turnout } from './turnout.ts';

/** A height of the roadbed's underside above deck top, by distance from the line's start; mm. */
export type HeightInput = {
  readonly along: number;
  readonly height: number;
  /** length of the vertical curve here; null: by the rule */
  readonly curve: number | null;
  readonly at: string;
};

/** Where a line starts: a place on the deck, or an end of a turnout or of another line by its dotted name. */
export type StartInput =
  | { readonly kind: 'place'; readonly stance: Stance; readonly height: number | null }
  | { readonly kind: 'end'; readonly name: string };

export type LineInput = {
  readonly id: string;
  readonly at: string;
  readonly from: StartInput;
  readonly pieces: readonly Piece[];
  readonly heights: readonly HeightInput[];
  /** `open`, `buffer`, or a dotted name */
  readonly ends: string;
  readonly phase: 'now' | 'later';
};

/** A line that runs beside another all the way. */
export type BesideInput = {
  readonly id: string;
  readonly at: string;
  readonly line: string;
  readonly side: 'left' | 'right';
  readonly by: number;
  readonly phase: 'now' | 'later';
};

/** Rules with several schools, and the figures nobody measured. Lengths mm, grades as ratios. */
export type TrackRules = {
  /** vertical curve for each 1 % of change; null: one length of the longest vehicle */
  readonly curvePerPercent: number | null;
  /** steepest effective grade; null: 3 % */
  readonly grade: number | null;
  /** which school sets the smallest radius */
  readonly radius: 'car-lengths' | 'nem-111';
  /** thickness of the deck under a line that crosses over another; null: as assumed */
  readonly upperDeck: number | null;
  /** whether a wire hangs over the lower line */
  readonly wire: boolean;
};

/** How track is bought; null where nobody said. mm */
export type FlexInput = {
  /** length of one piece of flexible track as sold */
  readonly yard: number | null;
  /** from the roadbed's top to the rail's top */
  readonly height: number | null;
};

export type RoadbedInput = {
  readonly stock: string;
  readonly width: number;
  readonly thickness: number;
  readonly sheet: { readonly length: number; readonly width: number } | null;
};

/** Where a bench stands and how high its deck's top is above the floor. */
export type Standing = {
  readonly id: string;
  readonly place: { readonly x: number; readonly y: number; readonly turn: number };
  readonly length: number;
  readonly width: number;
  readonly deckTop: number;
};

/** What the track is laid on and over: benches with their parts and envelopes in bench coordinates. */
export type Ground = {
  readonly benches: readonly Standing[];
  readonly parts: readonly Part[];
  readonly envelopes: readonly Envelope[];
};

/** The track chapter as plain values. */
export type TrackInput = {
  readonly scale: string;
  readonly trains: readonly Train[];
  readonly roadbed: RoadbedInput | null;
  readonly flex: FlexInput;
  readonly rules: TrackRules;
  readonly lines: readonly LineInput[];
  readonly beside: readonly BesideInput[];
  readonly turnouts: readonly Turnout[];
  readonly ground: Ground;
};

/** An obstacle under the deck, in notebook coordinates; `room` is a shelf's, which a motor may share at a cost. */
export type Obstacle = { readonly id: string; readonly kind: 'solid' | 'room'; readonly body: Convex };
