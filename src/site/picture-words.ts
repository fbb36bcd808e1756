import type { Assembly } from '../core/assembly/assembly.ts';
import { boxRound } from '../core/assembly/engagement.ts';
import type { PictureStep } from '../core/assembly/picture-steps.ts';
import type { Stands } from '../core/assembly/seats.ts';
import { moveLines, type PicturedStep } from './assembly-words.ts';
import { drivenNow } from './fastening-words.ts';
import { both, type Html, line, link, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import { metalLines } from './metal-words.ts';
import type { Book } from './notebooks.ts';
import { partNamed } from './parts.ts';

/** A picture of a bench's assembly with all that its words are made from. */
export type Told = {
  readonly book: Book;
  readonly of: Assembly;
  readonly stands: Stands;
  readonly one: PicturedStep;
};

/** The moves of a picture in their order, each on what stands by then. */
export function movesIn({ book, stands, one: { step } }: Told): readonly Html[] {
  const before = (i: number) => step.placings.slice(0, i).flatMap(({ parts }) => parts);
  return moveLines(
    step.placings.map((placing, i) => ({ book, stands, placing, standing: new Set([...step.standing, ...before(i)]) })),
  );
}

/** What holds the pieces of a picture once they are in place, and what is measured before going on. */
export function holdLines(told: Told): readonly Html[] {
  const { book, of, one } = told;
  return [
    ...glueLine(told),
    ...drivenNow(book, of, one).map((words) => line(words, text('.'))),
    ...metalLines(book, one.step),
    ...checkLines(told),
  ];
}

/** Which stages of glue the joints of a picture belong to. */
function glueLine({ of, one: { step } }: Told): readonly Html[] {
  const closed = new Set(step.placings.flatMap(({ joints }) => joints));
  const stages = of.stages.flatMap(({ joints }, i) => (joints.some((id) => closed.has(id)) ? [i + 1] : []));
  if (stages.length === 0) return [];
  return [line(text('Glue and clamps: '), link(`#glue-${of.bench}`, `stage ${stages.join(', ')}`), text('.'))];
}

function checkLines({ of, stands, book, one: { step } }: Told): readonly Html[] {
  const diagonal = closesFrame(of, step) ? of.squaring.diagonal : boxDiagonal(book, stands, step);
  const square =
    diagonal === null
      ? []
      : [line(text('Check: both diagonals '), both(lengthPair(diagonal)), text(', or at least the same.'))];
  return isHung(stands, step) ? [...square, text('Check: the same height at both ends of each.')] : square;
}

/** Whether the last of the frame's outside edges goes in. */
function closesFrame({ squaring: { edges } }: Assembly, { parts, standing, within }: PictureStep): boolean {
  const outside = edges.map(({ part }) => part);
  return (
    within === null &&
    outside.some((id) => parts.includes(id)) &&
    outside.every((id) => parts.includes(id) || standing.includes(id))
  );
}

/** The diagonal of a drawer's box seen from above, mm; null when no drawer is built. */
function boxDiagonal(book: Book, { of }: Stands, { parts, within }: PictureStep): number | null {
  if (within === null || !parts.some((id) => partNamed(book, id)?.role === 'drawer-side')) return null;
  const boxes = parts.flatMap((id) => of.get(id) ?? []);
  const { min, max } = boxRound(boxes);
  return Math.hypot(max[0] - min[0], max[1] - min[1]);
}

/** Whether long pieces are fastened to upright faces, where nothing but a pencil line holds their height. */
function isHung({ of }: Stands, { placings, within }: PictureStep): boolean {
  if (within !== null) return false;
  return placings.every(({ parts, joints, with: mates }) => {
    const [id = ''] = parts;
    const seats = of.get(id)?.seats.filter(({ held, mate }) => held === 'screws' && mates.includes(mate)) ?? [];
    const box = of.get(id)?.box;
    if (parts.length !== 1 || joints.length !== 1 || box === undefined) return false;
    const lies = Math.max(box.max[0] - box.min[0], box.max[1] - box.min[1]) > 4 * (box.max[2] - box.min[2]);
    return lies && seats.some(({ away }) => away !== null && away[2] === 0);
  });
}
