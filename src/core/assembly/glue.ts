import type { Finding } from '../finding.ts';
import type { Joint } from '../stock/part.ts';
import { length, say } from '../units/say.ts';
import type { Clamping, GlueStage, Placing } from './assembly.ts';
import type { Body } from './body.ts';
import { clampsFor, clampsSuffice, type Gluing, inHand } from './clamps.ts';
import { type ClampsInHand, GLUE_SOURCE, type Workshop } from './workshop.ts';

/** What is glued, in the order it goes together. */
export type Glued = {
  readonly order: readonly Placing[];
  readonly joints: readonly Joint[];
  readonly bodies: readonly Body[];
  readonly workshop: Workshop;
};

/**
 * The order cut into stages: each is spread and closed within the glue's open time, with the clamps in hand where they
 * do for one move; the frame is never turned over, nor a sub-assembly moved, within a stage.
 */
export function glueStages(glued: Glued): readonly GlueStage[] {
  const gluings = gluingsOf(glued);
  const stages: Gluing[][] = [];
  for (const [i, gluing] of gluings.entries()) {
    const open = stages.at(-1);
    const before = gluings[i - 1];
    if (open !== undefined && before !== undefined && goesOn(before, gluing) && inTime([...open, gluing], glued)) {
      open.push(gluing);
    } else stages.push([gluing]);
  }
  return stages.filter((stage) => stage.some(({ joints }) => joints.length > 0)).map((stage) => stageOf(stage, glued));
}

function gluingsOf({ order, joints, bodies }: Glued): readonly Gluing[] {
  const placed = new Map<string, string[]>();
  return order.map((placing) => {
    const here = placed.get(placing.within ?? '') ?? [];
    placed.set(placing.within ?? '', [...here, ...placing.parts]);
    const there = new Set([...here, ...placing.parts]);
    const own = joints.filter(({ id, held }) => held === 'glue' && placing.joints.includes(id));
    return { placing, joints: own, standing: bodies.filter(({ id }) => there.has(id)) };
  });
}

function goesOn(before: Gluing, next: Gluing): boolean {
  return !next.placing.turn && before.placing.within === next.placing.within;
}

function inTime(stage: readonly Gluing[], { workshop }: Glued): boolean {
  const alone = stage.slice(-1);
  const enough = (some: readonly Gluing[]) => clampsSuffice(clampsFor(some, workshop), workshop.clamps);
  return minutesOf(stage, workshop) <= workshop.openTime && (enough(stage) || !enough(alone));
}

function minutesOf(stage: readonly Gluing[], { perJoint }: Workshop): number {
  return stage.reduce((sum, { joints }) => sum + joints.length * perJoint, 0);
}

function stageOf(stage: readonly Gluing[], { joints, workshop }: Glued): GlueStage {
  return {
    parts: gluedParts(stage, joints),
    joints: stage.flatMap((one) => one.joints.map(({ id }) => id)),
    minutes: minutesOf(stage, workshop),
    wait: workshop.clamped,
    clamps: clampsFor(stage, workshop),
  };
}

/** What is glued in a stage, and panels caught by it; what only stands there, or is bolted on meanwhile, is none of it. */
function gluedParts(stage: readonly Gluing[], all: readonly Joint[]): readonly string[] {
  const glued = new Set(stage.flatMap(({ joints }) => joints.flatMap(({ between }) => between)));
  const grooves = new Set(all.filter(({ kind }) => kind === 'groove').map(({ id }) => id));
  const caught = ({ placing }: Gluing) => placing.joints.some((id) => grooves.has(id));
  return stage
    .filter((one) => caught(one) || one.placing.parts.some((part) => glued.has(part)))
    .flatMap(({ placing }) => placing.parts);
}

/** Moves that close more joints than the glue waits for, and clamps that are too few or too short. */
export function glueFindings(stages: readonly GlueStage[], workshop: Workshop): readonly Finding[] {
  const late = stages.filter(({ minutes }) => minutes > workshop.openTime).map((stage) => lateFinding(stage, workshop));
  const { clamps } = workshop;
  if (clamps === null) return late;
  const wanting = stages
    .filter((stage) => !clampsSuffice(stage.clamps, clamps))
    .flatMap(({ clamps: wanted }) => wanted.filter(({ reach, count }) => count > inHand(clamps, reach)))
    .sort((a, b) => missing(b, clamps) - missing(a, clamps) || b.reach - a.reach);
  return [...late, ...wanting.slice(0, 1).map((clamping) => clampFinding(clamping, workshop))];
}

function missing({ reach, count }: Clamping, clamps: ClampsInHand): number {
  return count - inHand(clamps, reach);
}

function lateFinding({ parts, joints, minutes }: GlueStage, { openTime, perJoint }: Workshop): Finding {
  return {
    rule: 'glue-closes-late',
    level: 'care',
    where: parts[0] ?? 'bench',
    chapter: 'benchwork',
    what: say`${parts.join(', ')} closes ${String(joints.length)} glued joints at once, ${String(minutes)} min at ${String(perJoint)} min a joint`,
    figure: minutes,
    limit: openTime,
    unit: 'min',
    mend: say`spread with a second pair of hands (${String(minutes / 2)} min), or use a glue that stays open ${String(minutes)} min`,
    source: GLUE_SOURCE,
    accepted: null,
  };
}

function clampFinding({ reach, count, at }: Clamping, { clamps }: Workshop): Finding {
  const there = inHand(clamps ?? [], reach);
  const longest = (clamps ?? []).reduce((most, { opening }) => Math.max(most, opening), 0);
  return {
    rule: 'clamps-missing',
    level: 'care',
    where: at[0] ?? 'bench',
    chapter: 'benchwork',
    what: say`one stage takes ${String(count)} clamps that open ${length(reach)}; in hand are ${String(there)}, and the longest opens ${length(longest)}`,
    figure: there,
    limit: count,
    unit: 'count',
    mend: say`borrow ${String(count - there)}, or pull the joints in with a strap right round and blocks at its corners`,
    source: GLUE_SOURCE,
    accepted: null,
  };
}
