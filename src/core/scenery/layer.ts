import { grown } from '../geometry/offset.ts';
import type { Point } from '../geometry/shapes.ts';
import { clipped, deepInside, regionArea } from './clip.ts';
import { chord } from './distance.ts';
import type { Grid } from './grid.ts';
import type { Region } from './land.ts';
import { regionAbove } from './region.ts';
import { simplifiedRegion } from './simplified.ts';
import type { LayerRoom } from './tunnel-room.ts';
import { highestGround } from './volume.ts';

/** A mark that two layers share, so that they are stacked as drawn; notebook coordinates, mm. */
export type RegisterMark = { readonly id: string; readonly at: Point; readonly between: readonly [number, number] };

/** One thickness of foam; heights from deck top, regions in notebook coordinates. mm. */
export type Layer = {
  readonly id: string;
  /** from the bottom, 1 first */
  readonly number: number;
  readonly from: number;
  readonly to: number;
  /** the template: the largest outline of the ground within this layer, the hollow taken out */
  readonly template: Region;
  /** what tunnels take out of it */
  readonly room: readonly LayerRoom[];
  /** where its top edge is carved to */
  readonly carveTo: Region;
  readonly marks: readonly RegisterMark[];
};

/** Ground thinner than this is plaster, not foam; mm. */
const FEATHER = 0.01;

/** A template is cut by hand or hot wire; its corners may lie this far off, mm. */
const BY_HAND = 0.1;

export type LayerAsk = {
  readonly grid: Grid;
  readonly thickness: number;
  readonly hollow: number | null;
  /** outlines the land lies on, and outlines it keeps out of */
  readonly within: readonly (readonly Point[])[];
  readonly without: readonly (readonly Point[])[];
  /** what tunnels take out of the layer between two heights */
  readonly room: (slice: { readonly from: number; readonly to: number }) => readonly LayerRoom[];
};

/** The layers of foam that hold the ground, bottom first; each template is carved down to the outline above it. */
export function foamLayers(ask: LayerAsk): readonly Layer[] {
  const { grid, thickness } = ask;
  const count = Math.ceil((highestGround(grid) - FEATHER) / thickness - 1e-9);
  const outlines = Array.from({ length: Math.max(0, count) + 1 }, (_, i) =>
    landAbove(ask, Math.max(FEATHER, i * thickness)),
  );
  const kept = outlines.filter((region) => regionArea(region) > 0).length;
  const rooms = outlines.map((_, i) => ask.room({ from: i * thickness, to: (i + 1) * thickness }));
  const bothRooms = (i: number) => [...(rooms[i] ?? []), ...(rooms[i - 1] ?? [])];
  const pinned = (i: number) => bored(outlines[i] ?? [], bothRooms(i).map(widened));
  return outlines.slice(0, kept).map((outline, i): Layer => {
    const above = bored(outlines[i + 1] ?? [], bothRooms(i + 1));
    const template = bored(hollowed(outline, outlines[i + 1] ?? [], ask.hollow), rooms[i] ?? []);
    return {
      id: `layer.${i + 1}`,
      number: i + 1,
      from: i * thickness,
      to: (i + 1) * thickness,
      template,
      room: rooms[i] ?? [],
      carveTo: above,
      marks: [
        ...registerMarks(pinned(i), { number: i, hollow: ask.hollow }),
        ...registerMarks(pinned(i + 1), { number: i + 1, hollow: ask.hollow }),
      ],
    };
  });
}

/** Pins keep this far from a tunnel, mm. */
const PIN_WALL = 10;

function widened(room: LayerRoom): LayerRoom {
  return { ...room, loop: grown([room.loop], PIN_WALL)[0]?.outline ?? room.loop };
}

/** A region less what tunnels take all of. */
function bored(region: Region, room: readonly LayerRoom[]): Region {
  const cutters = room.filter(({ takes }) => takes === 'all').map(({ loop }) => loop);
  return cutters.length === 0 ? region : region.flatMap((piece) => clipped([piece], piece.outline, cutters));
}

function landAbove({ grid, within, without }: LayerAsk, level: number): Region {
  const region = regionAbove(grid, level);
  return simplifiedRegion(
    within.flatMap((loop) => clipped(region, loop, without)),
    BY_HAND,
  );
}

/** A hollow layer keeps a wall as wide as asked under the edge of the layer above, which closes it. */
function hollowed(outline: Region, above: Region, hollow: number | null): Region {
  if (hollow === null || above.length === 0) return outline;
  const room = deepInside(above, hollow).map((piece) => piece.outline);
  if (room.length === 0) return outline;
  return outline.flatMap((piece) => clipped([piece], piece.outline, room));
}

type Between = { readonly number: number; readonly hollow: number | null };

/** Two marks in each piece of the upper of two layers, on the line through its middle; none under the lowest. */
function registerMarks(upper: Region, { number, hollow }: Between): readonly RegisterMark[] {
  if (number < 1) return [];
  return upper.flatMap(({ outline }, piece) =>
    pair(outline, { hollow, share: number % 2 === 1 ? 0.2 : 0.35 }).map((at, i) => ({
      id: `${number}${number + 1}${String.fromCharCode(97 + piece * 2 + i)}`,
      at,
      between: [number, number + 1] as const,
    })),
  );
}

/** A piece narrower than this takes one pin, mm. */
const ONE_PIN = 30;

type Pinning = { readonly hollow: number | null; readonly share: number };

/** Pins of one joint stand farther out than those of the next, so that they don't meet. */
function pair(outline: readonly Point[], { hollow, share }: Pinning): readonly Point[] {
  const ys = outline.map(([, y]) => y);
  const y = (Math.min(...ys) + Math.max(...ys)) / 2;
  const crossings = chord(outline, y);
  const [from, to] = [crossings[0], crossings[crossings.length - 1]];
  if (from === undefined || to === undefined) return [];
  const end = crossings[1] ?? to;
  const start = crossings[crossings.length - 2] ?? from;
  if (to - from < ONE_PIN) return [[(from + end) / 2, y]];
  if (hollow !== null)
    return [
      [from + hollow / 2, y],
      [to - hollow / 2, y],
    ];
  return crossings.length === 2
    ? [
        [from + (to - from) * share, y],
        [to - (to - from) * share, y],
      ]
    : [
        [(from + end) / 2, y],
        [(start + to) / 2, y],
      ];
}
