import type { Bench } from '../../core/benchwork/bench.ts';
import type { Vector } from '../../core/geometry/shapes.ts';
import { dot } from '../../core/geometry/vector.ts';
import { fixPlace } from '../../core/log/fix-place.ts';
import type { FixLine } from '../../core/log/fixes.ts';
import { lookAt } from '../bench-side.ts';
import { extents, piecesOf, type Scalable, viewNamed } from '../bench-stage.ts';
import { floorMarks, standsOnFloor } from '../bench-stand.ts';
import { headedBlock, sightMarks, sightOf } from '../bench-view.ts';
import { type Block, emptyBlock } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import { scales, scaleText } from '../paper.ts';
import { fromAbove, fromFront, fromLeft, type Gaze, seen } from '../scene.ts';
import { firstFitting, fitsSheet } from '../sheet.ts';
import { flagMarks } from './fix-flags.ts';

export type FixView = 'plan' | 'front' | 'left';

/** A drawing of the fixes as the list of all drawings takes it. */
export type FixEntry = {
  readonly id: string;
  readonly kind: 'fixes';
  readonly chapter: 'log';
  readonly of: string;
  readonly title: string;
};

export type FixLayout = { readonly blocks: readonly Block[]; readonly scale: number; readonly desc: string };

const GAZES: Readonly<Record<FixView, Gaze>> = { plan: fromAbove, front: fromFront, left: fromLeft };
const VIEWS: readonly FixView[] = ['plan', 'front', 'left'];
const TITLES: Readonly<Record<FixView, string>> = {
  plan: 'Fixes from above',
  front: 'Fixes from the front',
  left: 'Fixes from the left end',
};

/** A fix with its number in the register and where it is in its bench, mm. */
type Placed = { readonly number: number; readonly fix: FixLine; readonly at: Vector };

/** Fixes of pieces that are still there; a lost one is told in the list alone. */
function placedFixes({ parts, state }: DrawingBook, bench: Bench): readonly Placed[] {
  const own = parts.filter((part) => part.bench === bench.id);
  return (state?.fixes ?? []).flatMap((fix, i) => {
    const at = fix.stands ? fixPlace(own, fix) : null;
    return at === null ? [] : [{ number: i + 1, fix, at }];
  });
}

/** From above every fix shows; from a side only those in the half of the bench that is nearer to it. */
function shown(bench: Bench, view: FixView, fixes: readonly Placed[]): readonly Placed[] {
  if (view === 'plan') return fixes;
  return fixes.filter(({ at }) => (view === 'front' ? at[1] <= bench.width / 2 : at[0] <= bench.length / 2));
}

function idOf(bench: Bench, view: FixView): string {
  return `log.fixes.${bench.id}.${view}`;
}

/** The fix maps: each bench from above, from the front and from the left end, where a fix shows there. */
export function fixEntries(book: DrawingBook): readonly FixEntry[] {
  return book.benches.flatMap((bench) => {
    const fixes = placedFixes(book, bench);
    return VIEWS.filter((view) => shown(bench, view, fixes).length > 0).map(
      (view): FixEntry => ({
        id: idOf(bench, view),
        kind: 'fixes',
        chapter: 'log',
        of: bench.id,
        title: book.benches.length > 1 ? `${TITLES[view]}, ${bench.id}` : TITLES[view],
      }),
    );
  });
}

type MapAsk = { readonly book: DrawingBook; readonly bench: Bench; readonly view: FixView };

function frameFromAbove({ book, bench }: Omit<MapAsk, 'view'>) {
  const placed = piecesOf({ notebook: book, bench }).filter(({ part }) => part.role !== 'deck');
  const wood = placed.map((one) => seen(one, fromAbove));
  return { wood, sight: sightOf({ pieces: wood, cut: [], dashed: [] }) };
}

function mapOf({ book, bench, view: name }: MapAsk): Scalable {
  const gaze = GAZES[name];
  const { wood, sight } = name === 'plan' ? frameFromAbove({ book, bench }) : lookAt(book)(bench)[name]();
  if (wood.length === 0) return () => emptyBlock;
  const floor = name !== 'plan' && standsOnFloor(wood) ? extents(wood) : null;
  const flags = shown(bench, name, placedFixes(book, bench)).map(({ number, at }) => ({
    number,
    at: [dot(at, gaze.right), dot(at, gaze.up)] as const,
  }));
  // what is covered is the view's to dash: a map shows where a fix is
  const plain = { ...sight, edges: sight.edges.filter(({ covered }) => !covered) };
  return (scale) => {
    const view = viewNamed(name, scale);
    const ground = floor === null ? [] : floorMarks(view, floor);
    const marks = [...sightMarks(view, plain), ...ground, ...flagMarks(view, flags)];
    const words = ['Numbers are those of the register of fixes.'];
    return headedBlock({ marks, views: [view], dimensions: [] }, `${TITLES[name]} ${scaleText(scale)}`, words);
  };
}

function words({ book, bench, view }: MapAsk): string {
  const told = shown(bench, view, placedFixes(book, bench)).map(
    ({ number, fix }) => `${number}: ${fix.part}, ${fix.what}.`,
  );
  return [`Where ${bench.id} was mended, by number.`, ...told].join(' ');
}

/** A fix map by its id at the largest scale that fits the paper; null when the id is none. */
export function fixLayout(book: DrawingBook, id: string, options: DrawingOptions): FixLayout | null {
  for (const bench of book.benches) {
    const view = VIEWS.find((one) => id === idOf(bench, one));
    if (view === undefined) continue;
    const ask = { book, bench, view };
    const tried = scales.filter((one) => one >= 5);
    const { drawn, scale } = firstFitting(tried, mapOf(ask), (block) => fitsSheet(block, options.paper));
    return { blocks: [drawn], scale, desc: words(ask) };
  }
  return null;
}
