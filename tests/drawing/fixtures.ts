import type { CutSheet } from '../../src/core/cutting/job.ts';
import type { Pose } from '../../src/core/geometry/shapes.ts';
import type { Feature, Joint, Part, Patch } from '../../src/core/stock/part.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';

/** A lapped grid of two sides, two ends, one strut along and `across` struts, made by hand for the drawing tests. */
export type GridAsk = {
  readonly length: number;
  readonly width: number;
  readonly side: number;
  readonly strut: number;
  readonly thickness: number;
  readonly across: number;
};

export const bitternAsk: GridAsk = { length: 1600, width: 1100, side: 170, strut: 135, thickness: 17.7, across: 3 };

const deckTop = 700;
const deckThickness = 9.2;
const clearance = 0.3;

const dadoDepth = (t: number) => Math.round((t / 3) * 10) / 10;

type PieceAsk = {
  readonly id: string;
  readonly label: string;
  readonly role: string;
  readonly size: readonly [number, number, number];
  readonly features: readonly Feature[];
  readonly places: readonly { readonly id: string; readonly label: string; readonly pose: Pose }[];
};

function piece({ id, label, role, size: [length, width, thickness], features, places }: PieceAsk): Part {
  return {
    id,
    label,
    role,
    chapter: 'benchwork',
    bench: 'table',
    stock: role === 'deck' ? 'birch-ply-9' : 'birch-ply-18',
    blank: { length, width, thickness, grain: 'length' },
    features,
    places: places.map((place) => ({
      ...place,
      marks: [
        { text: 'up', side: 'face', at: [20, width / 2], kind: 'up' },
        { text: 'L', side: 'face', at: [8, width / 2], kind: 'end' },
      ],
    })),
    cutAfterMeasuring: false,
    phase: 'now',
  };
}

function dado(id: string, patch: Patch, depth: number): Feature {
  return { id, kind: 'stopped-dado', side: 'back', patch, depth, corner: 0 };
}

function rabbet(id: string, patch: Patch, depth: number): Feature {
  return { id, kind: 'rabbet', side: 'back', patch, depth, corner: 0 };
}

function slot(id: string, edge: 'top' | 'bottom', patch: Patch): Feature {
  return { id, kind: 'notch', edge, patch, corner: 0 };
}

function centres({ length, across }: GridAsk): readonly number[] {
  return Array.from({ length: across }, (_, i) => Math.round(((length * (i + 1)) / (across + 1)) * 10) / 10);
}

const up = [0, 0, 1] as const;

function sides(ask: GridAsk): readonly Part[] {
  const { length, width, side, strut, thickness: t } = ask;
  const half = (t + clearance) / 2;
  const z = deckTop - deckThickness - side;
  const depth = dadoDepth(t);
  const poses: readonly [string, string, Pose][] = [
    ['front', 'S1', { origin: [0, t, z], x: [1, 0, 0], y: up, z: [0, -1, 0] }],
    ['back', 'S2', { origin: [length, width - t, z], x: [-1, 0, 0], y: up, z: [0, 1, 0] }],
  ];
  return poses.map(([name, label, pose]) =>
    piece({
      id: `side.${name}`,
      label,
      role: 'side',
      size: [length, side, t],
      features: [
        rabbet('rabbet-left', { x0: 0, x1: t, y0: 0, y1: side }, depth),
        ...centres(ask).map((c, i) =>
          dado(`dado-${i + 1}`, { x0: c - half, x1: c + half, y0: side - strut, y1: side }, depth),
        ),
        rabbet('rabbet-right', { x0: length - t, x1: length, y0: 0, y1: side }, depth),
      ],
      places: [{ id: `side.${name}`, label, pose }],
    }),
  );
}

function ends(ask: GridAsk): readonly Part[] {
  const { length, width, side, strut, thickness: t } = ask;
  const depth = dadoDepth(t);
  const inset = t - depth;
  const long = width - 2 * inset;
  const half = (t + clearance) / 2;
  const z = deckTop - deckThickness - side;
  const pose = (x: number): Pose =>
    x === 0
      ? { origin: [t, width - inset, z], x: [0, -1, 0], y: up, z: [-1, 0, 0] }
      : { origin: [length - t, inset, z], x: [0, 1, 0], y: up, z: [1, 0, 0] };
  return [
    piece({
      id: 'end',
      label: 'E',
      role: 'end',
      size: [long, side, t],
      features: [dado('dado-1', { x0: long / 2 - half, x1: long / 2 + half, y0: side - strut, y1: side }, depth)],
      places: [
        { id: 'end.left', label: 'E1', pose: pose(0) },
        { id: 'end.right', label: 'E2', pose: pose(length) },
      ],
    }),
  ];
}

function struts(ask: GridAsk): readonly Part[] {
  const { length, width, strut, thickness: t } = ask;
  const inset = t - dadoDepth(t);
  const half = (t + clearance) / 2;
  const z = deckTop - deckThickness - strut;
  const lap = strut / 2 + 0.4;
  const crossing = width / 2 - inset;
  return [
    piece({
      id: 'strut.across',
      label: 'X',
      role: 'strut',
      size: [width - 2 * inset, strut, t],
      features: [slot('slot-1', 'top', { x0: crossing - half, x1: crossing + half, y0: strut - lap, y1: strut })],
      places: centres(ask).map((c, i) => ({
        id: `strut.across-${i + 1}`,
        label: `X${i + 1}`,
        pose: { origin: [c - t / 2, inset, z], x: [0, 1, 0], y: up, z: [1, 0, 0] },
      })),
    }),
    piece({
      id: 'strut.along',
      label: 'A',
      role: 'strut',
      size: [length - 2 * inset, strut, t],
      features: centres(ask).map((c, i) =>
        slot(`slot-${i + 1}`, 'bottom', { x0: c - inset - half, x1: c - inset + half, y0: 0, y1: lap }),
      ),
      places: [
        {
          id: 'strut.along-1',
          label: 'A1',
          pose: { origin: [inset, width / 2 + t / 2, z], x: [1, 0, 0], y: up, z: [0, -1, 0] },
        },
      ],
    }),
  ];
}

function decks(ask: GridAsk): readonly Part[] {
  const seam = centres(ask).at(-1) ?? ask.length / 2;
  const deck = (name: string, label: string, from: number, to: number): Part =>
    piece({
      id: `deck.${name}`,
      label,
      role: 'deck',
      size: [to - from, ask.width + 3, deckThickness],
      features: [],
      places: [
        {
          id: `deck.${name}`,
          label,
          pose: { origin: [from, 0, deckTop - deckThickness], x: [1, 0, 0], y: [0, 1, 0], z: up },
        },
      ],
    });
  return [deck('left', 'D1', 0, seam), deck('right', 'D2', seam, ask.length + 3)];
}

function gridJoints(ask: GridAsk): readonly Joint[] {
  return centres(ask).flatMap((_, i): readonly Joint[] => [
    {
      id: `lap.${i + 1}`,
      kind: 'lap',
      between: [`strut.across-${i + 1}`, 'strut.along-1'],
      clearance,
      relief: 0.4,
      held: 'glue',
    },
    {
      id: `dado.front-${i + 1}`,
      kind: 'dado',
      between: ['side.front', `strut.across-${i + 1}`],
      clearance,
      relief: 0,
      held: 'glue',
    },
  ]);
}

export const cutSheet: CutSheet = {
  stock: 'birch-ply-18',
  length: 2440,
  width: 1220,
  kerf: 2.4,
  parts: [
    { part: 'side.front', x: 10, y: 10, length: 1600, width: 170, turned: false },
    { part: 'side.back', x: 10, y: 182.4, length: 1600, width: 170, turned: false },
    { part: 'end', x: 10, y: 354.8, length: 1076.4, width: 170, turned: false },
    { part: 'strut.across', x: 10, y: 527.2, length: 1076.4, width: 135, turned: false },
  ],
  cuts: [
    {
      number: 1,
      kind: 'trim',
      stage: 0,
      cautions: [],
      from: { x: 0, y: 0, length: 2440, width: 1220 },
      setting: 7.6,
      kerf: { x: 0, y: 7.6, length: 2440, width: 2.4 },
      yields: [{ x: 0, y: 10, length: 2440, width: 1210 }],
    },
    {
      number: 2,
      kind: 'rip',
      stage: 0,
      cautions: [],
      from: { x: 0, y: 10, length: 2440, width: 1210 },
      setting: 170,
      kerf: { x: 0, y: 180, length: 2440, width: 2.4 },
      yields: [
        { x: 0, y: 10, length: 2440, width: 170 },
        { x: 0, y: 182.4, length: 2440, width: 1037.6 },
      ],
    },
    {
      number: 3,
      kind: 'crosscut',
      stage: 0,
      cautions: [],
      from: { x: 0, y: 10, length: 2440, width: 170 },
      setting: 1600,
      kerf: { x: 1610, y: 10, length: 2.4, width: 170 },
      yields: [
        { x: 10, y: 10, length: 1600, width: 170 },
        { x: 1612.4, y: 10, length: 827.6, width: 170 },
      ],
    },
  ],
  offcuts: [{ x: 10, y: 664.6, length: 2430, width: 555.4 }],
  waste: [
    { x: 1612.4, y: 10, length: 827.6, width: 342.4 },
    { x: 0, y: 0, length: 2440, width: 7.6 },
  ],
};

export function gridNotebook(ask: GridAsk): DrawingBook {
  const { length, width, side, strut } = ask;
  const seam = centres(ask).at(-1) ?? length / 2;
  const sideTop = deckTop - deckThickness;
  return {
    slug: 'bittern-basin',
    title: 'Bittern Basin',
    makers: ['an aunt', 'two cousins'],
    benches: [
      {
        id: 'table',
        construction: 'lapped-grid',
        place: { x: 0, y: 0, turn: 0 },
        phase: 'now',
        length,
        width,
        deckTop,
        sideTop,
        sideUnderside: sideTop - side,
        strutUnderside: sideTop - strut,
      },
    ],
    parts: [...sides(ask), ...ends(ask), ...struts(ask), ...decks(ask)],
    joints: gridJoints(ask),
    seams: [
      {
        id: 'deck.seam-1',
        bench: 'table',
        from: [seam, 0],
        to: [seam, width],
        on: `strut.across-${ask.across}`,
        bearing: [8.85, 8.85],
      },
    ],
    sheets: [cutSheet],
  };
}
