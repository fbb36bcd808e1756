import type { MatingMark, Part } from '../core/stock/part.ts';
import { alsoTaken, boxesOf, isClear, linesOf, padded, type Taken, taken } from './labels.ts';
import type { Extent, Mark, Spot, TextMark } from './mark.ts';
import { onWood, type Stage } from './part-stage.ts';
import { lettering, smallText, textBox } from './text.ts';
import { liesFlat } from './up-arrow.ts';
import { onPaper } from './view.ts';

/** Room round the words in their box, mm. */
const PAD = 0.7;

/** A mark that is written at one spot of a part's pieces, with what each piece has there. */
type Shared = Pick<MatingMark, 'side' | 'at'> & { readonly key: string; readonly text: string };

/** The marks drawn on a view, and the keys of those the list need not call missing. */
export type WrittenMarks = { readonly marks: readonly Mark[]; readonly written: readonly string[] };

/** A mark by its side and place: what the pieces have at one spot has one key. */
export function markKey({ side, at: [x, y] }: Pick<MatingMark, 'side' | 'at'>): string {
  return [side, x.toFixed(1), y.toFixed(1)].join(' ');
}

/** What stands at one spot: up to three pieces' words together; words that not all pieces have name up to two that do. */
function wordsAtSpot(pieces: readonly { readonly label: string; readonly text: string }[], count: number): string {
  const texts = [...new Set(pieces.map(({ text }) => text))];
  const words = texts.length > 3 ? '' : texts.join(' / ');
  if (pieces.length === count || words === '') return words;
  return pieces.length > 2 ? '' : `${words} (${pieces.map(({ label }) => label).join(', ')})`;
}

/** The marks to write by their spots, save the way up where an arrow tells it. */
function sharedMarks(part: Part): readonly Shared[] {
  const isBoxed = ({ kind }: MatingMark) => kind !== 'up' || liesFlat(part);
  const all = part.places.flatMap(({ label, marks }) => marks.filter(isBoxed).map((mark) => ({ ...mark, label })));
  return [...new Set(all.map(markKey))].flatMap((key): readonly Shared[] => {
    const here = all.filter((mark) => markKey(mark) === key);
    const text = wordsAtSpot(here, part.places.length);
    return text === '' ? [] : here.slice(0, 1).map(({ side, at }) => ({ key, side, at, text }));
  });
}

/** Steps aside from where a mark belongs, the nearest first; mm. */
const ASIDE: readonly Spot[] = [0, 1, 2, 3]
  .flatMap((across): Spot[] =>
    [0, 1, 2, 3, 4, 5].flatMap((along): Spot[] => [
      [along * 1.5, across * 1.5],
      [-along * 1.5, across * 1.5],
      [along * 1.5, -across * 1.5],
      [-along * 1.5, -across * 1.5],
    ]),
  )
  .toSorted(([ax, ay], [bx, by]) => Math.hypot(ax, ay) - Math.hypot(bx, by));

/** Places about a spot, the nearest first. */
function spotsAbout([x, y]: Spot): readonly Spot[] {
  return ASIDE.map(([dx, dy]): Spot => [x + dx, y + dy]);
}

function within(box: Extent, outer: Extent): boolean {
  return box.x0 > outer.x0 && box.x1 < outer.x1 && box.y0 > outer.y0 && box.y1 < outer.y1;
}

function wordsAt(text: string, [x, y]: Spot): TextMark {
  return lettering(text, [x, y + smallText / 2], { role: 'label', anchor: 'middle' });
}

/** The words in a box: what is written on the wood; dashed where it is written on the back. */
function boxed({ text, side }: Shared, spot: Spot): readonly Mark[] {
  const words = wordsAt(text, spot);
  const { x0, y0, x1, y1 } = padded(textBox(words), PAD);
  const ring: readonly Spot[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  const pen = side === 'face' ? 'dimension' : 'hidden';
  return [words, { kind: 'polygon', rings: [ring], fill: 'none', pen, role: 'symbol' }];
}

/** Marks to write, drawn on the true shape where they belong; those that have no room stand in the list alone. */
export function mateMarks(stage: Stage, drawn: readonly Mark[]): WrittenMarks {
  const { part, view, window } = stage;
  const marks = sharedMarks(part);
  if (marks.length === 0) return { marks: [], written: [] };
  const isWood = onWood(stage);
  const [[x0, y1], [x1, y0]] = [onPaper(view, [window.x0, window.y0]), onPaper(view, [window.x1, window.y1])];
  const inside = padded({ x0, x1, y0, y1 }, -0.5);
  const isShown = ({ at: [x] }: Shared) =>
    x >= window.x0 && x <= window.x1 && !view.breaks.some(({ from, to }) => x > from && x < to);
  const boxes: Mark[] = [];
  const written: string[] = [];
  let crowd: Taken = taken({ lines: linesOf(drawn), boxes: boxesOf(drawn) });
  for (const mark of marks.filter(isShown)) {
    const found = spotsAbout(onPaper(view, mark.at)).find((spot) => {
      const box = padded(textBox(wordsAt(mark.text, spot)), PAD);
      return within(box, inside) && isWood(box) && isClear(padded(box, 0.4), crowd);
    });
    if (found === undefined) continue;
    const own = boxed(mark, found);
    boxes.push(...own);
    written.push(mark.key);
    crowd = alsoTaken(crowd, own);
  }
  return { marks: boxes, written };
}
