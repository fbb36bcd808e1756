import type { Finding } from '../finding.ts';
import type { Joint } from '../stock/part.ts';
import { length, type Sentence, say } from '../units/say.ts';
import type { GlueStage, Placing } from './assembly.ts';
import type { Body } from './body.ts';
import { borrowed, clampsFor, clampsSuffice, type Gluing, inHand } from './clamps.ts';
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
  return [...late, ...clampFinding(stages, workshop.clamps)];
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

/** One care for all stages that want clamps nobody has: which stage, how many, and what to borrow for all of them. */
function clampFinding(stages: readonly GlueStage[], clamps: ClampsInHand | null): readonly Finding[] {
  if (clamps === null) return [];
  const wanting = stages.flatMap(({ clamps: wanted }, i) =>
    wanted.filter(({ reach, count }) => count > inHand(clamps, reach)).map((one) => ({ ...one, stage: i + 1 })),
  );
  const missing = borrowed(
    stages.map((stage) => stage.clamps),
    clamps,
  );
  const [worst] = [...wanting].sort((a, b) => b.count - a.count || b.reach - a.reach);
  if (worst === undefined) return [];
  const longest = clamps.reduce((most, { opening }) => Math.max(most, opening), 0);
  const asked = wanting.map(({ stage, count, reach }) => [`stage ${stage} takes `, ...clampsThat(count, reach)]);
  return [
    {
      rule: 'clamps-missing',
      level: 'care',
      where: worst.at[0] ?? 'bench',
      chapter: 'benchwork',
      what: [...say`of the glue stages, `, ...inARow(asked), ...say`; the longest in hand opens ${length(longest)}`],
      figure: inHand(clamps, worst.reach),
      limit: worst.count,
      unit: 'count',
      mend: [
        ...say`borrow `,
        ...inARow(missing.map(({ count, reach }) => clampsThat(count, reach))),
        ...say`, or pull the joints in with a strap right round and blocks at its corners`,
      ],
      source: GLUE_SOURCE,
      accepted: null,
    },
  ];
}

function clampsThat(count: number, reach: number): Sentence {
  return say`${String(count)} that ${count === 1 ? 'opens' : 'open'} ${length(reach)}`;
}

function inARow(some: readonly Sentence[]): Sentence {
  return some.flatMap((one, i) => (i === 0 ? one : [i === some.length - 1 ? ' and ' : ', ', ...one]));
}
