import type { Finding } from '../finding.ts';
import type { Fastener } from '../stock/fastener.ts';
import type { Joint, Part } from '../stock/part.ts';
import type { KnownThickness } from '../stock/thickness.ts';
import { length, type Sentence, say } from '../units/say.ts';
import { comingApart } from './apart.ts';
import type { Assembly, Driving, Pose, PoseName, Tilt } from './assembly.ts';
import { bodiesOf } from './bodies.ts';
import type { Body } from './body.ts';
import { accessFindings, fasteningOrder, USUAL_TOOL } from './fastening.ts';
import { filmFinding, finishingOf } from './finishing.ts';
import { gapFindings } from './gap-findings.ts';
import { glueFindings, glueStages } from './glue.ts';
import { type Built, builtInOneStep, builtOf, type Group } from './group.ts';
import { knotFinding, needlessTilt, tiltFinding } from './knot-findings.ts';
import { overlaps } from './overlaps.ts';
import { poseOf, UP } from './pose.ts';
import { dryRunOf, squaringOf } from './squaring.ts';
import type { Workshop } from './workshop.ts';

/** One bench to be put together. */
export type AssemblyInput = {
  readonly bench: string;
  readonly parts: readonly Part[];
  /** joints whose two parts are both among the parts; others are left out */
  readonly joints: readonly Joint[];
  readonly thicknesses: readonly KnownThickness[];
  /** screws and bolts; those that go through other benches' parts are left out */
  readonly fasteners: readonly Fastener[];
  readonly groups: readonly Group[];
  /** which step of the work puts an instance in, counted in their order; the order found keeps to it wherever it can */
  readonly steps: ReadonlyMap<string, number>;
  readonly tilts: readonly Tilt[];
  /** what fasteners hold where a halt already says that not even a short driver comes to them */
  readonly told?: readonly string[];
  /** the corner everything is squared from */
  readonly corner: string;
  readonly workshop: Workshop;
};

const NAMES: readonly PoseName[] = ['upright', 'upside-down'];

/**
 * Whether a bench goes together and how: fit of its solids, an order in which every part has a free way in, in both
 * poses, and what the simpler one takes in packers, turns, glue and clamps. Never throws; what fails is a finding.
 */
export function proveAssembly(input: AssemblyInput): Assembly {
  const bodies = bodiesOf(input.parts);
  const ids = new Set(bodies.map(({ id }) => id));
  const joints = input.joints.filter(({ between }) => between.every((id) => ids.has(id)));
  const tries = NAMES.map((pose) => tried(pose, { ...input, bodies, joints }));
  const knots = (tries[0]?.built.knots ?? []).map(({ bodies: parts, freedBy }) => ({ parts, freedBy }));
  const poses = tries.map(({ posed }) => posed);
  const chosen = knots.length > 0 ? null : simplest(poses);
  const order = (chosen ?? poses[0])?.order ?? [];
  const stages = glueStages({ order, joints, bodies, workshop: input.workshop });
  const squaring = squaringOf(bodies, input.parts, input.corner);
  const own = input.fasteners.filter(({ through }) => through.every((id) => ids.has(id)));
  const fastening = fasteningOrder({ fasteners: own, order, bodies, tool: USUAL_TOOL });
  const finished = { parts: input.parts, joints, workshop: input.workshop };
  return {
    bench: input.bench,
    poses,
    chosen: chosen?.pose ?? null,
    reason: chosen === null ? say`no order was found` : reasonFor(chosen, poses),
    knots,
    dryRun: dryRunOf(order, squaring),
    stages,
    squaring,
    fastening,
    finishing: finishingOf(finished),
    apart: comingApart({ bodies, joints, fasteners: own, parts: input.parts }),
    findings: [
      ...overlaps(bodies),
      ...gapFindings(bodies, { ...input, joints }),
      ...(tries[0]?.built.knots ?? []).map(knotFinding),
      ...tilted(input.tilts, order),
      ...glueFindings(stages, input.workshop),
      ...filmFinding(finished),
      ...accessFindings({
        drivings: untold(fastening, input),
        fasteners: own,
        tool: USUAL_TOOL,
        labels: labelsOf(input.parts),
      }),
    ],
  };
}

/** The label on each piece of wood, by its id. */
function labelsOf(parts: readonly Part[]): ReadonlyMap<string, string> {
  return new Map(parts.flatMap(({ places }) => places.map(({ id, label }) => [id, label] as const)));
}

/** What no earlier check has stopped: a screw is told once. */
function untold(fastening: readonly Driving[], { fasteners, told = [] }: AssemblyInput): readonly Driving[] {
  const stopped = new Set(fasteners.filter(({ holds }) => told.includes(holds)).map(({ id }) => id));
  return fastening.filter(({ fastener }) => !stopped.has(fastener));
}

type Tried = AssemblyInput & { readonly bodies: readonly Body[] };

function tried(
  pose: PoseName,
  { bodies, joints, groups, steps, tilts }: Tried,
): { readonly built: Built; readonly posed: Pose } {
  const manner = { up: UP[pose], tilts: new Set(tilts.map(({ part }) => part)), steps };
  const built = builtOf({ bodies, links: joints, groups: builtInOneStep(groups, steps) }, manner);
  return { built, posed: poseOf({ pose, bodies, joints, moves: built.moves }) };
}

/** Turns and packers each count as one thing to do; of equals the pose with fewer packers, then upright. */
function simplest(poses: readonly Pose[]): Pose | null {
  const effort = ({ turns, packers }: Pose) => turns + packers.length;
  return poses.reduce<Pose | null>((best, pose) => {
    if (best === null || effort(pose) < effort(best)) return pose;
    return effort(pose) === effort(best) && pose.packers.length < best.packers.length ? pose : best;
  }, null);
}

function reasonFor(chosen: Pose, poses: readonly Pose[]): Sentence {
  const others = poses.filter(({ pose }) => pose !== chosen.pose);
  return [...takes(chosen), ...others.flatMap((other) => ['; ', ...takes(other)])];
}

function takes({ pose, packers, turns }: Pose): Sentence {
  const heights = [...new Set(packers.map(({ height }) => Math.round(height * 100) / 100))];
  const words = say`${pose.replace('-', ' ')} takes ${packers.length === 0 ? 'no' : String(packers.length)} packer${packers.length === 1 ? '' : 's'}`;
  const high = heights.flatMap((height, i) => [i === 0 ? ' of ' : ' and ', length(height)]);
  return [
    ...words,
    ...high,
    ` and ${turns === 0 ? 'no turning over' : turns === 1 ? 'one turning over' : `${turns} turnings over`}`,
  ];
}

function tilted(tilts: readonly Tilt[], order: Pose['order']): readonly Finding[] {
  return tilts.map((tilt) => {
    const isUsed = order.some(({ parts, path }) => path === 'tilt' && parts.includes(tilt.part));
    return isUsed ? tiltFinding(tilt) : needlessTilt(tilt);
  });
}
