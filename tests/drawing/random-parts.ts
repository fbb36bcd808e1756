import fc from 'fast-check';
import { circle } from '../../src/core/geometry/polygon.ts';
import type { Feature, Part } from '../../src/core/stock/part.ts';
import type { GridAsk } from './fixtures.ts';

/** A tenth of a millimetre from a range. */
function tenths(from: number, to: number): fc.Arbitrary<number> {
  return fc.integer({ min: Math.round(from * 10), max: Math.round(to * 10) }).map((n) => n / 10);
}

type Cell = { readonly from: number; readonly to: number };
type Draw = {
  readonly kind:
    | 'slot'
    | 'dado'
    | 'stopped-dado'
    | 'groove'
    | 'opening'
    | 'hole'
    | 'blind'
    | 'counterbore'
    | 'cut-out'
    | 'curve';
  readonly start: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly side: 'face' | 'back';
  readonly edge: 'top' | 'bottom';
  readonly corner: boolean;
};

const draw: fc.Arbitrary<Draw> = fc.record({
  kind: fc.constantFrom(
    'slot',
    'dado',
    'stopped-dado',
    'groove',
    'opening',
    'hole',
    'blind',
    'counterbore',
    'cut-out',
    'curve',
  ),
  start: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
  share: fc.double({ min: 0.1, max: 0.5, noNaN: true }),
  low: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
  high: fc.double({ min: 0.55, max: 0.95, noNaN: true }),
  side: fc.constantFrom('face', 'back'),
  edge: fc.constantFrom('top', 'bottom'),
  corner: fc.boolean(),
});

/** One feature inside a stretch of the part, clear of its neighbours. */
function featureIn(one: Draw, cell: Cell, blank: Part['blank'], id: string): Feature {
  const x0 = cell.from + (cell.to - cell.from) * one.start;
  const x1 = x0 + (cell.to - cell.from) * one.share;
  const [y0, y1] = [blank.width * one.low, blank.width * one.high];
  const depth = blank.thickness / 3;
  const corner = one.corner ? Math.min(3, (x1 - x0) / 4, (y1 - y0) / 4) : 0;
  const at = [(x0 + x1) / 2, (y0 + y1) / 2] as const;
  const diameter = Math.min(x1 - x0, y1 - y0) * 0.9;
  switch (one.kind) {
    case 'slot':
      return {
        id,
        kind: 'notch',
        edge: one.edge,
        corner,
        patch: one.edge === 'top' ? { x0, x1, y0, y1: blank.width } : { x0, x1, y0: 0, y1 },
      };
    case 'dado':
      return { id, kind: 'dado', side: one.side, patch: { x0, x1, y0: 0, y1: blank.width }, depth, corner: 0 };
    case 'stopped-dado':
    case 'groove':
      return { id, kind: one.kind, side: one.side, patch: { x0, x1, y0, y1 }, depth, corner };
    case 'opening':
      return { id, kind: 'opening', patch: { x0, x1, y0, y1 }, corner };
    case 'cut-out':
      return {
        id,
        kind: 'cut-out',
        outline: [
          [x0, y0],
          [x1, y0],
          [(x0 + x1) / 2, y1],
        ],
      };
    case 'curve':
      return { id, kind: 'cut-out', outline: circle([(x0 + x1) / 2, (y0 + y1) / 2], diameter / 2, 40) };
    case 'hole':
      return { id, kind: 'hole', at, diameter, side: one.side, depth: 'through' };
    case 'blind':
      return { id, kind: 'hole', at, diameter, side: one.side, depth };
    case 'counterbore':
      return { id, kind: 'counterbore', at, diameter, side: one.side, depth };
  }
}

const size = fc.record({
  length: fc.oneof(tenths(5, 60), tenths(60, 1600), tenths(1600, 5000)),
  width: fc.oneof(tenths(5, 40), tenths(40, 300), tenths(300, 1250)),
  thickness: tenths(3, 40),
});

type Edged = 'trim' | 'mitre' | 'taper' | 'roundover' | 'rounded-corner';

const edgedKinds = fc.subarray<Edged>(['trim', 'mitre', 'taper', 'roundover', 'rounded-corner']);

type EdgeStyle = {
  readonly edge: 'left' | 'right' | 'bottom' | 'top';
  readonly side: 'face' | 'back';
  readonly degrees: number;
  readonly corner: 'left-bottom' | 'right-bottom' | 'right-top' | 'left-top';
};

const edgeStyle: fc.Arbitrary<EdgeStyle> = fc.record({
  edge: fc.constantFrom('left', 'right', 'bottom', 'top'),
  side: fc.constantFrom('face', 'back'),
  degrees: fc.constantFrom(5, 15, 22.5, 45, 60, 75, 89.5, 90),
  corner: fc.constantFrom('left-bottom', 'right-bottom', 'right-top', 'left-top'),
});

/** What is done to a part's edges, each kind once. */
function edgeFeature(kind: Edged, { length, width, thickness }: Part['blank'], style: EdgeStyle): Feature {
  const { edge, side, degrees, corner } = style;
  const small = Math.min(length, width, thickness) / 6;
  switch (kind) {
    case 'trim':
      return { id: kind, kind, edge: 'top', by: small };
    case 'mitre':
      return { id: kind, kind, edge, angle: (degrees * Math.PI) / 180, long: side };
    case 'taper':
      return { id: kind, kind, edge: 'top', from: [length * 0.7, width], to: [length, width * 0.9] };
    case 'roundover':
      return { id: kind, kind, edge, side, radius: small };
    case 'rounded-corner':
      return { id: kind, kind, corner, radius: small };
  }
}

const label = fc.constantFrom(
  'S1',
  'X12',
  'a label of forty letters, counted exactly',
  '橋の下の箱と長い名前',
  'תווית ארוכה מאוד',
  '',
);

/** Parts of 5 mm to 5 m with up to 60 features of every kind. */
export const anyPart: fc.Arbitrary<Part> = fc
  .record({
    size,
    draws: fc.oneof(fc.array(draw, { maxLength: 6 }), fc.array(draw, { minLength: 20, maxLength: 60 })),
    label,
    ends: fc.boolean(),
    edges: edgedKinds,
    style: edgeStyle,
    alike: fc.boolean(),
  })
  .map(({ size: { length, width, thickness }, draws: asked, label: words, ends, edges, style, alike }) => {
    const draws = asked.slice(0, Math.floor(length / 10));
    const blank = { length, width, thickness, grain: 'length' } as const;
    const edge = ends ? Math.min(thickness, length / 10) : 0;
    const pitch = (length - 2 * edge) / Math.max(1, draws.length);
    const features = draws.map((one, i): Feature => {
      const cell = { from: edge + pitch * i, to: edge + pitch * (i + 1) };
      return featureIn(alike ? (draws[0] ?? one) : one, cell, blank, `f${i + 1}`);
    });
    const rabbets: readonly Feature[] = ends
      ? [
          {
            id: 'left',
            kind: 'rabbet',
            side: 'back',
            patch: { x0: 0, x1: edge, y0: 0, y1: width },
            depth: thickness / 3,
            corner: 0,
          },
          {
            id: 'right',
            kind: 'rabbet',
            side: 'back',
            patch: { x0: length - edge, x1: length, y0: 0, y1: width },
            depth: thickness / 3,
            corner: 0,
          },
        ]
      : [];
    return {
      id: 'piece',
      label: words,
      role: 'strut',
      chapter: 'benchwork',
      bench: 'table',
      stock: 'birch-ply-18',
      blank,
      features: [...rabbets, ...features, ...edges.map((kind) => edgeFeature(kind, blank, style))],
      places: [
        {
          id: 'piece',
          label: words,
          pose: { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] },
          marks: draws.slice(0, 12).map((_, i) => ({
            text: `M${i + 1}`,
            side: 'face' as const,
            at: [pitch * (i + 0.5), width / 2] as const,
            kind: 'mate' as const,
          })),
        },
      ],
      cutAfterMeasuring: false,
      phase: 'now',
    };
  });

/** Tables a builder might ask for. */
export const anyGrid: fc.Arbitrary<GridAsk> = fc.record({
  length: tenths(400, 3200),
  width: tenths(300, 1220),
  side: tenths(110, 220),
  strut: tenths(50, 105),
  thickness: tenths(8, 24),
  across: fc.integer({ min: 1, max: 9 }),
});

export const anyTitle = fc.constantFrom(
  'Bittern Basin',
  'A notebook whose title goes on and on and does not end where it should',
  '湿原の駅と長い題名',
  'חוברת של שולחן נוסע',
  '',
);
