import { bounds } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import { insideLoop } from './distance.ts';
import type { Field } from './field.ts';
import type { Structure } from './land.ts';
import { type Site, toBench } from './site.ts';

/** A building where it stands: its corners from the front left one counter-clockwise, and the ground under it; mm. */
export type BuiltStructure = Structure & {
  readonly corners: readonly Point[];
  /** the bench under its middle, and its corners from that bench's front left corner; null and as above off every bench */
  readonly bench: string | null;
  readonly marks: readonly Point[];
  /** lowest and highest ground under it; the deck, 0, where there is none */
  readonly ground: { readonly low: number; readonly high: number };
};

/** Ground is sampled this far apart under a building, mm. */
const STEP = 5;

/** The corners of a building's plan, turned about its middle: front left, front right, back right, back left; mm. */
export function footprint({ middle, turn, length, width }: Omit<Structure, 'id' | 'at' | 'height'>): readonly Point[] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const half = [length / 2, width / 2] as const;
  return [
    [-half[0], -half[1]],
    [half[0], -half[1]],
    [half[0], half[1]],
    [-half[0], half[1]],
  ].map(([u = 0, v = 0]) => [middle[0] + cos * u - sin * v, middle[1] + sin * u + cos * v] as const);
}

/** A building with its corners and the heights that the ground has under it. */
export function builtStructure(structure: Structure, field: Field, sites: readonly Site[]): BuiltStructure {
  const corners = footprint(structure);
  const site = sites.find(({ loop }) => insideLoop(loop, structure.middle));
  const marks = site === undefined ? corners : corners.map((corner) => toBench(site.pose, corner));
  const heights = samplesUnder(structure, corners).map(([x, y]) => Math.max(0, field(x, y)));
  const { low, high } = bounds(heights.map((height) => [height, 0] as const));
  return { ...structure, corners, marks, bench: site?.bench.id ?? null, ground: { low: low[0], high: high[0] } };
}

/** Places under a building, its edges and corners among them. */
function samplesUnder(structure: Structure, corners: readonly Point[]): readonly Point[] {
  const [a = [0, 0], b = a, , d = a] = corners;
  const shares = (size: number) => {
    const count = Math.max(1, Math.ceil(size / STEP));
    return Array.from({ length: count + 1 }, (_, i) => i / count);
  };
  const across = shares(structure.width);
  return shares(structure.length).flatMap((u) =>
    across.map(
      (v) => [a[0] + u * (b[0] - a[0]) + v * (d[0] - a[0]), a[1] + u * (b[1] - a[1]) + v * (d[1] - a[1])] as const,
    ),
  );
}
