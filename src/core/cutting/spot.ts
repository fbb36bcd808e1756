import type { Area } from './job.ts';
import { type Pass, pass } from './pass.ts';
import { exact } from './tick.ts';

type Spots = { readonly spots: readonly Area[]; readonly kerf: number };

/** The pieces round the spots that can't be used, and the cuts that free them, in order. */
export type Cleared = { readonly areas: readonly Area[]; readonly cuts: readonly Pass[] };

/**
 * Cuts the first spot free of an area and goes on with what is left of it. Of the two ways (rip or crosscut first) the
 * one that leaves the largest single piece is taken. Kerfs lie inside the spot, which is taken two kerfs wide at least.
 */
export function clearSpots(area: Area, todo: Spots): Cleared {
  const [spot, ...others] = todo.spots.map((s) => within(area, s, todo.kerf)).filter((s) => s !== null);
  if (spot === undefined) return { areas: [area], cuts: [] };
  const ripped = clearOne(area, { spot, kerf: todo.kerf, order: ['length', 'width'] });
  const crosscut = clearOne(area, { spot, kerf: todo.kerf, order: ['width', 'length'] });
  const way = largest(crosscut) > largest(ripped) ? crosscut : ripped;
  const rest = way.areas.map((left) => clearSpots(left, { ...todo, spots: others }));
  return { areas: rest.flatMap((r) => r.areas), cuts: [...way.cuts, ...rest.flatMap((r) => r.cuts)] };
}

function largest(way: Cleared): number {
  return Math.max(0, ...way.areas.map((a) => a.length * a.width));
}

/** The spot inside the area, grown to two kerfs; null when it lies outside. */
function within(area: Area, spot: Area, kerf: number): Area | null {
  const [x, length] = overlap([spot.x, spot.length], [area.x, area.length], kerf);
  const [y, width] = overlap([spot.y, spot.width], [area.y, area.width], kerf);
  return length > 0 && width > 0 ? { x, y, length, width } : null;
}

type Span = readonly [from: number, size: number];

function overlap([from, size]: Span, [low, room]: Span, kerf: number): Span {
  const grow = Math.max(0, 2 * kerf - size) / 2;
  const start = exact(Math.max(low, from - grow));
  return [start, exact(Math.min(low + room, from + size + grow) - start)];
}

type Way = { readonly spot: Area; readonly kerf: number; readonly order: readonly ('length' | 'width')[] };

function clearOne(area: Area, way: Way): Cleared {
  const areas: Area[] = [];
  const cuts: Pass[] = [];
  let middle = area;
  for (const along of way.order) {
    const ripped = along === 'length';
    const kind = ripped ? 'rip' : 'crosscut';
    const [from, size] = ripped ? [way.spot.y, way.spot.width] : [way.spot.x, way.spot.length];
    const [low, high] = ripped ? [area.y, area.y + area.width] : [area.x, area.x + area.length];
    if (from > low) {
      const cut = pass(middle, { kind, along, at: from, kerf: way.kerf });
      cuts.push(cut);
      areas.push(...cut.yields.slice(0, 1));
      middle = cut.yields[1] ?? cut.kerf;
    }
    if (exact(from + size) < exact(high)) {
      const cut = pass(middle, { kind, along, at: exact(from + size - way.kerf), kerf: way.kerf });
      cuts.push(cut);
      areas.push(...cut.yields.slice(-1));
      middle = cut.yields.length > 1 ? (cut.yields[0] ?? cut.kerf) : cut.kerf;
    }
  }
  return { areas, cuts };
}
