import { fromWorld } from '../core/geometry/pose.ts';
import { dot } from '../core/geometry/vector.ts';
import type { Fastener } from '../core/stock/fastener.ts';
import type { EdgeSide, Part, Placement } from '../core/stock/part.ts';
import { screwHoles } from '../core/stock/screw-holes.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingUnit } from './drawing.ts';
import { lengthText, sizeText } from './figures.ts';
import { noteBlocks } from './notes.ts';

/** Where a screw's tip goes into a piece's edge: along the edge and from the back, mm. */
type Pilot = {
  readonly edge: EdgeSide;
  readonly along: number;
  readonly up: number;
  readonly diameter: number;
};

/** A butt joint has no cut that places its pieces: their screws do. */
const BUTT = /^butt\./;

function pilotOf({ head, direction, diameter }: Fastener, { pose }: Placement): Pilot | null {
  const [along, across] = [dot(direction, pose.x), dot(direction, pose.y)];
  const [x, y, up] = fromWorld(pose, head);
  if (Math.abs(across) > 0.99) return { edge: across > 0 ? 'bottom' : 'top', along: x, up, diameter };
  return Math.abs(along) > 0.99 ? { edge: along > 0 ? 'left' : 'right', along: y, up, diameter } : null;
}

function pilotsOf({ fasteners = [] }: DrawingBook, { places }: Part): readonly Pilot[] {
  return places.flatMap((place) =>
    fasteners
      .filter(({ form, holds, through }) => form === 'screw' && BUTT.test(holds) && through.at(-1) === place.id)
      .flatMap((fastener) => pilotOf(fastener, place) ?? []),
  );
}

function edgeWords(edge: EdgeSide, pilots: readonly Pilot[], unit: DrawingUnit): string {
  const show = (mm: number) => lengthText(mm, unit).replaceAll(' ', '\u00a0');
  const spots = pilots
    .toSorted((a, b) => a.along - b.along)
    .map(({ along, up }) => `(${show(along)};\u00a0${show(up)})`);
  const places = [...new Set(spots)];
  const across = screwHoles(pilots[0]?.diameter ?? 0)?.hardwood;
  const size = across === undefined ? '' : ` ⌀${sizeText(across, unit).replaceAll(' ', '\u00a0')}`;
  const [name, from] =
    edge === 'left' || edge === 'right' ? [`${edge} end`, 'the bottom edge'] : [`${edge} edge`, 'the left end'];
  return `${places.length}× pilot${size} in the ${name}, at (from ${from}; from the back): ${places.join(' ')}`;
}

/** Pilots in the edges of a part that only screws hold in its place, in words. */
export function pilotNotes(book: DrawingBook, part: Part, unit: DrawingUnit): readonly Block[] {
  const pilots = pilotsOf(book, part);
  const edges = [...new Set(pilots.map(({ edge }) => edge))];
  const notes = edges.map((edge) =>
    edgeWords(
      edge,
      pilots.filter((one) => one.edge === edge),
      unit,
    ),
  );
  return noteBlocks(
    'Pilots for screws',
    notes.map((words) => ({ letter: '', words, dimensions: [] })),
  );
}
