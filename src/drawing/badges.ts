import type { Level } from '../core/finding.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import { alsoTaken, boxAbout, boxesOf, isClear, linesOf, padded, taken } from './labels.ts';
import { byLeg, groupLabel } from './leg-groups.ts';
import type { Extent, Mark, Spot, TextMark } from './mark.ts';
import type { Seen } from './scene.ts';
import { textBox } from './text.ts';

/** What the checks say of a piece, where it is more than a note. */
export type Badge = Exclude<Level, 'note'>;

/** Half the height of a badge, and its distance from the label it stands beside; mm of paper. */
const HALF = 1.3;
const OFF = 0.8;

/** The gravest finding about every piece, those left out that an author lives with. */
export function badgesOf({ findings = [], parts }: DrawingBook): ReadonlyMap<string, Badge> {
  const badges = new Map<string, Badge>();
  const give = (id: string, badge: Badge) => badges.set(id, badges.get(id) === 'halt' ? 'halt' : badge);
  for (const { level, where, accepted } of findings) {
    if (level === 'note' || accepted !== null) continue;
    const own = parts.find(({ id }) => id === where)?.places.map(({ id }) => id) ?? [where];
    for (const id of own) give(id, level);
  }
  return badges;
}

/** A badge beside the label of every piece that the checks speak of, where there is room for it. */
export function badged(block: Block, pieces: readonly Seen[], badges: ReadonlyMap<string, Badge>): Block {
  const marks: Mark[] = [];
  let crowd = taken({ lines: linesOf(block.marks), boxes: boxesOf(block.marks) });
  for (const group of byLeg(pieces)) {
    const badge = graver(group.map(({ id }) => badges.get(id)));
    const label = badge === null ? null : labelOf(block, groupLabel(group));
    if (badge === null || label === null) continue;
    const spot = spotsBeside(textBox(label)).find((one) => isClear(padded(boxAbout(one, HALF), 0.3), crowd));
    if (spot === undefined) continue;
    const mark = badgeMark(badge, spot);
    marks.push(mark);
    crowd = alsoTaken(crowd, [mark]);
  }
  return { ...block, marks: [...block.marks, ...marks] };
}

/** What the badges of a view mean, in a few words; none where none is about its pieces. */
export function badgeWords(pieces: readonly Seen[], badges: ReadonlyMap<string, Badge>): string {
  const told = new Set(pieces.flatMap(({ id }) => badges.get(id) ?? []));
  const words = [...(told.has('halt') ? ['Octagon: halt.'] : []), ...(told.has('care') ? ['Triangle: care.'] : [])];
  return words.length === 0 ? '' : `${words.join(' ')} See what the checks found.`;
}

function graver(badges: readonly (Badge | undefined)[]): Badge | null {
  return badges.includes('halt') ? 'halt' : badges.includes('care') ? 'care' : null;
}

function labelOf({ marks }: Block, text: string): TextMark | null {
  return (
    marks.find((mark): mark is TextMark => mark.kind === 'text' && mark.role === 'label' && mark.text === text) ?? null
  );
}

function spotsBeside({ x0, x1, y0, y1 }: Extent): readonly Spot[] {
  const [x, y, away] = [(x0 + x1) / 2, (y0 + y1) / 2, HALF + OFF];
  return [
    [x1 + away, y],
    [x0 - away, y],
    [x, y0 - away],
    [x, y1 + away],
  ];
}

/** Octagon for a halt, triangle for a care, both full: a hollow triangle is an open end. */
function badgeMark(badge: Badge, [x, y]: Spot): Mark {
  const corners = badge === 'halt' ? 8 : 3;
  const turn = badge === 'halt' ? Math.PI / 8 : -Math.PI / 2;
  const ring = Array.from({ length: corners }, (_, i): Spot => {
    const angle = turn + (2 * Math.PI * i) / corners;
    return [x + HALF * Math.cos(angle), y + HALF * Math.sin(angle)];
  });
  return { kind: 'polygon', rings: [ring], fill: 'ink', pen: 'feature', role: 'symbol' };
}
