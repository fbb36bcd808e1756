import type { Assembly, GlueStage, Packer, Placing, Pose, TakingOff } from '../core/assembly/assembly.ts';
import type { Machining, Operation } from '../core/assembly/machining/operation.ts';
import type { Sentence } from '../core/units/say.ts';
import { type Json, millionth, plain, thousandth } from './rounded.ts';

type Say = (sentence: Sentence) => string;

/** How the first bench goes together, and every other one under `others`; null when there is none. */
export function assemblyJson(assembly: readonly Assembly[], say: Say): Json {
  const [first, ...others] = assembly.map((one) => benchJson(one, say));
  return first === undefined ? null : { ...first, others };
}

function benchJson(one: Assembly, say: Say): { readonly [key: string]: Json } {
  const { bench, poses, chosen, reason, knots, stages, squaring, finishing, apart } = one;
  return {
    bench,
    poses: poses.map(poseJson),
    chosen,
    reason: say(reason),
    knots: plain(knots, ['parts', 'freedBy']),
    dryRun: one.dryRun.map(say),
    stages: stages.map(stageJson),
    squaring: plain(squaring, ['corner', 'edges', 'part', 'length', 'diagonal']),
    fastening: plain(one.fastening, ['fastener', 'after', 'blockedBy']),
    finishing: { before: finishing.before.map(say), after: finishing.after.map(say) },
    apart: { loosened: apart.loosened, pieces: apart.pieces, off: apart.off.map(offJson), marks: apart.marks.map(say) },
  };
}

function poseJson({ pose, packers, order, turns }: Pose): Json {
  return { pose, packers: packers.map(packerJson), order: order.map(placingJson), turns };
}

function packerJson({ part, where, at, height }: Packer): Json {
  return { part, where, at: at.map(thousandth), height: thousandth(height) };
}

function placingJson(placing: Placing): Json {
  const { parts, direction, with: mates, joints, path, legs, travel, frame, turn, within } = placing;
  const leg = legs.map((one) => ({
    direction: one.direction.map(millionth),
    distance: one.distance === null ? null : thousandth(one.distance),
  }));
  const way = { path, legs: leg, travel: thousandth(travel), frame, turn, within };
  return { parts, direction: direction.map(millionth), with: mates, joints, ...way };
}

function offJson({ parts, direction, loosened, frame, turn }: TakingOff): Json {
  return { parts, direction: direction.map(millionth), loosened, frame, turn };
}

function stageJson({ parts, joints, minutes, wait, clamps }: GlueStage): Json {
  return {
    ...{ parts, joints, minutes: thousandth(minutes), wait: thousandth(wait) },
    clamps: plain(clamps, ['along', 'reach', 'count', 'at']),
  };
}

/** The operations of one part, lengths to a thousandth. */
export function machiningJson({ part, operations }: Machining): Json {
  return { part, operations: operations.map(operationJson) };
}

function operationJson({ id, kind, tool, needs, destroys, setUp, features }: Operation): Json {
  return {
    id,
    kind,
    tool,
    needs,
    destroys,
    setUp: plain(setUp, ['fence', 'stop', 'straightedge', 'bit', 'depth']),
    features,
  };
}
