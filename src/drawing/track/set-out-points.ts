import type { Point } from '../../core/geometry/shapes.ts';
import { toNotebook } from '../../core/scenery/site.ts';
import type { TrackModel } from '../../core/track/lay.ts';
import type { SetOutRow } from '../../core/track/set-out.ts';
import type { DrawingBook } from '../book.ts';
import { boxAbout, type Labelled } from '../labels.ts';
import type { Mark } from '../mark.ts';
import { sites } from '../scenery/land-stage.ts';
import { onPaper, type View } from '../view.ts';

/** A point of the set-out table, and where it lies in the notebook, mm. */
export type NamedPoint = Pick<SetOutRow, 'id' | 'kind'> & { readonly at: Point };

/** What is named on the plan as in its table, the most crowded first; an easement's points are measured from its straight, a turnout has its name. */
const NAMED: readonly SetOutRow['kind'][] = ['tangent', 'end', 'centre'];
/** Half the size of a point's cross, mm of paper. */
const CROSS = 0.8;

/** The centres, tangent points and ends by which the lines are set out. */
export function namedPoints({ setOut }: Pick<TrackModel, 'setOut'>, book: DrawingBook): readonly NamedPoint[] {
  const poses = new Map(sites(book).map(({ bench, pose }) => [bench.id, pose]));
  return setOut
    .filter(({ kind }) => NAMED.includes(kind))
    .map(({ id, kind, bench, x, y }): NamedPoint => {
      const pose = bench === null ? undefined : poses.get(bench);
      return { id, kind, at: pose === undefined ? [x, y] : toNotebook(pose, [x, y]) };
    });
}

/** A small cross on every tangent point and end; a centre has its own. */
export function pointMarks(points: readonly NamedPoint[], view: View): readonly Mark[] {
  return points.flatMap(({ at, kind }): readonly Mark[] => {
    if (kind === 'centre') return [];
    const [x, y] = onPaper(view, at);
    return [
      { kind: 'line', from: [x - CROSS, y - CROSS], to: [x + CROSS, y + CROSS], pen: 'feature', role: 'symbol' },
      { kind: 'line', from: [x - CROSS, y + CROSS], to: [x + CROSS, y - CROSS], pen: 'feature', role: 'symbol' },
    ];
  });
}

/** The points' names, to be placed beside them in this order. */
export function pointNames(points: readonly NamedPoint[], view: View): readonly Labelled[] {
  const ordered = points.toSorted((a, b) => NAMED.indexOf(a.kind) - NAMED.indexOf(b.kind));
  return ordered.map(({ id, at }) => ({ text: id, box: boxAbout(onPaper(view, at), CROSS) }));
}
