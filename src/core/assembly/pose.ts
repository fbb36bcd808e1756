import type { Vector } from '../geometry/shapes.ts';
import type { Joint } from '../stock/part.ts';
import type { Placing, Pose, PoseName } from './assembly.ts';
import type { Body } from './body.ts';
import type { Placed } from './group.ts';
import { packersOf } from './packers.ts';

export const UP: Readonly<Record<PoseName, Vector>> = { upright: [0, 0, 1], 'upside-down': [0, 0, -1] };

/** What one pose is judged by. */
export type Posed = {
  readonly pose: PoseName;
  readonly bodies: readonly Body[];
  readonly joints: readonly Joint[];
  readonly moves: readonly Placed[];
};

/** One pose with its packers, its order and how often the frame is turned over until it stands on its feet. */
export function poseOf({ pose, bodies, joints, moves }: Posed): Pose {
  const order = placings(moves, joints, pose);
  const own = moves.filter(({ within }) => within === null);
  const last = own.at(-1)?.up ?? UP[pose];
  const turns = order.filter(({ turn }) => turn).length + (last[2] > 0 ? 0 : 1);
  return { pose, packers: packersOf({ bodies, joints, moves: own }, UP[pose]), order, turns };
}

function placings(moves: readonly Placed[], joints: readonly Joint[], pose: PoseName): readonly Placing[] {
  const all = new Map<string, Set<string>>();
  let frame = pose;
  return moves.map((move) => {
    const lies: PoseName = move.up[2] > 0 ? 'upright' : 'upside-down';
    const turn = move.within === null && lies !== frame;
    if (move.within === null) frame = lies;
    const placed = placedOn(all, move);
    const closed = joints.filter(({ between }) => closes(between, move.bodies, placed));
    for (const id of move.bodies) placed.add(id);
    return placing(move, { closed, lies, turn });
  });
}

/** What stands already of the bench, or of the sub-assembly that a move builds. */
function placedOn(all: Map<string, Set<string>>, { within }: Placed): Set<string> {
  const key = within ?? '';
  const placed = all.get(key) ?? new Set<string>();
  all.set(key, placed);
  return placed;
}

/** Whether a joint is closed by what goes in now: one of its parts moves, the other stands. */
function closes([a, b]: readonly [string, string], going: readonly string[], placed: ReadonlySet<string>): boolean {
  const [goesA, goesB] = [going.includes(a), going.includes(b)];
  return (goesA && !goesB && placed.has(b)) || (goesB && !goesA && placed.has(a));
}

type Lying = { readonly closed: readonly Joint[]; readonly lies: PoseName; readonly turn: boolean };

function placing(move: Placed, { closed, lies, turn }: Lying): Placing {
  const mates = closed.flatMap(({ between }) => between.filter((id) => !move.bodies.includes(id)));
  return {
    parts: move.bodies,
    direction: move.direction,
    with: [...new Set(mates)],
    joints: closed.map(({ id }) => id),
    path: move.path,
    legs: move.legs,
    travel: move.travel,
    frame: lies,
    turn,
    within: move.within,
  };
}
