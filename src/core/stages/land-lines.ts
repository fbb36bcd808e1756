import { halfFormation } from '../scenery/formation-width.ts';
import type { Land, Path, PathPoint } from '../scenery/land.ts';
import { type Headroom, LEAST_ROOF } from '../scenery/line-findings.ts';
import { clearHalfWidth, clearHeight } from '../track/clearance.ts';
import type { LaidLine, TrackModel } from '../track/lay.ts';
import { stanceAlong } from '../track/line.ts';
import { heightAt } from '../track/profile.ts';
import { reachNear } from '../track/reach.ts';
import type { Train } from '../track/train.schema.ts';

/** Points of a line are this far apart, mm: on a curve of 300 mm they leave 0.2 mm. */
const STEP = 20;

/** What runs on the lines. */
export type Running = { readonly scale: string; readonly trains: readonly Train[] };

/** The lines of track as the land is levelled for them: tunnels and bridges are left free. */
export function landLines(track: TrackModel, land: Land, { scale, trains }: Running): readonly Path[] {
  const half = halfFormation(scale, 2 * track.halfWidth);
  return track.lines.map((line) => ({
    id: line.id,
    points: pointsOf(line, { scale, trains }),
    half,
    bed: track.halfWidth,
    slope: land.slope,
    free: [...land.tunnels, ...land.bridges]
      .filter((stretch) => stretch.line === line.id)
      .map(({ from, to }) => [Math.min(from, to), Math.max(from, to)] as const),
  }));
}

/** What a place of a line keeps free on each side: the gauge of free space, or the vehicle that swings out farthest. */
function clearAt(line: LaidLine, at: number, { scale, trains }: Running): number {
  const reaches = trains.flatMap((train) => [1, -1].map((side) => reachNear(train, line, { at, side })));
  return Math.max(clearHalfWidth(scale), ...reaches);
}

function pointsOf(line: LaidLine, running: Running): readonly PathPoint[] {
  const count = Math.max(1, Math.ceil(line.length / STEP));
  return Array.from({ length: count + 1 }, (_, i) => (line.length * i) / count).flatMap((at) => {
    const stance = stanceAlong(line, at);
    if (stance === null) return [];
    return [{ at, x: stance.x, y: stance.y, z: heightAt(line.profile, at), clear: clearAt(line, at, running) }];
  });
}

/** What a train needs over the roadbed's underside, and the roof over it. */
export function headroomOf(track: TrackModel, scale: string): Headroom {
  const { height, source } = clearHeight(scale, 'no wire');
  return { train: height + track.railHeight, roof: LEAST_ROOF, source };
}
