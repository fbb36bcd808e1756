import type { Finding } from '../finding.ts';
import type { Point } from '../geometry/shapes.ts';
import type { AreaMass, Part, Request } from '../stock/part.ts';
import type { ClearWays } from './clear-water.ts';
import type { Contour } from './contour.ts';
import type { CoveredZone } from './cover.ts';
import type { Layer } from './layer.ts';
import type { LayerPiece } from './layer-parts.ts';
import type { LandQuantity } from './quantity.ts';
import type { RegisterMark } from './register-mark.ts';
import type { Section } from './section.ts';
import type { BuiltStructure } from './structure.ts';
import type { UnderWater } from './under-water.ts';
import type { WaterModel } from './water.ts';

/** A layer of foam with its pieces, joints and share of the work. Volumes mm3. */
export type BuiltLayer = Layer & {
  readonly pieces: readonly LayerPiece[];
  readonly joints: readonly (readonly [Point, Point])[];
  readonly marks: readonly RegisterMark[];
  readonly area: number;
  /** ground within this layer once it is carved */
  readonly left: number;
};

/** What happens to the foam: blocks as cut, what is carved off them, what is left; mm3. `bought` is whole sheets, once they are laid out. */
export type FoamVolumes = {
  readonly bought: number | null;
  readonly cut: number;
  readonly carved: number;
  readonly left: number;
};

/** A water with what lies under it and how it could keep clear. */
export type BuiltWater = WaterModel & { readonly under: readonly UnderWater[]; readonly clear: ClearWays | null };

/** Lines of one height for the plan. */
export type LevelLines = { readonly level: number; readonly lines: readonly Contour[] };

/** The land as computed; notebook coordinates, heights from deck top, mm. */
export type SceneryModel = {
  /** highest ground over the deck */
  readonly highest: number;
  /** lines of track in plan, for pictures */
  readonly lines: readonly { readonly id: string; readonly points: readonly Point[] }[];
  readonly contours: readonly LevelLines[];
  readonly sections: readonly Section[];
  readonly layers: readonly BuiltLayer[];
  readonly structures: readonly BuiltStructure[];
  readonly volumes: FoamVolumes;
  readonly zones: readonly CoveredZone[];
  readonly quantities: readonly LandQuantity[];
  readonly water: readonly BuiltWater[];
  readonly masses: readonly AreaMass[];
  /** layers and profile boards */
  readonly parts: readonly Part[];
  readonly requests: readonly Request[];
  readonly findings: readonly Finding[];
};
