import type { Finding } from '../finding.ts';
import type { Vector } from '../geometry/shapes.ts';
import type { Sentence } from '../units/say.ts';

export type PoseName = 'upright' | 'upside-down';

/** A block that holds a hanging part at its height: under which part, where along it, bench coordinates; mm. */
export type Packer = {
  readonly part: string;
  /** `left end`, `front end`, `crossing strut.along-1` */
  readonly where: string;
  readonly at: readonly [number, number];
  readonly height: number;
};

/** One stretch of a path: `distance` mm along `direction`, or from far off when null. */
export type PathLeg = { readonly direction: Vector; readonly distance: number | null };

/**
 * Parts that go to their place together. `direction` (unit length, bench coordinates) closes their joints; `with` names
 * what they then meet of what stands already and `joints` how; `travel` is how far they slide while engaged, mm.
 */
export type Placing = {
  readonly parts: readonly string[];
  readonly direction: Vector;
  readonly with: readonly string[];
  readonly joints: readonly string[];
  readonly path: 'first' | 'straight' | 'two-leg' | 'tilt';
  readonly legs: readonly PathLeg[];
  readonly travel: number;
  /** how the frame lies for this move, and whether it is turned over just before */
  readonly frame: PoseName;
  readonly turn: boolean;
  /** the sub-assembly that is built by this move, before it goes in as one; null for the bench itself */
  readonly within: string | null;
};

/** One way to build a bench: how it lies at first, what it then needs, and its order; `turns` take two people. */
export type Pose = {
  readonly pose: PoseName;
  readonly packers: readonly Packer[];
  readonly order: readonly Placing[];
  readonly turns: number;
};

/** An instance that its builder says goes in by tilting, and why; shown as not proved. */
export type Tilt = { readonly part: string; readonly path: 'tilt'; readonly because: string };

/** Clamps of one size that a glue stage needs: `reach` is the wood between the jaws, mm, `at` the pieces they stand over. */
export type Clamping = {
  readonly reach: number;
  readonly count: number;
  readonly along: 'x' | 'y' | 'z';
  readonly at: readonly string[];
};

/** What is glued in one go: minutes to spread and close, and how long it stays in its clamps. */
export type GlueStage = {
  readonly parts: readonly string[];
  readonly joints: readonly string[];
  readonly minutes: number;
  readonly wait: number;
  readonly clamps: readonly Clamping[];
};

/** When a fastener is driven: after which move (counted from 0), or the parts that are then in the tool's way. */
export type Driving = {
  readonly fastener: string;
  readonly after: number | null;
  readonly blockedBy: readonly string[];
  /** room behind the head up to what is in the way, mm; absent where nothing is */
  readonly had?: number;
};

/** How the frame is brought square: the corner everything starts from, edges longest first, the diagonals; mm. */
export type Squaring = {
  readonly corner: string;
  readonly edges: readonly { readonly part: string; readonly length: number }[];
  readonly diagonal: number;
};

/**
 * One piece that comes off, or several at once: which way (unit length, bench coordinates), the bolted joints that are
 * drawn before, how the frame lies, and whether it is turned over just before.
 */
export type TakingOff = {
  readonly parts: readonly string[];
  readonly direction: Vector;
  readonly loosened: readonly string[];
  readonly frame: PoseName;
  readonly turn: boolean;
};

/**
 * How the bench comes apart for a move: what is loosened, the pieces it is then in, the frame first, the order in which
 * they come off (going back is the same backwards), and what is written on them before.
 */
export type ComingApart = {
  readonly loosened: readonly string[];
  readonly pieces: readonly (readonly string[])[];
  readonly off: readonly TakingOff[];
  readonly marks: readonly Sentence[];
};

/** How one bench goes together, proved on the solids of its parts; plain data. */
export type Assembly = {
  readonly bench: string;
  readonly poses: readonly Pose[];
  /** the simpler pose, null when no order was found */
  readonly chosen: PoseName | null;
  readonly reason: Sentence;
  /** sets that no move takes apart, smallest first found, and the pairs whose joint, left open, frees them */
  readonly knots: readonly {
    readonly parts: readonly string[];
    readonly freedBy: readonly (readonly [string, string])[];
  }[];
  readonly dryRun: readonly Sentence[];
  readonly stages: readonly GlueStage[];
  readonly squaring: Squaring;
  /** screws and bolts in the order they are driven */
  readonly fastening: readonly Driving[];
  readonly finishing: { readonly before: readonly Sentence[]; readonly after: readonly Sentence[] };
  readonly apart: ComingApart;
  readonly findings: readonly Finding[];
};
