import { intersection } from '../geometry/booleans.ts';
import { grown } from '../geometry/offset.ts';
import { area, bounds, rectangle } from '../geometry/polygon.ts';
import type { Box, Point, Vector } from '../geometry/shapes.ts';
import { placedBox } from '../geometry/solid.ts';
import { cutLimits } from '../stock/cut-limits.ts';
import type { Envelope, Part, Placement, Request } from '../stock/part.ts';
import { partSolid } from '../stock/solid.ts';
import { type Site, toBench, toNotebook } from './site.ts';
import type { WaterModel } from './water.ts';

/** Something a water reaches into: an instance of a part, or space that is wanted for something else. */
export type UnderWater = {
  readonly id: string;
  readonly role: string;
  /** true when it is cut for the water; else the water cannot be there */
  readonly cut: boolean;
  /** how deep the water and its floor reach into it, mm */
  readonly deep: number;
  /** how much of the water's depth lies under its top: without so much it is clear, mm */
  readonly above: number;
};

/** A tray's walls stand outside its outline, as thick as its floor, with this much room; common practice, no source. mm. */
export const PLAY = 1;

/** Overlaps under this are touching, mm and mm2. */
const TOUCH = 1e-3;

/** An instance as it stands on its bench: its box there, and whether it stands on edge or lies flat. */
export type Standing = {
  readonly part: Part;
  readonly place: Placement;
  readonly min: Vector;
  readonly max: Vector;
  readonly lies: 'flat' | 'on-edge';
};

/** Every instance of one bench that is bought now or later. */
export function standingOn(parts: readonly Part[], bench: string): readonly Standing[] {
  return parts
    .filter((part) => part.bench === bench && part.chapter === 'benchwork')
    .flatMap((part) => {
      const solid = partSolid(part);
      return part.places.map((place): Standing => {
        const { min, max } = placedBox(solid, place.pose);
        return { part, place, min, max, lies: Math.abs(place.pose.z[2]) > 0.5 ? 'flat' : 'on-edge' };
      });
    });
}

/** The outline a tray takes under the deck, on a bench's plane. */
export function trayOutline({ outline, floor }: WaterModel, site: Site): readonly Point[] {
  const loop = outline.map((point) => toBench(site.pose, point));
  return grown([loop], floor + PLAY)[0]?.outline ?? loop;
}

/** How far a water and its floor come down into a box of its bench, and how much of them lies under the box's top. */
function reachInto({ underside }: WaterModel, { bench }: Site, { min, max }: Box): Pick<UnderWater, 'deep' | 'above'> {
  const bottom = bench.deckTop + underside;
  return { deep: max[2] - Math.max(min[2], bottom), above: max[2] - bottom };
}

/** Where a water meets an instance: their common plan's bounds on the bench, and the depth; null when it doesn't. */
export function meeting(water: WaterModel, standing: Standing, site: Site) {
  const { min, max, part } = standing;
  const reach = reachInto(water, site, standing);
  if (reach.deep <= TOUCH) return null;
  const tray =
    part.role === 'deck' ? water.outline.map((point) => toBench(site.pose, point)) : trayOutline(water, site);
  const shared = intersection([tray], [rectangle([min[0], min[1]], [max[0], max[1]])]);
  if (shared.reduce((sum, piece) => sum + area(piece), 0) <= TOUCH) return null;
  return { ...bounds(shared.flatMap(({ outline }) => outline)), ...reach };
}

/** What lies under a water on one bench, and what it asks of those parts. */
export function underWater(water: WaterModel, site: Site, parts: readonly Part[]) {
  const met = standingOn(parts, site.bench.id).flatMap((standing) => {
    const where = meeting(water, standing, site);
    return where === null ? [] : [{ standing, ...where }];
  });
  const requests = met.flatMap(({ standing, low, high, deep }): readonly Request[] => {
    const request = requestFor({ water, site, standing }, { low, high, deep });
    return request === null ? [] : [request];
  });
  const under = met.map(({ standing, deep, above }): UnderWater => {
    const id = standing.place.id;
    return { id, role: standing.part.role, cut: requests.some(({ part }) => part === id), deep, above };
  });
  return { under, requests };
}

/** Spaces on one bench, a drawer's or a motor's, that a water reaches into; bench coordinates. */
export function spacesUnder(water: WaterModel, site: Site, envelopes: readonly Envelope[]): readonly UnderWater[] {
  const tray = trayOutline(water, site);
  return envelopes.flatMap(({ id, kind, min, max }) => {
    const reach = reachInto(water, site, { min, max });
    if (reach.deep <= TOUCH || min[2] >= site.bench.deckTop) return [];
    const shared = intersection([tray], [rectangle([min[0], min[1]], [max[0], max[1]])]);
    return shared.length === 0 ? [] : [{ id, role: kind, cut: false, ...reach }];
  });
}

type Meeting = { readonly water: WaterModel; readonly site: Site; readonly standing: Standing };
type Where = { readonly low: Point; readonly high: Point; readonly deep: number };

/** Flat pieces get the water's outline cut out; struts, sides and ends a notch in their top; nothing else is cut. */
function requestFor({ water, site, standing }: Meeting, { low, high, deep }: Where): Request | null {
  const { part, place, lies, max } = standing;
  const middle = toNotebook(site.pose, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2]);
  const base = { by: water.id, part: place.id, chapter: 'scenery' } as const;
  if (lies === 'flat') {
    if (part.role !== 'deck') return null;
    const size = [high[0] - low[0], high[1] - low[1]] as const;
    return { ...base, kind: 'cut-out', at: [...middle, max[2]], size, limit: null, outline: water.outline };
  }
  if (part.role !== 'strut' && part.role !== 'side' && part.role !== 'end') return null;
  const { x } = place.pose;
  const long = Math.abs(x[0]) * (high[0] - low[0]) + Math.abs(x[1]) * (high[1] - low[1]);
  return {
    ...base,
    kind: 'notch',
    at: [...middle, max[2]],
    size: [long, deep],
    limit: cutLimits(part.blank.width).notchDepth,
  };
}
