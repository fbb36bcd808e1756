import type { Finding } from '../../finding.ts';
import type { Box, Vector } from '../../geometry/shapes.ts';
import { plus, times } from '../../geometry/vector.ts';
import type { Fastener } from '../../stock/fastener.ts';
import { atLeast, atMost, length, say } from '../../units/say.ts';
import { tidy } from '../machining.ts';
import { told } from '../told.ts';
import { groupOf } from './count.ts';

/** A stubby screwdriver or a bit in an angle drive, the half width of its shank, and of a socket; common practice, no source. mm. */
export const DRIVER = 90;
const SHANK = 6;
const SOCKET = 10;
/** A nut and what turns it beyond the wood; common practice, no source. mm. */
const NUT = 40;

type Placed = { readonly id: string; readonly box: Box };

/** Room along a line from a point until something stands in a square tool's way, and what that is; mm, at most `most`. */
export function freeAlong(
  { from, way, half }: { readonly from: Vector; readonly way: Vector; readonly half: number },
  boxes: readonly Placed[],
  most: number,
): { readonly free: number; readonly before: string | null } {
  let found: { readonly free: number; readonly before: string | null } = { free: most, before: null };
  for (const { id, box } of boxes) {
    const at = entry({ from, way, half }, box);
    if (at !== null && at < found.free) found = { free: tidy(Math.max(0, at)), before: id };
  }
  return found;
}

type Tool = { readonly from: Vector; readonly way: Vector; readonly half: number };

/** How far along its way a square tool along an axis meets a box; null when it passes beside it or has it behind. */
function entry({ from, way, half }: Tool, { min, max }: Box): number | null {
  let at = Number.NEGATIVE_INFINITY;
  let out = Number.POSITIVE_INFINITY;
  for (const axis of [0, 1, 2] as const) {
    const speed = way[axis];
    if (Math.abs(speed) < 1e-9) {
      if (from[axis] + half <= min[axis] + 1e-6 || from[axis] - half >= max[axis] - 1e-6) return null;
      continue;
    }
    const [a, b] = [(min[axis] - from[axis]) / speed, (max[axis] - from[axis]) / speed];
    at = Math.max(at, Math.min(a, b));
    out = Math.min(out, Math.max(a, b));
  }
  return out <= 1e-6 ? null : at;
}

const LATER = /^(?:deck\.|drawer\.)|\.panel$/;

/** What stands in the way while a fastener is turned: of a drawer or leg on its own its pieces, else the frame and all in it. */
function standing({ through }: Fastener, pieces: readonly Placed[]): readonly Placed[] {
  const groups = new Set(through.map(groupOf));
  const [group = ''] = groups;
  const alone = groups.size === 1 && /^(?:drawer|leg)\./.test(group);
  return pieces.filter(({ id }) => {
    if (through.includes(id)) return false;
    if (groups.has(groupOf(id))) return !LATER.test(id) || alone;
    return !alone && !LATER.test(id) && !id.startsWith('leg.');
  });
}

/** Screws no driver and nuts no spanner comes to, one finding for what they hold, with the room there is. */
export function reachFindings(fasteners: readonly Fastener[], pieces: readonly Placed[]): readonly Finding[] {
  const by = new Map(pieces.map(({ id, box }) => [id, box]));
  const least = new Map<string, { readonly finding: Finding; readonly free: number }>();
  for (const fastener of fasteners) {
    const boxes = standing(fastener, pieces);
    const wood = fastener.through.flatMap((id) => by.get(id) ?? []);
    const found = fastener.form === 'screw' ? driverReach(fastener, boxes) : nutReach(fastener, { boxes, wood });
    const before = least.get(fastener.holds);
    if (found !== null && (before === undefined || found.free < before.free)) least.set(fastener.holds, found);
  }
  return [...least.values()].map(({ finding }) => finding);
}

/** A screw stands out by its length before it is driven, and the driver beyond it. */
function driverReach({ head, direction, holds, through, length: long }: Fastener, boxes: readonly Placed[]) {
  const needed = tidy(long + DRIVER);
  const { free, before } = freeAlong({ from: head, way: times(direction, -1), half: SHANK }, boxes, needed);
  if (free >= needed) return null;
  const what = say`before the screws in ${through[0] ?? ''} ${length(free)} are free up to ${before ?? ''}, and a screw with its driver takes ${length(needed)}`;
  const short = tidy(free - long);
  const mend =
    short > 0
      ? say`move ${before ?? ''} ${atLeast(tidy(needed - free))} away, or have a driver no longer than ${atMost(short)}`
      : say`move ${before ?? ''} ${atLeast(tidy(needed - free))} away`;
  return {
    free,
    finding: told('halt', { rule: 'no-room-for-driver', where: holds, what, figure: free, limit: needed, mend }),
  };
}

/** A bolt's nut lies where it leaves the last piece. */
function nutReach(
  { head, direction, holds, through }: Fastener,
  { boxes, wood }: { readonly boxes: readonly Placed[]; readonly wood: readonly Box[] },
) {
  const exit = Math.max(...wood.map((box) => leaving({ from: head, way: direction, half: 0 }, box)));
  const from = plus(head, times(direction, exit));
  const { free, before } = freeAlong({ from, way: direction, half: SOCKET }, boxes, NUT);
  if (free >= NUT) return null;
  const what = say`beyond the bolts through ${through[through.length - 1] ?? ''} ${length(free)} are free up to ${before ?? ''}, too little for a nut and a spanner`;
  const mend = say`move ${before ?? ''} ${atLeast(tidy(NUT - free))} away`;
  return {
    free,
    finding: told('halt', { rule: 'bolt-without-nut-access', where: holds, what, figure: free, limit: NUT, mend }),
  };
}

/** How far along its way a line leaves a box, mm. */
function leaving({ from, way }: Tool, { min, max }: Box): number {
  const ends = ([0, 1, 2] as const).flatMap((axis) =>
    Math.abs(way[axis]) < 1e-9
      ? []
      : [Math.max((min[axis] - from[axis]) / way[axis], (max[axis] - from[axis]) / way[axis])],
  );
  return Math.min(...ends);
}
