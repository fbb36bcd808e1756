import type { Point, Polygon } from '../geometry/shapes.ts';
import type { CoverStock, SheetStock } from '../stock/goods.ts';

/** A height the ground must pass through; mm from deck top. `at` names its place in the source. */
export type Spot = { readonly x: number; readonly y: number; readonly height: number; readonly at: string };

/** A hill by its form: a dome is a paraboloid on its foot circle, a cone has straight sides. mm. */
export type Hill = {
  readonly kind: 'hill';
  readonly id: string;
  readonly form: 'dome' | 'cone';
  readonly top: Point;
  readonly height: number;
  readonly footRadius: number;
};

/** A ridge along a path, as high all along, with straight or rounded sides that end `half` from the path. mm. */
export type Ridge = {
  readonly kind: 'ridge';
  readonly id: string;
  readonly form: 'round' | 'sharp';
  readonly along: readonly Point[];
  readonly height: number;
  readonly half: number;
};

/** Raised flat ground inside an outline whose sides fall outward, `slope` down for each mm out. */
export type Bank = {
  readonly kind: 'bank';
  readonly id: string;
  readonly outline: readonly Point[];
  readonly height: number;
  readonly slope: number;
};

export type Form = Hill | Ridge | Bank;

/** A point of a path with its distance from the start and the height it lies at; mm. */
export type PathPoint = {
  readonly at: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** what trains need free on each side of it; absent for roads */
  readonly clear?: number;
};

/** A line of track, road or path that the ground is levelled for; straight between its points. */
export type Path = {
  readonly id: string;
  readonly points: readonly PathPoint[];
  /** half the level width, mm */
  readonly half: number;
  /** half of what lies on it: roadbed or sleepers; absent for roads */
  readonly bed?: number;
  /** rise for each mm out, of cuttings and banks alike */
  readonly slope: number;
  /** stretches, from and to along it, that are left alone: tunnels and bridges */
  readonly free: readonly (readonly [number, number])[];
};

/** Still water; heights from deck top, `surface` usually below 0. mm. */
export type Water = {
  readonly id: string;
  readonly at: string;
  readonly outline: readonly Point[];
  readonly surface: number;
  readonly depth: number;
  readonly floor: number;
  readonly pour: number;
  /** what it is poured from; null when its author did not say */
  readonly resin: CoverStock | null;
  /** sheet its floor and walls are cut from; null when its author did not say */
  readonly tray: SheetStock | null;
};

export type Edge = 'front' | 'back' | 'left' | 'right';

/** A board along a bench's edge whose top follows the ground. */
export type BoardAsk = {
  readonly id: string;
  readonly at: string;
  readonly bench: string;
  readonly edge: Edge;
  readonly stock: SheetStock;
};

/** Ground under one cover, bottom stock first. */
export type Zone = {
  readonly id: string;
  readonly at: string;
  readonly outline: readonly Point[];
  readonly of: readonly CoverStock[];
  /** trees for each m2 of plan, 0 for none */
  readonly trees: number;
};

/** A building: a box on the ground about its middle, its length along its own x; mm and radians. `at` names its place. */
export type Structure = {
  readonly id: string;
  readonly at: string;
  readonly middle: Point;
  readonly turn: number;
  readonly length: number;
  readonly width: number;
  readonly height: number;
};

/** A stretch of a line; mm from its start. */
export type Stretch = {
  readonly id: string;
  readonly line: string;
  readonly from: number;
  readonly to: number;
  readonly at: string;
  /** id of the water a bridge crosses, where its author named one */
  readonly over?: string;
};

/** A section an author asks for: a straight cut, or a stretch of a line of track, the whole of it where no end is named. */
export type SectionAsk = {
  readonly id: string;
  readonly at: string;
  readonly way:
    | { readonly kind: 'cut'; readonly from: Point; readonly to: Point }
    | { readonly kind: 'line'; readonly line: string; readonly from: number | null; readonly to: number | null };
};

/** The chapter's figures, evaluated; notebook coordinates, mm. */
export type Land = {
  readonly spots: readonly Spot[];
  /** how far a spot bends the ground around it */
  readonly spotReach: number;
  readonly forms: readonly Form[];
  readonly roads: readonly Path[];
  /** rise for each mm out of cuttings and banks along lines */
  readonly slope: number;
  readonly water: readonly Water[];
  readonly foam: SheetStock | null;
  /** thickness of the wall that is left when a hill is hollow; null for solid */
  readonly hollow: number | null;
  readonly boards: readonly BoardAsk[];
  readonly structures: readonly Structure[];
  readonly zones: readonly Zone[];
  readonly ballast: CoverStock | null;
  readonly bridges: readonly Stretch[];
  readonly tunnels: readonly Stretch[];
  readonly sections: readonly SectionAsk[];
};

/** A deck the land lies on, in notebook coordinates, and the bench that bears it. */
export type DeckLoop = { readonly bench: string; readonly loop: readonly Point[] };

/** Regions of a plane; outlines counter-clockwise, holes clockwise. */
export type Region = readonly Polygon[];
