import { bounds } from '../../core/geometry/polygon.ts';
import type { Point } from '../../core/geometry/shapes.ts';
import { insideLoop } from '../../core/scenery/distance.ts';
import type { Section } from '../../core/scenery/model.ts';
import { type Site, toBench } from '../../core/scenery/site.ts';
import { viewChains } from '../bench-chains.ts';
import { headedBlock, labelled, sightMarks, sightOf } from '../bench-view.ts';
import { type Block, joined } from '../block.ts';
import type { DrawingUnit } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import type { Mark } from '../mark.ts';
import { scaleText } from '../paper.ts';
import { cutBy, fromFront, fromRight, placedParts, type Seen } from '../scene.ts';
import { onPaper, type View } from '../view.ts';
import { areaMark, type LandAsk, sites } from './land-stage.ts';

/** Roles that show what the land stands on. */
const BEARING = ['deck', 'strut', 'side', 'end', 'flange-strip', 'profile-board'];

type Cut = { readonly section: Section; readonly site: Site; readonly axis: 0 | 1 };

/** A section through the ground and what bears it: layers, water and the frame where the plane cuts them. */
export function landSection(ask: LandAsk, section: Section): Block {
  const cut = planeOf(ask, section);
  const { options, scale } = ask;
  const view: View = { name: section.id, scale, origin: [0, 0], breaks: [] };
  if (cut === null) return { marks: [], views: [view], dimensions: [] };
  const pieces = framePieces(ask, cut);
  const deckTop = cut.site.bench.deckTop;
  const top = section.heights.reduce((most, [, h]) => Math.max(most, h), 0);
  const shape: Block = {
    marks: [
      ...sightMarks(view, sightOf({ pieces: [], cut: pieces, dashed: [] })),
      ...groundMarks(ask, cut, view),
      ...waterMarks(ask, cut, view),
    ],
    views: [view],
    dimensions: [],
  };
  const lowest = Math.min(
    deckTop,
    ...pieces.map(({ areas }) => bounds(areas.flatMap(({ outline }) => outline)).low[1]),
  );
  const size = cut.axis === 0 ? cut.site.bench.length : cut.site.bench.width;
  const box = { u0: 0, u1: size, v0: lowest, v1: deckTop + top };
  const water = waterSpans(ask, cut).flatMap(({ from, to }) => [from, to]);
  const chains = viewChains({
    view,
    unit: options.unit,
    box,
    along: { name: `${section.id} along`, at: [0, size, peakOf(section), ...water] },
    upright: { name: `${section.id} upright`, at: [deckTop, deckTop + top, lowest], side: 'left' },
  });
  return headedBlock(labelled(joined(shape, chains), view, pieces), `${titleOf(section)} ${scaleText(scale)}`, [
    `Cut ${saidLength(cut.axis === 0 ? section.from[1] : section.from[0], options.unit)} from the ${cut.axis === 0 ? 'front' : 'left end'}; foam in dashed layers.`,
  ]);
}

/** The bench a section crosses and the way it runs there; null for a bench that stands at a slant. */
function planeOf({ book }: LandAsk, section: Section): Cut | null {
  const middle: Point = [(section.from[0] + section.to[0]) / 2, (section.from[1] + section.to[1]) / 2];
  const site = sites(book).find(({ loop }) => insideLoop(loop, middle));
  if (site === undefined || Math.abs(Math.sin(2 * site.bench.place.turn)) > 1e-9) return null;
  const [a, b] = [toBench(site.pose, section.from), toBench(site.pose, section.to)];
  return { section, site, axis: Math.abs(b[0] - a[0]) > Math.abs(b[1] - a[1]) ? 0 : 1 };
}

function framePieces({ book }: LandAsk, { section, site, axis }: Cut): readonly Seen[] {
  const [x, y] = toBench(site.pose, section.from);
  const placed = placedParts(book.parts.filter((part) => part.bench === site.bench.id && BEARING.includes(part.role)));
  const [gaze, at] = axis === 0 ? [fromFront, -y] : [fromRight, x];
  return placed.map((one) => cutBy(one, gaze, at)).filter((piece) => piece !== null);
}

/** The ground's own line, and the layers under it as dashed lines. */
function groundMarks({ land }: LandAsk, { section, site }: Cut, view: View): readonly Mark[] {
  const z = site.bench.deckTop;
  const line = section.heights.map(([s, h]): Point => [s, z + h]);
  const layers = land.layers.flatMap(({ to }) =>
    spansOver(section.heights, to).map(([from, end]): Mark => {
      const [a, b] = [onPaper(view, [from, z + to]), onPaper(view, [end, z + to])];
      return { kind: 'line', from: a, to: b, pen: 'hidden', role: 'hidden' };
    }),
  );
  return [
    ...layers,
    { kind: 'polyline', points: line.map((point) => onPaper(view, point)), pen: 'cut-edge', role: 'outline' },
  ];
}

/** Stretches along a section whose ground is higher than a level. */
function spansOver(heights: readonly Point[], level: number): readonly (readonly [number, number])[] {
  const ends = heights.slice(1).flatMap(([s, h], i): readonly number[] => {
    const [ps, ph] = heights[i] ?? [s, h];
    return ph > level === h > level ? [] : [ps + ((level - ph) * (s - ps)) / (h - ph)];
  });
  return ends.flatMap((from, i) => (i % 2 === 1 ? [] : [[from, ends[i + 1] ?? from] as const]));
}

type Span = {
  readonly from: number;
  readonly to: number;
  readonly surface: number;
  readonly bottom: number;
  readonly underside: number;
};

/** Waters the section crosses, along it. */
function waterSpans({ land }: LandAsk, { section, site, axis }: Cut): readonly Span[] {
  const [x, y] = toBench(site.pose, section.from);
  return land.water.flatMap(({ outline, surface, bottom, underside }) => {
    const { low, high } = bounds(outline.map((point) => toBench(site.pose, point)));
    const across = axis === 0 ? y : x;
    const other = axis === 0 ? 1 : 0;
    return across > low[other] && across < high[other]
      ? [{ from: low[axis], to: high[axis], surface, bottom, underside }]
      : [];
  });
}

function waterMarks(ask: LandAsk, cut: Cut, view: View): readonly Mark[] {
  const z = cut.site.bench.deckTop;
  return waterSpans(ask, cut).flatMap(({ from, to, surface, bottom, underside }) => [
    areaMark(
      view,
      {
        outline: [
          [from, z + bottom],
          [to, z + bottom],
          [to, z + surface],
          [from, z + surface],
        ],
        holes: [],
      },
      { pen: 'feature', fill: 'shade' },
    ),
    areaMark(
      view,
      {
        outline: [
          [from, z + underside],
          [to, z + underside],
          [to, z + bottom],
          [from, z + bottom],
        ],
        holes: [],
      },
      { pen: 'cut-edge', fill: 'none' },
    ),
  ]);
}

/** How far along the ground is highest. */
function peakOf({ heights }: Section): number {
  return heights.reduce<Point>((best, one) => (one[1] > best[1] ? one : best), [0, 0])[0];
}

/** `chalk-hill-along` reads "Section along chalk hill". */
export function titleOf({ id }: Section): string {
  const way = id.endsWith('-along') ? 'along' : 'across';
  return `Section ${way} ${id.replace(/-(along|across)$/, '').replaceAll('-', ' ')}`;
}

/** What a section shows, in words. */
export function sectionWords(section: Section, unit: DrawingUnit): string {
  const top = section.heights.reduce((most, [, h]) => Math.max(most, h), 0);
  return `${titleOf(section)}: the ground rises to ${saidLength(top, unit)} over the deck, ${saidLength(peakOf(section), unit)} along the cut.`;
}
