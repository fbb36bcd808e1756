import { difference } from '../core/geometry/booleans.ts';
import { area } from '../core/geometry/polygon.ts';
import type { Polygon } from '../core/geometry/shapes.ts';
import { type Block, emptyBlock, extentOf, joined } from './block.ts';
import { chainMarks, chainReach, type Link, planChain } from './chain.ts';
import type { Dimension } from './dimension.ts';
import type { DrawingUnit } from './drawing.ts';
import { betweenText, onGrid } from './figures.ts';
import { hatchMarks } from './hatch.ts';
import { around, boxesOf, labelAll, linesOf, padded } from './labels.ts';
import { byLeg, groupLabel } from './leg-groups.ts';
import type { Mark } from './mark.ts';
import { edgesOf, modelLine, polygonMark } from './outline.ts';
import { type Rule, ruleSpot, type Side } from './rule.ts';
import { extentOfSeen, type Seen } from './scene.ts';
import { lettering, middleText, smallText, textWidth } from './text.ts';
import { onPaper, paperX, paperY, type View } from './view.ts';
import { coverOf, type Told, told } from './visible.ts';

/** Pieces drawn in one view: `cut` ones are hatched, those in `dashed` keep their covered edges as hidden lines. */
export type Picture = {
  readonly pieces: readonly Seen[];
  readonly cut: readonly Seen[];
  readonly dashed: readonly string[];
};

type Loop = Polygon['outline'];

/** What is seen in a picture, in the model's plane: the same at every scale. */
export type Sight = {
  readonly fills: readonly Polygon[];
  readonly edges: readonly Told[];
  readonly cut: readonly Seen[];
};

/** Fills from the farthest to the nearest, and of every edge what nothing nearer covers, or what is to be dashed. */
export function sightOf({ pieces, cut, dashed }: Picture): Sight {
  const ordered = pieces.toSorted((a, b) => a.near - b.near);
  const covers = [...ordered, ...cut].map(({ areas }) => areas.map(coverOf));
  const edges = ordered.flatMap(({ areas, role }, i) => {
    const over = covers.slice(i + 1).flat();
    const sight = (loops: readonly Loop[]) => loops.flatMap(edgesOf).flatMap((line) => told(line, over));
    // covered holes are the part drawing's to show: here they would be rings in the middle of another piece
    const bored = sight(areas.flatMap(({ holes }) => holes)).filter(({ covered }) => !covered);
    return [
      ...sight(areas.map(({ outline }) => outline)).filter(({ covered }) => !covered || dashed.includes(role)),
      ...bored,
    ];
  });
  return { fills: [...ordered, ...cut].flatMap(({ areas }) => areas), edges, cut };
}

function cutMarks(view: View, pieces: readonly Seen[]): readonly Mark[] {
  return pieces.flatMap((piece, index) =>
    piece.areas.flatMap((area): readonly Mark[] => {
      const loops = [area.outline, ...area.holes].map((loop) => loop.map((point) => onPaper(view, point)));
      return [
        ...hatchMarks(loops, { pitch: 1.6 + 0.4 * (index % 2), slope: index % 2 === 0 ? 1 : -1 }),
        polygonMark(view, area, { pen: 'cut-edge', fill: 'none' }),
      ];
    }),
  );
}

/** Less than this share of a piece is a gap's width, not the piece. */
const GLIMPSE = 0.05;

/** Pieces of which something shows, and those whose covered edges are drawn as hidden lines. */
export function showing(pieces: readonly Seen[], dashed: readonly string[]): readonly Seen[] {
  const size = (areas: Seen['areas']) => areas.reduce((sum, one) => sum + area(one), 0);
  const ordered = pieces.toSorted((a, b) => a.near - b.near).map((piece) => ({ piece, ...extentOfSeen(piece) }));
  const shown = ordered.filter(({ piece, low, high }, i) => {
    if (dashed.includes(piece.role)) return true;
    const meets = (other: (typeof ordered)[number]) =>
      ([0, 1] as const).every((axis) => other.low[axis] < high[axis] && low[axis] < other.high[axis]);
    const nearer = ordered.slice(i + 1).filter(meets);
    if (nearer.length === 0) return true;
    const over = nearer.flatMap((other) => other.piece.areas.map(({ outline }) => outline));
    const own = piece.areas.flatMap(({ outline, holes }) => [outline, ...holes]);
    return size(difference(own, over)) > GLIMPSE * size(piece.areas);
  });
  return shown.map(({ piece }) => piece);
}

/** Fills, then the edges over them, then what is cut. */
export function sightMarks(view: View, { fills, edges, cut }: Sight): readonly Mark[] {
  return [
    ...fills.map((area) => polygonMark(view, area, { pen: 'none', fill: 'wood' })),
    ...edges.map(({ segment, covered }) =>
      modelLine(view, segment, covered ? { pen: 'hidden', role: 'hidden' } : { pen: 'edge', role: 'outline' }),
    ),
    ...cutMarks(view, cut),
  ];
}

export type ChainAsk = {
  readonly name: string;
  readonly view: View;
  readonly side: Side;
  /** ordinates in the model, sorted or not */
  readonly stops: readonly number[];
  readonly base: number;
  /** base of the opposite side, where the whole stands when the chain's figures leave it no room */
  readonly opposite: number;
  readonly v: number;
  readonly unit: DrawingUnit;
  /** how a link is printed: as a size when not told */
  readonly print?: typeof betweenText | undefined;
};

/** A chain over stops; stops that print alike are one. How far out it reaches comes with it. */
export function chainBlock(ask: ChainAsk): Block & { readonly reach: number; readonly overflows: boolean } {
  const { view, unit, v, name, print = betweenText } = ask;
  const rule: Rule = { side: ask.side, base: ask.base };
  const sorted = ask.stops.toSorted((a, b) => a - b);
  const stops = sorted.filter((stop, i) => i === 0 || onGrid(stop, unit) !== onGrid(sorted[i - 1] ?? stop, unit));
  if (stops.length < 2) return { ...emptyBlock, reach: v, overflows: false };
  const along = ask.side === 'below' || ask.side === 'above';
  const at = (value: number) => (along ? paperX(view, value) : paperY(view, value));
  const pairs = stops.slice(1).map((to, i) => ({ from: stops[i] ?? to, to }));
  const links = pairs.map(({ from, to }): Link => {
    const [a, b] = [at(from), at(to)];
    return { from: Math.min(a, b), to: Math.max(a, b), text: print(from, to, unit) };
  });
  const dimensions = pairs.map(
    ({ from, to }, i): Dimension => ({
      measure: 'span',
      of: [],
      text: links[i]?.text ?? '',
      view: view.name,
      between: [from, to],
      ends: [ruleSpot(rule, at(from), v), ruleSpot(rule, at(to), v)],
      chain: name,
    }),
  );
  const marks = chainMarks({ rule, v, starts: () => 0 }, links);
  const plan = planChain(links);
  return { marks, views: [], dimensions, reach: v + chainReach(plan), overflows: plan.overflows };
}

/** A chain and, if it has more than one link, the whole on a line beyond it. */
export function chainWithWhole(ask: ChainAsk): Block {
  const chain = chainBlock(ask);
  if (chain.dimensions.length < 2) return chain;
  const stops = [Math.min(...ask.stops), Math.max(...ask.stops)];
  const name = `${ask.name} whole`;
  if (chain.overflows) {
    const far = { ...ask, name, stops, side: otherSide[ask.side], base: ask.opposite, opposite: ask.base, v: 10 };
    return joined(chain, chainBlock(far));
  }
  return joined(chain, chainBlock({ ...ask, name, stops, v: Math.max(ask.v + 7, chain.reach + 4.5) }));
}

const otherSide: Readonly<Record<Side, Side>> = { below: 'above', above: 'below', left: 'right', right: 'left' };

/** The pieces' labels, each on or beside its piece and clear of everything drawn. */
export function labelled(block: Block, view: View, pieces: readonly Seen[]): Block {
  const labels = byLeg(pieces).map((group) => {
    const boxes = group.map(extentOfSeen).map(({ low, high }) => {
      const [[x0, y1], [x1, y0]] = [onPaper(view, low), onPaper(view, high)];
      return { x0, y0, x1, y1 };
    });
    return { text: groupLabel(group), box: around(boxes) };
  });
  const { x0, x1, y0, y1 } = extentOf(block.marks);
  const outer = { x0: x0 - 6, x1: x1 + 14, y0: y0 - 8, y1: y1 + 6 };
  const inner = padded(around(labels.map(({ box }) => box)), 7.5);
  const marks = labelAll(labels, { lines: linesOf(block.marks), boxes: boxesOf(block.marks) }, [inner, outer]);
  return { ...block, marks: [...block.marks, ...marks] };
}

/** A view's name, and a few words that stand beside it where there is room for them. */
export type Heading = { readonly name: string; readonly beside: string };

/** A view's name over it, and lines of words under the name. */
export function headedBlock(block: Block, heading: string | Heading, words: readonly string[]): Block {
  const { name, beside } = typeof heading === 'string' ? { name: heading, beside: '' } : heading;
  const { x0, x1, y0 } = extentOf(block.marks);
  const from = x0 + textWidth(name, middleText, 'bold') + 5;
  const fits = from + textWidth(beside, smallText, 'regular') <= x1;
  const under = fits || beside === '' ? words : [...words, beside];
  const y = y0 - 4 - under.length * 4.4;
  const title = lettering(name, [x0, y], { size: middleText, weight: 'bold', role: 'label' });
  const lines = under.map((line, i) => lettering(line, [x0, y + (i + 1) * 4.6 + 0.6]));
  const aside = fits && beside !== '' ? [lettering(beside, [from, y])] : [];
  return { ...block, marks: [...block.marks, title, ...aside, ...lines] };
}
