import { dot, placed } from '../../core/geometry/vector.ts';
import { hatchMarks } from '../hatch.ts';
import type { Mark, Spot } from '../mark.ts';
import { edgesOf, modelLine, type Window, within, zigzag } from '../outline.ts';
import { cutBy, type Gaze, type Placed, type Seen } from '../scene.ts';
import { onPaper, type View } from '../view.ts';

type Plane = { readonly deck: readonly Placed[]; readonly gaze: Gaze; readonly at: number };
type Stretch = Pick<Window, 'x0' | 'x1'>;

/** How far a deck that goes on is drawn beyond the stretch, and how far its break line stands out; mm on paper. */
export const BEYOND = 3;
const STANDS_OUT = 1.2;
/** Nearer than this two edges are one, mm. */
const SAME = 0.1;

function cuts({ deck, gaze, at }: Plane): readonly Seen[] {
  return deck.map((one) => cutBy(one, gaze, at)).filter((piece) => piece !== null);
}

function clipped(pieces: readonly Seen[], { x0, x1 }: Stretch): readonly Seen[] {
  const window = { x0, x1, y0: -1e6, y1: 1e6 };
  return pieces
    .map((piece) => ({ ...piece, areas: piece.areas.flatMap((area) => within(area, window)) }))
    .filter(({ areas }) => areas.length > 0);
}

/** What a plane cuts of the deck, no farther to either side than a stretch. */
export function deckOver(plane: Plane, stretch: Stretch): readonly Seen[] {
  return clipped(cuts(plane), stretch);
}

/** At which ends of a stretch the deck goes on. */
export function goesOn(plane: Plane, { x0, x1 }: Stretch): { readonly left: boolean; readonly right: boolean } {
  const spans = cuts(plane).flatMap(({ areas }) =>
    areas.map(({ outline }) => outline.map(([x]) => x)).map((xs) => [Math.min(...xs), Math.max(...xs)] as const),
  );
  const over = (x: number) => spans.some(([low, high]) => low < x - SAME && high > x + SAME);
  return { left: over(x0), right: over(x1) };
}

/** The deck over a stretch, hatched; where it goes on it ends at a break line. */
export function deckMarks(view: View, plane: Plane, stretch: Stretch): readonly Mark[] {
  const open = goesOn(plane, stretch);
  const by = BEYOND * view.scale;
  const { x0, x1 } = { x0: stretch.x0 - (open.left ? by : 0), x1: stretch.x1 + (open.right ? by : 0) };
  const ends = [...(open.left ? [x0] : []), ...(open.right ? [x1] : [])];
  return clipped(cuts(plane), { x0, x1 }).flatMap(({ areas }, index) =>
    areas.flatMap(({ outline, holes }): readonly Mark[] => {
      const loops = [outline, ...holes];
      const onPaperLoops = loops.map((loop) => loop.map((point): Spot => onPaper(view, point)));
      return [
        ...hatchMarks(onPaperLoops, { pitch: 1.6, slope: index % 2 === 0 ? 1 : -1 }),
        ...loops.flatMap(edgesOf).map(([a, b]): Mark => {
          const end = ends.find((x) => Math.abs(a[0] - x) < 1e-6 && Math.abs(b[0] - x) < 1e-6);
          if (end === undefined) return modelLine(view, [a, b], { pen: 'cut-edge', role: 'outline' });
          const [[ax, ay], [bx, by_]] = [onPaper(view, a), onPaper(view, b)];
          const out = ay < by_ ? -STANDS_OUT : STANDS_OUT;
          return zigzag([ax, ay + out], [bx, by_ - out]);
        }),
      ];
    }),
  );
}

/** What the deck over a stretch is cut away for, by the names of those that asked. */
export function cutAwayFor({ deck, gaze, at }: Plane, { x0, x1 }: Stretch): readonly string[] {
  const names = deck.flatMap(({ part, place }) =>
    part.features.flatMap((feature) => {
      if (feature.kind !== 'cut-out' || feature.for === undefined) return [];
      const points = feature.outline.map(([x, y]) => placed(place.pose, [x, y, 0]));
      const range = (axis: Gaze['right']) => {
        const values = points.map((point) => dot(point, axis));
        return [Math.min(...values), Math.max(...values)] as const;
      };
      const [[u0, u1], [near, far]] = [range(gaze.right), range(gaze.toward)];
      return u0 < x1 && u1 > x0 && near < at && far > at ? [feature.for] : [];
    }),
  );
  return [...new Set(names)];
}
