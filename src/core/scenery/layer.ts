import type { Point } from '../geometry/shapes.ts';
import { clipped, deepInside, regionArea } from './clip.ts';
import type { Field } from './field.ts';
import type { Grid } from './grid.ts';
import type { Region } from './land.ts';
import { refinedRegion } from './refined.ts';
import { regionAbove } from './region.ts';
import { simplifiedRegion } from './simplified.ts';
import type { LayerRoom } from './tunnel-room.ts';
import { highestGround } from './volume.ts';

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
};

/** Ground thinner than this is plaster, not foam; mm. */
const FEATHER = 0.01;

/** A template is cut by hand or hot wire; its corners may lie this far off, mm. */
const BY_HAND = 0.1;

export type LayerAsk = {
  readonly grid: Grid;
  /** the ground the grid was taken from; null where the grid alone is known */
  readonly field: Field | null;
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
  return outlines.slice(0, kept).map((outline, i): Layer => {
    const above = bored(outlines[i + 1] ?? [], [...(rooms[i + 1] ?? []), ...(rooms[i] ?? [])]);
    const template = bored(hollowed(outline, outlines[i + 1] ?? [], ask.hollow), rooms[i] ?? []);
    return {
      id: `layer.${i + 1}`,
      number: i + 1,
      from: i * thickness,
      to: (i + 1) * thickness,
      template,
      room: rooms[i] ?? [],
      carveTo: above,
    };
  });
}

/** A region less what tunnels take all of. */
function bored(region: Region, room: readonly LayerRoom[]): Region {
  const cutters = room.filter(({ takes }) => takes === 'all').map(({ loop }) => loop);
  return cutters.length === 0 ? region : region.flatMap((piece) => clipped([piece], piece.outline, cutters));
}

function landAbove({ grid, field, within, without }: LayerAsk, level: number): Region {
  const found = regionAbove(grid, level);
  const region = field === null ? found : refinedRegion(found, { grid, field, level });
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
