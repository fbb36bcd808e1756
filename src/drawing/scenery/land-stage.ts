import { bounds } from '../../core/geometry/polygon.ts';
import type { Point, Polygon } from '../../core/geometry/shapes.ts';
import type { SceneryModel } from '../../core/scenery/model.ts';
import { type Site, sitesOf, toNotebook } from '../../core/scenery/site.ts';
import type { Block } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import type { Mark } from '../mark.ts';
import type { FillName, PenName } from '../pens.ts';
import { fromAbove, placedParts, seen } from '../scene.ts';
import { firstFitting, fitsSheet, possibleScales } from '../sheet.ts';
import { onPaper, type View } from '../view.ts';

/** What a drawing of the land is made from. */
export type LandAsk = {
  readonly book: DrawingBook;
  readonly land: SceneryModel;
  readonly options: DrawingOptions;
  readonly scale: number;
};

export type LandLayout = { readonly blocks: readonly Block[]; readonly scale: number; readonly desc: string };

/** A block at the largest scale that fits the paper, full size at most; nothing is drawn where its own `size` (mm) is too large. */
export function largest(
  block: (scale: number) => Block,
  { paper }: DrawingOptions,
  size: { readonly width: number; readonly height: number },
): { readonly block: Block; readonly scale: number } {
  const { drawn, scale } = firstFitting(possibleScales(size, paper), block, (one) => fitsSheet(one, paper));
  return { block: drawn, scale };
}

/** How far the benches reach from above, mm. */
export function sitesSize(book: DrawingBook): { readonly width: number; readonly height: number } {
  const { low, high } = bounds(sites(book).flatMap(({ loop }) => loop));
  return { width: high[0] - low[0], height: high[1] - low[1] };
}

export function sites(book: DrawingBook): readonly Site[] {
  return sitesOf(book.benches);
}

/** Pieces of the frame from above, in notebook coordinates, by role. */
export function framePlans(book: DrawingBook, roles: readonly string[]) {
  return sites(book).flatMap((site) =>
    placedParts(book.parts.filter((part) => part.bench === site.bench.id && roles.includes(part.role))).map((one) => {
      const piece = seen(one, fromAbove);
      return { ...piece, areas: piece.areas.map((area) => onNotebook(site, area)) };
    }),
  );
}

function onNotebook({ pose }: Site, { outline, holes }: Polygon): Polygon {
  const move = (point: Point) => toNotebook(pose, point);
  return { outline: outline.map(move), holes: holes.map((hole) => hole.map(move)) };
}

/** A loop as lines of one pen, nothing filled. */
export function loopMark(
  view: View,
  loop: readonly Point[],
  style: { readonly pen: PenName; readonly role: Mark['role'] },
): Mark {
  const points = [...loop, ...loop.slice(0, 1)].map((point) => onPaper(view, point));
  return { kind: 'polyline', points, pen: style.pen, role: style.role };
}

export function areaMark(
  view: View,
  { outline, holes }: Polygon,
  style: { readonly pen: PenName; readonly fill: FillName },
): Mark {
  const rings = [outline, ...holes].map((loop) => loop.map((point) => onPaper(view, point)));
  return { kind: 'polygon', rings, role: 'outline', ...style };
}
