import type { Box, Vector } from '../geometry/shapes.ts';
import type { Joint, Part } from '../stock/part.ts';
import { bodiesOf } from './bodies.ts';
import type { Body } from './body.ts';
import { boxRound } from './engagement.ts';

/**
 * Where a piece comes to another: how, which of the two is cut for it, and where their faces meet the way from the other
 * piece to this one (unit length, bench coordinates); null where one is let into the other.
 */
export type Seat = {
  readonly mate: string;
  readonly how: Joint['kind'] | 'touch';
  readonly held: Joint['held'] | null;
  readonly cut: 'this' | 'mate' | 'both' | 'neither';
  readonly away: Vector | null;
};

/** A piece in its place: the box round it, bench coordinates, mm, and what it comes to. */
export type Stand = { readonly box: Box; readonly seats: readonly Seat[] };

/** Every piece of a bench in its place, and the box round the frame's sides and ends that heights are told from; mm. */
export type Stands = { readonly frame: Box | null; readonly of: ReadonlyMap<string, Stand> };

/** How far a piece lies inside the low and the high end of another along one axis; mm, negative where it stands over. */
export type Inset = { readonly axis: 0 | 1 | 2; readonly low: number; readonly high: number };

type Axis = Inset['axis'];

const AXES: readonly Axis[] = [0, 1, 2];
/** Faces nearer than this touch, mm; a play that is meant is wider. */
const TOUCHING = 0.05;
/** What meets along less than this passes at a corner, mm. */
const CORNER = 2;
const LET_IN: readonly Joint['kind'][] = ['lap', 'dado', 'rabbet', 'groove'];
const OUTSIDE: readonly string[] = ['side', 'end'];

/** Where every piece of a bench stands and what it comes to there, by its joints and by faces that touch. */
export function standsOf(parts: readonly Part[], joints: readonly Joint[]): Stands {
  const bodies = bodiesOf(parts);
  const outside = new Set(
    parts.filter(({ role }) => OUTSIDE.includes(role)).flatMap(({ places }) => places.map(({ id }) => id)),
  );
  const frame = bodies.filter(({ id }) => outside.has(id));
  return {
    frame: frame.length === 0 ? null : boxRound(frame),
    of: new Map(bodies.map((one) => [one.id, { box: one.box, seats: seatsOf(one, bodies, joints) }])),
  };
}

/** How far a box lies inside another along an axis, mm. */
export function inset(box: Box, other: Box, axis: Axis): Inset {
  return { axis, low: box.min[axis] - other.min[axis], high: other.max[axis] - box.max[axis] };
}

function seatsOf(one: Body, bodies: readonly Body[], joints: readonly Joint[]): readonly Seat[] {
  return bodies.flatMap((other): readonly Seat[] => {
    if (other.id === one.id) return [];
    const joint = joints.find(({ between }) => between.includes(one.id) && between.includes(other.id));
    const away = meetingOf(one, other);
    if (joint === undefined) {
      return away === null ? [] : [{ mate: other.id, how: 'touch', held: null, cut: 'neither', away }];
    }
    const letIn = LET_IN.includes(joint.kind);
    const cut = joint.kind === 'lap' ? 'both' : !letIn ? 'neither' : joint.between[0] === one.id ? 'this' : 'mate';
    return [{ mate: other.id, how: joint.kind, held: joint.held, cut, away: letIn ? null : away }];
  });
}

/** The way from one body to another across faces of theirs that touch, else null. */
function meetingOf(one: Body, other: Body): Vector | null {
  if (AXES.some((i) => apart(one.box, other.box, i) > TOUCHING)) return null;
  for (const { box } of one.pieces) {
    for (const near of other.pieces) {
      const found = meeting(box, near.box);
      if (found !== null) return found;
    }
  }
  return null;
}

function apart(a: Box, b: Box, i: Axis): number {
  return Math.max(a.min[i] - b.max[i], b.min[i] - a.max[i]);
}

/** The way from one box to another across the faces that touch; null when they do not, or only at a corner. */
function meeting(box: Box, other: Box): Vector | null {
  const across = AXES.reduce<Axis>((most, i) => (apart(box, other, i) > apart(box, other, most) ? i : most), 0);
  if (Math.abs(apart(box, other, across)) > TOUCHING) return null;
  if (AXES.some((i) => i !== across && apart(box, other, i) > -CORNER)) return null;
  const way = box.min[across] >= other.max[across] - TOUCHING ? 1 : -1;
  return [across === 0 ? way : 0, across === 1 ? way : 0, across === 2 ? way : 0];
}
