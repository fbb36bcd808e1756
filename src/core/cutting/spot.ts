import type { Area } from './job.ts';
import { type Pass, pass } from './pass.ts';
import { exact, SLIVER } from './tick.ts';

/** `worth` says how useful a set of pieces is; the way with the more useful pieces is taken. */
type Spots = {
  readonly spots: readonly Area[];
  readonly kerf: number;
  readonly worth: (areas: readonly Area[]) => number;
};

/** The pieces round the spots that can't be used, and the cuts that free them, in order. */
export type Cleared = { readonly areas: readonly Area[]; readonly cuts: readonly Pass[] };

/**
 * Cuts the first spot free of an area and goes on with what is left of it. Of the two ways (rip or crosscut first) the
 * one that leaves the more useful pieces is taken, of equal ones that with the largest single piece. Kerfs lie inside the spot, which is taken two kerfs wide at least.
 */
export function clearSpots(area: Area, todo: Spots): Cleared {
  const [spot, ...others] = todo.spots.map((s) => within(area, s, todo.kerf)).filter((s) => s !== null);
  if (spot === undefined) return { areas: [area], cuts: [] };
  const ripped = clearOne(area, { spot, kerf: todo.kerf, order: ['length', 'width'] });
  const crosscut = clearOne(area, { spot, kerf: todo.kerf, order: ['width', 'length'] });
  const [a, b] = [todo.worth(ripped.areas), todo.worth(crosscut.areas)];
  const way = b > a || (b === a && largest(crosscut) > largest(ripped)) ? crosscut : ripped;
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
  let middle: Area | null = area;
  for (const along of way.order) {
    for (const side of ['near', 'far'] as const) {
      const cut: Pass | null = middle === null ? null : beside(middle, { ...way, along, side });
      if (cut === null) continue;
      cuts.push(cut);
      const made: readonly Area[] = cut.yields;
      const one = made[0];
      const two = made[1];
      const free = side === 'near' ? one : (two ?? one);
      if (free !== undefined) areas.push(free);
      middle = two === undefined ? null : side === 'near' ? two : (one ?? null);
    }
  }
  return { areas, cuts };
}

type Side = Way & { readonly along: 'length' | 'width'; readonly side: 'near' | 'far' };

/** The cut along one side of the spot, its kerf inside it; null when the spot reaches the piece's edge. */
function beside(piece: Area, { spot, kerf, along, side }: Side): Pass | null {
  const ripped = along === 'length';
  const [from, size] = ripped ? [spot.y, spot.width] : [spot.x, spot.length];
  const [low, room] = ripped ? [piece.y, piece.width] : [piece.x, piece.length];
  const gap = side === 'near' ? from - low : low + room - (from + size);
  const at = exact(side === 'near' ? from : from + size - kerf);
  return gap <= SLIVER ? null : pass(piece, { kind: ripped ? 'rip' : 'crosscut', along, at, kerf });
}
