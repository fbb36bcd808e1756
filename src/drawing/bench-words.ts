import type { Bench } from '../core/benchwork/bench.ts';
import { type BenchViewKind, sectionPlane } from './bench-stage.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingUnit } from './drawing.ts';
import { saidLength } from './figures.ts';

type Asked = { readonly kind: BenchViewKind; readonly unit: DrawingUnit };

const roleWords: readonly (readonly [string, string, string])[] = [
  ['side', 'side', 'sides'],
  ['end', 'end', 'ends'],
  ['strut', 'strut', 'struts'],
  ['flange-strip', 'flange strip', 'flange strips'],
  ['deck', 'piece of deck', 'pieces of deck'],
];

function counted(notebook: DrawingBook, bench: Bench): string {
  const pieces = notebook.parts.filter((part) => part.bench === bench.id);
  const words = roleWords.flatMap(([role, one, more]) => {
    const count = pieces.filter((part) => part.role === role).reduce((sum, { places }) => sum + places.length, 0);
    return count === 0 ? [] : [`${count} ${count === 1 ? one : more}`];
  });
  return words.length <= 1 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function seamWords(notebook: DrawingBook, bench: Bench, unit: DrawingUnit): readonly string[] {
  return notebook.seams
    .filter((seam) => seam.bench === bench.id)
    .map(
      ({ on, bearing: [a, b] }) =>
        `A seam of the deck lies on ${on}, which bears ${saidLength(a, unit)} and ${saidLength(b, unit)}.`,
    );
}

/** What a drawing of a bench shows, in words, with its figures in the sheet's unit. */
export function benchWords(notebook: DrawingBook, bench: Bench, { kind, unit }: Asked): string {
  const say = (mm: number) => saidLength(mm, unit);
  const size = `The frame is ${say(bench.length)} long and ${say(bench.width)} wide; the deck's top is ${say(bench.deckTop)} above the floor.`;
  const heights = `The sides are ${say(bench.sideTop - bench.sideUnderside)} high and the struts ${say(bench.sideTop - bench.strutUnderside)}, so the struts hang ${say(bench.strutUnderside - bench.sideUnderside)} above the sides' undersides.`;
  const made = `It is made of ${counted(notebook, bench)}.`;
  if (kind === 'plan') return [`${bench.id} from above with its deck left off.`, size, made].join(' ');
  if (kind === 'deck')
    return [
      `The deck of ${bench.id} from above, what bears it dashed.`,
      size,
      ...seamWords(notebook, bench, unit),
    ].join(' ');
  if (kind === 'section')
    return [
      `${bench.id} cut across ${say(sectionPlane(notebook, bench).at)} from its left end, looking towards that end.`,
      size,
      heights,
    ].join(' ');
  const from = kind === 'front' ? 'the front' : 'its left end';
  return [`${bench.id} seen from ${from}; struts behind are dashed.`, size, heights].join(' ');
}
