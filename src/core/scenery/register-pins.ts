import { intersection } from '../geometry/booleans.ts';
import { grown } from '../geometry/offset.ts';
import { area, centroid, holds } from '../geometry/polygon.ts';
import type { Point, Polygon } from '../geometry/shapes.ts';
import { clipped, deepInside } from './clip.ts';
import type { Region } from './land.ts';
import type { Layer } from './layer.ts';
import type { LayerPiece } from './layer-parts.ts';
import type { RegisterMark } from './register-mark.ts';

export type PiecedLayer = { readonly layer: Layer; readonly pieces: readonly LayerPiece[] };

/** Foam kept round a pin: as much as there is of these, the last the least that holds; mm. */
const INSETS = [40, 25, 15, 8] as const;

/** Pins keep this far from a tunnel, and from a pin of the joint below; mm. */
const PIN_WALL = 10;

/** Two pins nearer than this don't keep a piece from turning, mm. */
const APART = 30;

/**
 * Pins in solid foam of both pieces, two wherever one piece lies on another with room for them; a piece of the lowest
 * layer that nothing lies on has two into the deck.
 */
export function registerMarks(layers: readonly PiecedLayer[]): readonly RegisterMark[] {
  const marks: RegisterMark[] = [];
  layers.forEach((upper, i) => {
    const lower = layers[i - 1];
    if (lower !== undefined) marks.push(...jointPins({ lower, upper }, marks));
  });
  const [lowest] = layers;
  return lowest === undefined ? marks : [...deckPins(lowest, marks), ...marks];
}

type Stack = { readonly lower: PiecedLayer; readonly upper: PiecedLayer };

/** The pins between two layers, pair of pieces by pair of pieces. */
function jointPins({ lower, upper }: Stack, below: readonly RegisterMark[]): readonly RegisterMark[] {
  const taken = below.map(({ at }) => at);
  const between = [lower.layer.number, upper.layer.number] as const;
  const found = upper.pieces.flatMap((high) =>
    lower.pieces.flatMap((low) => {
      const shared = intersection([low.shape.outline], [high.shape.outline]).map(({ outline }) => outline);
      const cutters = [...low.shape.holes, ...high.shape.holes, ...keptClear([lower.layer, upper.layer])];
      const solid = shared.flatMap((loop) => clipped([{ outline: loop, holes: [] }], loop, cutters));
      return pinsIn(solid, taken).map((at) => ({ at, parts: [low.part, high.part] }));
    }),
  );
  return lettered(found, between);
}

function deckPins({ layer, pieces }: PiecedLayer, marks: readonly RegisterMark[]): readonly RegisterMark[] {
  const bare = pieces.filter(({ part }) => marks.filter(({ parts }) => parts.includes(part)).length < 2);
  const between = [0, layer.number] as const;
  const taken = marks.map(({ at }) => at);
  const found = bare.flatMap(({ part, shape }) =>
    pinsIn(clipped([shape], shape.outline, keptClear([layer])), taken).map((at) => ({ at, parts: [part] })),
  );
  return lettered(found, between);
}

/** Pins of one joint with their names. */
function lettered(
  found: readonly Pick<RegisterMark, 'at' | 'parts'>[],
  between: RegisterMark['between'],
): readonly RegisterMark[] {
  return found.map(({ at, parts }, i) => ({ id: `${between.join('')}${letters(i)}`, at, between, parts }));
}

/** What tunnels take of these layers, with foam round it. */
function keptClear(layers: readonly Layer[]): readonly (readonly Point[])[] {
  const loops = layers.flatMap(({ room }) => room.map(({ loop }) => loop));
  return loops.map((loop) => grown([loop], PIN_WALL)[0]?.outline ?? loop);
}

/** Two places far apart and deep in a region; one in a region with no room for two, none in one with no room at all. */
export function pinsIn(region: Region, taken: readonly Point[]): readonly Point[] {
  for (const inset of INSETS) {
    const spots = deepInside(region, inset).flatMap(({ outline }) => outline);
    const clear = spots.filter((spot) => taken.every((other) => gap(spot, other) >= PIN_WALL));
    const pair = farthestPair(clear);
    if (pair !== null && gap(...pair) >= APART) return pair;
  }
  return single(deepInside(region, INSETS[3]));
}

function single(deep: readonly Polygon[]): readonly Point[] {
  const largest = deep.reduce<Polygon | null>(
    (best, one) => (best === null || area(one) > area(best) ? one : best),
    null,
  );
  if (largest === null) return [];
  const middle = centroid(largest);
  return middle !== null && holds(largest, middle) ? [middle] : largest.outline.slice(0, 1);
}

function farthestPair(spots: readonly Point[]): readonly [Point, Point] | null {
  let best: readonly [Point, Point] | null = null;
  let most = 0;
  for (const [i, a] of spots.entries()) {
    for (const b of spots.slice(i + 1)) {
      const far = gap(a, b);
      if (far > most + 1e-6) [best, most] = [a[0] <= b[0] ? [a, b] : [b, a], far];
    }
  }
  return best;
}

function gap(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** a to z, then aa and on. */
function letters(i: number): string {
  const last = String.fromCharCode(97 + (i % 26));
  return i < 26 ? last : `${letters(Math.floor(i / 26) - 1)}${last}`;
}
