import type { Point } from '../geometry/shapes.ts';
import type { SheetStock } from '../stock/goods.ts';
import type { AreaMass, Part } from '../stock/part.ts';
import { clipped, regionArea } from './clip.ts';
import type { Field } from './field.ts';
import type { Grid } from './grid.ts';
import type { Land } from './land.ts';
import { foamLayers, type Layer, type LayerAsk } from './layer.ts';
import { layerParts, withPins } from './layer-parts.ts';
import { cellsWithin, type Mask } from './mask.ts';
import type { BuiltLayer, FoamVolumes } from './model.ts';
import { registerMarks } from './register-pins.ts';
import type { Site } from './site.ts';
import { type Tunnels, tunnelRoom } from './tunnel-room.ts';
import { volumeBetween } from './volume.ts';

export type FoamAsk = {
  readonly grid: Grid;
  readonly field: Field;
  readonly land: Pick<Land, 'foam' | 'hollow'>;
  readonly sites: readonly Site[];
  /** cells that are land */
  readonly mask: Mask;
  readonly without: readonly (readonly Point[])[];
  readonly tunnels: Tunnels;
};

/** The layers of foam with their pieces as parts; none where no foam is named. */
export function builtLayers({ grid, field, land, sites, mask, without, tunnels }: FoamAsk): {
  readonly layers: readonly BuiltLayer[];
  readonly parts: readonly Part[];
} {
  const { foam, hollow } = land;
  if (foam === null) return { layers: [], parts: [] };
  const thickness = foam.thickness.listed;
  const within = sites.map(({ loop }) => loop);
  const room: LayerAsk['room'] = (slice) => tunnelRoom(tunnels, slice);
  const layers = foamLayers({ grid, field, thickness, hollow, within, without, room });
  const built = layers.map((layer) => ({ layer, ...layerParts(layer, foam, sites) }));
  const marks = registerMarks(built);
  return {
    parts: built.flatMap(({ parts }) => parts.map((part) => withPins(part, { marks, sites }))),
    layers: built.map(({ layer, pieces, joints }) => {
      const area = regionArea(layer.template);
      const ground = volumeBetween(grid, layer, unbored(grid, mask, layer)) - partlyBored(layer);
      return {
        ...layer,
        pieces,
        joints,
        marks: marks.filter(({ between }) => between.includes(layer.number)),
        area,
        left: Math.min(area * thickness, Math.max(0, ground - hollowVolume(layer, thickness))),
      };
    }),
  };
}

/** The cells of a layer that no tunnel takes all of. */
function unbored(grid: Grid, mask: Mask, { room }: Layer): Mask {
  const loops = room.filter(({ takes }) => takes === 'all').map(({ loop }) => loop);
  if (loops.length === 0) return mask;
  const bored = cellsWithin(grid, loops);
  return mask.map((cell, i) => (bored[i] === 1 ? 0 : cell));
}

/** What tunnels take off a layer's top and underside, by each place's deepest; mm3. */
function partlyBored({ room, template }: Layer): number {
  return room
    .filter(({ takes }) => takes !== 'all')
    .reduce((sum, { loop, deep }) => sum + regionArea(clipped(template, loop)) * deep, 0);
}

/** What is left out of a hollow layer: its outline less its template. */
function hollowVolume({ template }: Layer, thickness: number): number {
  const full = template.reduce((sum, { outline }) => sum + regionArea([{ outline, holes: [] }]), 0);
  return Math.max(0, full - regionArea(template)) * thickness;
}

/** Foam as cut, as carved off and as left; mm3. */
export function foamVolumes(layers: readonly BuiltLayer[]): FoamVolumes {
  const cut = layers.reduce((sum, { area, from, to }) => sum + area * (to - from), 0);
  const left = layers.reduce((sum, one) => sum + one.left, 0);
  return { bought: null, cut, carved: cut - left, left };
}

/** What the foam weighs where it lies: each layer's own volume over its outlines, kg/m2. */
export function foamMasses(layers: readonly BuiltLayer[], foam: SheetStock | null): readonly AreaMass[] {
  if (foam === null) return [];
  return layers.flatMap(({ id, template, area, left }) =>
    template.map(({ outline }): AreaMass => {
      const share = area === 0 ? 0 : left / area;
      const solid =
        regionArea(template) /
        Math.max(
          1e-9,
          template.reduce((sum, one) => sum + regionArea([{ ...one, holes: [] }]), 0),
        );
      return { of: id, outline, perSquareMetre: share * solid * 1e-3 * foam.density };
    }),
  );
}
