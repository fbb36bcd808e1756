import type { TurnoutEnd } from './piece.ts';
import type { Stance, Way } from './stretch.ts';

export type Hand = 'left' | 'right';

/** Room a turnout motor needs: along the track, across it, and down from the deck's underside; mm. */
export type Motor = { readonly along: number; readonly across: number; readonly below: number };

/** How a turnout was told: by frog number, or by what was measured on it; mm and radians. */
export type TurnoutForm =
  | { readonly kind: 'frog'; readonly number: number; readonly hand: Hand }
  | {
      readonly kind: 'template';
      readonly hand: Hand;
      /** length of the straight way */
      readonly straight: number;
      readonly angle: number;
      /** of the branch; null: as it follows from the straight */
      readonly radius: number | null;
      /** straight before the branch begins to turn */
      readonly lead: number;
      /** length of the branch along its middle; null: it ends where it stops turning */
      readonly branch: number | null;
    }
  | {
      readonly kind: 'curved';
      readonly hand: Hand;
      readonly outer: { readonly radius: number; readonly angle: number };
      readonly inner: { readonly radius: number; readonly angle: number };
    }
  | { readonly kind: 'wye'; readonly angle: number; readonly radius: number }
  | { readonly kind: 'three-way'; readonly straight: number; readonly angle: number; readonly radius: number }
  | { readonly kind: 'crossing'; readonly hand: Hand; readonly straight: number; readonly angle: number }
  | {
      readonly kind: 'slip';
      readonly hand: Hand;
      readonly straight: number;
      readonly angle: number;
      readonly slips: 'one' | 'both';
    };

/** A turnout as its author wrote it, evaluated. */
export type Turnout = {
  readonly id: string;
  readonly form: TurnoutForm;
  readonly frog: 'live' | 'dead' | null;
  readonly motor: Motor | null;
  /** from the points' end to the throw bar, mm; null: as assumed */
  readonly throwBar: number | null;
  readonly at: string;
};

/** One way through a turnout. */
export type Route = { readonly from: TurnoutEnd; readonly to: TurnoutEnd; readonly way: Way };

/**
 * A turnout's middle lines in its own coordinates: the points' end at the origin, x into the turnout. Ends look
 * outwards. mm and radians.
 */
export type TurnoutShape = {
  readonly ends: Readonly<Partial<Record<TurnoutEnd, Stance>>>;
  readonly routes: readonly Route[];
  /** along x, where the throw bar is */
  readonly throwBar: number;
  /** the point of the frog, where there is one: along x, mm */
  readonly frogPoint: number | null;
  /** lengths that were not measured and are assumed */
  readonly assumed: readonly string[];
};
