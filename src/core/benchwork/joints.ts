import type { Joint } from '../stock/part.ts';
import type { Grid } from './grid.ts';

/** Joints of the frame: the one that is entered first, what enters second; ids without their bench. */
export function frameJoints(grid: Grid): readonly Joint[] {
  const sides = ['side.front', 'side.back'] as const;
  const ends = ['end.left', 'end.right'] as const;
  const across = grid.across.map((_, i) => `strut.across-${i + 1}`);
  const along = grid.along.map((_, i) => `strut.along-${i + 1}`);
  const glued = (kind: Joint['kind'], between: readonly [string, string]) => joint(kind, between, grid.clearance);
  return [
    ...sides.flatMap((side) => ends.map((end) => glued('rabbet', [side, end]))),
    ...sides.flatMap((side) => across.map((strut) => glued('dado', [side, strut]))),
    ...ends.flatMap((end) => along.map((strut) => glued('dado', [end, strut]))),
    ...across.flatMap((low) => along.map((high) => ({ ...glued('lap', [low, high]), relief: grid.relief }))),
  ];
}

/** A glued joint with no relief. */
export function joint(kind: Joint['kind'], between: readonly [string, string], clearance: number): Joint {
  return { id: `${kind}.${between[0]}.${between[1]}`, kind, between, clearance, relief: 0, held: 'glue' };
}
