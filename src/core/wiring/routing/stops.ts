import { bounds } from '../../geometry/polygon.ts';
import type { Point } from '../../geometry/shapes.ts';
import { distance } from '../../geometry/straight.ts';
import { type Bay, nearestBay } from './bays.ts';
import type { Lattice } from './lattice.ts';

/** Something under the deck that a bus has to come near: where its wires come down. */
export type Drop = { readonly id: string; readonly at: Point };

/** A place the bus passes so that drops of one bay are within reach of it. */
export type Stop = { readonly bay: Bay; readonly at: Point; readonly drops: readonly string[] };

/** Stops that bring every drop within `span` of the bus, bay by bay; drops near each other share one. */
export function stopsFor(drops: readonly Drop[], bays: readonly Bay[], span: number): readonly Stop[] {
  const placed = drops.flatMap((drop) => {
    const near = nearestBay(bays, drop.at);
    return near === null ? [] : [{ id: drop.id, bay: near.bay, at: near.point }];
  });
  return bays.flatMap((bay) => {
    let left = placed.filter((one) => one.bay === bay);
    const stops: Stop[] = [];
    for (let first = left[0]; first !== undefined; first = left[0]) {
      const group = sharing(left, span);
      stops.push({ bay, at: middle(group.map(({ at }) => at)), drops: group.map(({ id }) => id) });
      left = left.filter((one) => !group.includes(one));
    }
    return stops;
  });
}

/** The first drop with all that can share a stop with it. */
function sharing<T extends { readonly at: Point }>(left: readonly T[], span: number): readonly T[] {
  const group: T[] = [];
  for (const one of left) {
    const centre = middle([...group, one].map(({ at }) => at));
    if ([...group, one].every(({ at }) => distance(at, centre) <= span)) group.push(one);
  }
  // the first is always alone with itself; without room for even that it still needs a stop
  return group.length === 0 ? left.slice(0, 1) : group;
}

function middle(points: readonly Point[]): Point {
  const { low, high } = bounds(points);
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
}

/** The lattice's place nearest to a point, within its bay; null where that has none. */
export function placeNear({ places }: Lattice, bay: Bay, at: Point): number | null {
  let best: number | null = null;
  places.forEach(([x, y], i) => {
    if (x < bay.x[0] || x > bay.x[1] || y < bay.y[0] || y > bay.y[1]) return;
    const here = places[best ?? -1];
    if (here === undefined || distance([x, y], at) < distance(here, at) - 1e-9) best = i;
  });
  return best;
}
