import { bounds } from '../../core/geometry/polygon.ts';
import type { Point } from '../../core/geometry/shapes.ts';
import { insideLoop } from '../../core/scenery/distance.ts';
import type { Section } from '../../core/scenery/section.ts';
import { viewChains } from '../bench-chains.ts';
import { headedBlock, labelled, sightMarks, sightOf } from '../bench-view.ts';
import { type Block, joined } from '../block.ts';
import { apartText, saidLength } from '../figures.ts';
import { scaleText } from '../paper.ts';
import type { Seen } from '../scene.ts';
import type { View } from '../view.ts';
import { cutAlong } from './along-cut.ts';
import { type LandAsk, sites } from './land-stage.ts';
import { type CutGround, groundMarks, nameSpots, waterStretches } from './section-marks.ts';
import { lengthOf, peakOf, titleOf } from './section-words.ts';

/** Roles that show what the land stands on. */
const BEARING = ['deck', 'strut', 'side', 'end', 'flange-strip', 'profile-board', 'tray'];

/** A section through the ground and what bears it, ready for any scale: layers, roadbeds, tunnels, water and the frame. */
export function landSection(ask: SectionAsk, section: Section): (scale: number) => Block {
  const pieces = cutAlong(ask.book, sites(ask.book), { way: section.way, roles: BEARING });
  const deckTop = deckTopUnder(ask, section);
  return (scale) => sectionBlock(ask, { section, pieces, deckTop }, scale);
}

/** A section whatever its scale. */
export type SectionAsk = Omit<LandAsk, 'scale'>;

type Cutting = { readonly section: Section; readonly pieces: readonly Seen[]; readonly deckTop: number };

function sectionBlock(ask: SectionAsk, { section, pieces, deckTop }: Cutting, scale: number): Block {
  const { options, land } = ask;
  const view: View = { name: section.id, scale, origin: [0, 0], breaks: [] };
  const boards = pieces
    .filter(({ role }) => role === 'profile-board')
    .flatMap(({ areas }) => areas.map(({ outline }) => bounds(outline)))
    .map(({ low, high }): Point => [low[0], high[0]]);
  const cut: CutGround = { section, land, deckTop, view, boards };
  const drawn = [...sightMarks(view, sightOf({ pieces: [], cut: pieces, dashed: [] })), ...groundMarks(cut)];
  const outlines = pieces.flatMap(({ areas }) => areas.flatMap(({ outline }) => outline));
  const lowest = Math.min(cut.deckTop, ...outlines.map(([, z]) => z));
  const chains = viewChains({
    view,
    unit: options.unit,
    print: apartText,
    box: { u0: 0, u1: lengthOf(section), v0: lowest, v1: cut.deckTop + peakOf(section)[1] },
    along: { name: `${section.id} along`, at: alongStops(section) },
    upright: { name: `${section.id} upright`, at: [lowest, ...uprightStops(cut)], side: 'left' },
  });
  const shape = joined({ marks: drawn, views: [view], dimensions: [] }, chains);
  const named = labelled(shape, view, [...pieces, ...nameSpots(cut)]);
  return headedBlock(named, `${titleOf(section)} ${scaleText(scale)}`, wordsUnder(ask, cut));
}

/** Deck top of the bench under the middle of a section, else of the first one. */
function deckTopUnder({ book }: SectionAsk, { way }: Section): number {
  const all = sites(book);
  const under = way.map(({ x, y }) => all.find(({ loop }) => insideLoop(loop, [x, y])));
  const middle = way.slice(1).map((b, i): Point => {
    const a = way[i] ?? b;
    return [(a.x + b.x) / 2, (a.y + b.y) / 2];
  });
  const found = [...middle.map((place) => all.find(({ loop }) => insideLoop(loop, place))), ...under];
  return (found.find((site) => site !== undefined) ?? all[0])?.bench.deckTop ?? 0;
}

function alongStops(section: Section): readonly number[] {
  const beds = section.beds.filter(({ line }) => line !== section.line).map(({ points }) => middleOf(points)[0]);
  const all = [peakOf(section)[0], ...section.water.flatMap(({ from, to }) => [from, to]), ...beds];
  const end = lengthOf(section);
  return [0, ...all.filter((at) => at > 0 && at < end), end];
}

/** Deck top, the highest ground, water's surface and underside, and every roadbed's lowest and highest. */
function uprightStops({ section, land, deckTop }: CutGround): readonly number[] {
  const water = waterStretches({ section, land }).flatMap(({ surface, underside }) => [surface, underside]);
  const beds = section.beds.flatMap(({ points }) => {
    const { low, high } = bounds(points);
    return [low[1], high[1]];
  });
  return [0, peakOf(section)[1], ...water, ...beds].map((height) => deckTop + height);
}

function middleOf(points: readonly Point[]): Point {
  const { low, high } = bounds(points);
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
}

function wordsUnder({ options, book }: SectionAsk, { section, deckTop }: CutGround): readonly string[] {
  const said = (mm: number) => saidLength(mm, options.unit);
  const datum = `Datum: deck top, ${said(deckTop)} over the floor. Foam in dashed layers${section.bores.length === 0 ? '' : '; room for trains in long dashes'}.`;
  return [`${placeWords(section, sites(book)[0]?.bench.place.turn === 0, said)}`, datum];
}

/** Where the cut is, for whoever stands at the bench. */
function placeWords({ line, from, to }: Section, straight: boolean, said: (mm: number) => string): string {
  const [[x0, y0], [x1, y1]] = [from, to];
  if (line !== null) return `Rolled out along ${line}, from ${said(x0)}, ${said(y0)} to ${said(x1)}, ${said(y1)}.`;
  if (straight && y0 === y1) return `Cut ${said(y0)} from the front, seen from the front.`;
  if (straight && x0 === x1) return `Cut ${said(x0)} from the left end, seen from the right end.`;
  return `Cut from ${said(x0)}, ${said(y0)} to ${said(x1)}, ${said(y1)}.`;
}
