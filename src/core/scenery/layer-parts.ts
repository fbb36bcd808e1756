import { difference } from '../geometry/booleans.ts';
import { area, bounds, rectangle } from '../geometry/polygon.ts';
import type { Point, Polygon } from '../geometry/shapes.ts';
import type { SheetStock } from '../stock/goods.ts';
import type { Feature, MatingMark, Part } from '../stock/part.ts';
import { clipped, mapped } from './clip.ts';
import type { Layer } from './layer.ts';
import type { RegisterMark } from './register-mark.ts';
import { fitToSheets } from './sheet-fit.ts';
import { type Site, toBench, toNotebook } from './site.ts';

/** One piece of a layer's template as it lies on its bench, and the part it is cut as. */
export type LayerPiece = {
  readonly part: string;
  readonly bench: string;
  /** notebook coordinates, mm */
  readonly shape: Polygon;
};

export type LayerParts = {
  readonly parts: readonly Part[];
  readonly pieces: readonly LayerPiece[];
  readonly joints: readonly (readonly [Point, Point])[];
};

/** Waste smaller than this is not worth a cut, mm2. */
const DUST = 0.5;

/** A layer's template parted over the benches and sheets, each piece a part with its corners to be cut away. */
export function layerParts(layer: Layer, foam: SheetStock, sites: readonly Site[]): LayerParts {
  const onBenches = sites.flatMap((site) => {
    const own = mapped(clipped(layer.template, site.loop), (point) => toBench(site.pose, point));
    return own.map((polygon) => ({ site, ...fitToSheets(polygon, foam.sizes, layer.number) }));
  });
  const all = onBenches.flatMap(({ site, pieces }) => pieces.map((shape) => ({ site, shape })));
  const joints = onBenches.flatMap(({ site, joints: lines }) =>
    lines.map(([a, b]) => [toNotebook(site.pose, a), toNotebook(site.pose, b)] as const),
  );
  const parts = all.map((piece, i) => partOf(piece, { layer, foam, number: all.length === 1 ? null : i + 1 }));
  const pieces = all.map(({ site, shape }, i) => ({
    part: parts[i]?.id ?? layer.id,
    bench: site.bench.id,
    shape: mapped([shape], (point) => toNotebook(site.pose, point))[0] ?? shape,
  }));
  return { parts, pieces, joints };
}

type Piece = { readonly site: Site; readonly shape: Polygon };
type Of = { readonly layer: Layer; readonly foam: SheetStock; readonly number: number | null };

function partOf({ site, shape }: Piece, { layer, foam, number }: Of): Part {
  const { low, high } = bounds(shape.outline);
  const local = (point: Point): Point => [point[0] - low[0], point[1] - low[1]];
  const [length, width] = [high[0] - low[0], high[1] - low[1]];
  const tail = number === null ? '' : `-${number}`;
  const [id, label] = [`${layer.id}${tail}`, `F${layer.number}${tail}`];
  const own = mapped([shape], local)[0] ?? shape;
  const { bench } = site;
  const origin = [low[0], low[1], bench.deckTop + layer.from] as const;
  return {
    ...{ id, label, role: 'layer', chapter: 'scenery', bench: bench.id, stock: foam.id },
    blank: { length, width, thickness: foam.thickness.listed, grain: 'any' },
    features: shapedBy(own, { length, width }),
    places: [{ id, label, pose: { origin, x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }, marks: [] }],
    cutAfterMeasuring: false,
    phase: bench.phase,
  };
}

/** A layer's part with its pins marked on it: on its face to what lies on it, on its back to what it lies on. */
export function withPins(
  part: Part,
  { marks, sites }: { readonly marks: readonly RegisterMark[]; readonly sites: readonly Site[] },
): Part {
  const site = sites.find(({ bench }) => bench.id === part.bench);
  const through = marks.filter(({ parts }) => parts.includes(part.id));
  if (site === undefined || through.length === 0) return part;
  const places = part.places.map((place) => {
    const [x0, y0] = place.pose.origin;
    return {
      ...place,
      marks: through.map(({ id, at, parts }): MatingMark => {
        const [x, y] = toBench(site.pose, at);
        const side = parts.length === 2 && parts[0] === part.id ? 'face' : 'back';
        return { text: id, side, at: [x - x0, y - y0], kind: 'mate' };
      }),
    };
  });
  return { ...part, places };
}

type Size = { readonly length: number; readonly width: number };

/** The cuts that leave a shape of its blank: what lies outside it, quarter by quarter, so that none has a hole; then its holes. */
export function shapedBy(shape: Polygon, { length, width }: Size): readonly Feature[] {
  const quarters: readonly (readonly Point[])[] = [
    rectangle([0, 0], [length / 2, width / 2]),
    rectangle([length / 2, 0], [length, width / 2]),
    rectangle([length / 2, width / 2], [length, width]),
    rectangle([0, width / 2], [length / 2, width]),
  ];
  const waste = quarters
    .flatMap((quarter) => difference([quarter], [shape.outline]))
    .filter((piece) => area(piece) > DUST);
  const loops = [...waste.map(({ outline }) => outline), ...shape.holes];
  return loops.map((outline, i) => ({ id: `cut-out-${i + 1}`, kind: 'cut-out', outline }));
}
