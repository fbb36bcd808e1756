import type { Assembly } from './assembly/assembly.ts';
import type { Machining } from './assembly/machining/operation.ts';
import type { Bench, Seam } from './benchwork/bench.ts';
import { withoutCutAway } from './benchwork/hardware/cut-away.ts';
import { drillFindings } from './benchwork/hardware/drills.ts';
import type { BenchworkModel } from './benchwork/input.ts';
import type { CutBound, CutSheet, Offcut } from './cutting/job.ts';
import type { YardAsk } from './cutting/lots.ts';
import type { LotSaving } from './cutting/savings.ts';
import type { Finding } from './finding.ts';
import { headValues } from './head.ts';
import { acceptFindings } from './log/accept.ts';
import { byPiece } from './log/groups.ts';
import type { LogRecord, Money } from './log/record.ts';
import { type LogState, logState } from './log/state.ts';
import type { Plan } from './plan.ts';
import type { SceneryModel } from './scenery/model.ts';
import type { Shopping } from './shopping/line.ts';
import { assemblyStage } from './stages/assembly.ts';
import { benchworkStage, type NamedDimension } from './stages/benchwork.ts';
import { landWork } from './stages/land-work.ts';
import { layWork } from './stages/lay-work.ts';
import { measurable, readLog } from './stages/log.ts';
import { penetrationsStage } from './stages/penetrations.ts';
import { placingFindings } from './stages/placing-order.ts';
import { sceneryStage, withSheets } from './stages/scenery.ts';
import { shoppingStage } from './stages/shopping.ts';
import { tiltsOf } from './stages/tilts.ts';
import { cuttingStage, massesOf, stockOfRoles } from './stages/timber.ts';
import { type TrackStage, trackStage } from './stages/track.ts';
import { wireWork } from './stages/wire-work.ts';
import { wiringStage } from './stages/wiring.ts';
import { orderFindings } from './stages/written-order.ts';
import { planSteps } from './steps/plan.ts';
import type { Step } from './steps/step.ts';
import type { Fastener, HardwareUse } from './stock/fastener.ts';
import type { Stock } from './stock/goods.ts';
import type { Envelope, Joint, Part, Request } from './stock/part.ts';
import type { KnownThickness } from './stock/thickness.ts';
import type { TrackInput } from './track/input.ts';
import type { TrackModel } from './track/lay.ts';
import { done, failed, type Result } from './units/problem.ts';
import type { Scope } from './units/quantity.ts';
import type { WiringModel } from './wiring/wiring.ts';

export type { NamedDimension } from './stages/benchwork.ts';

/** Everything computed from one plan: plain JSON, mm, kg, N, radians; the same input gives the same bytes. */
export type Notebook = {
  readonly slug: string;
  readonly title: string;
  readonly scale: string;
  readonly show: 'mm' | 'in';
  readonly makers: readonly string[];
  readonly licence: string;
  readonly dimensions: readonly NamedDimension[];
  readonly thicknesses: readonly KnownThickness[];
  readonly stock: readonly Stock[];
  readonly benches: readonly Bench[];
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly seams: readonly Seam[];
  readonly envelopes: readonly Envelope[];
  /** every screw and bolt where it is driven */
  readonly fasteners: readonly Fastener[];
  /** what is bought by the piece, and glue and finish, by item and place */
  readonly hardware: readonly HardwareUse[];
  /** kg of each part (one instance), by part id */
  readonly masses: Readonly<Record<string, number>>;
  readonly sheets: readonly CutSheet[];
  readonly bounds: readonly CutBound[];
  /** what is worth keeping of the sheets, with its label, and where a later chapter uses it */
  readonly offcuts: readonly Offcut[];
  /** cuts to ask for when buying, so that sheets fit the car */
  readonly yard: readonly YardAsk[];
  /** the smallest change of a part that saves a sheet, where there is one */
  readonly whatIf: readonly LotSaving[];
  /** what to buy, over all chapters */
  readonly shopping: Shopping;
  /** how each bench goes together, proved on its solids */
  readonly assembly: readonly Assembly[];
  /** every part's operations in their order */
  readonly machining: readonly Machining[];
  /** lines, turnouts and how to set them out; null for a notebook without track */
  readonly track: TrackModel | null;
  /** the track as read, for what would follow from a change of it */
  readonly trackPlan: TrackInput | null;
  /** wires, holes, feeders and what they carry; null for a notebook without wiring */
  readonly wiring: WiringModel | null;
  /** the land; null for a notebook without scenery */
  readonly scenery: SceneryModel | null;
  /** holes, notches and cut-outs that rooms asked of each other's parts */
  readonly requests: readonly Request[];
  readonly steps: readonly Step[];
  readonly log: readonly LogRecord[];
  /** where the work stands, from the log */
  readonly state: LogState;
  readonly findings: readonly Finding[];
};

/**
 * Everything that follows from a plan, stage by stage as the contributor's guide lists them. Faults of a stage stop the
 * stages that rest on it and no others, so that an author sees as many mistakes as possible at once.
 */
export function compute(plan: Plan): Result<Notebook> {
  const head = headValues(plan.head);
  const log = readLog(plan);
  const bench = benchworkStage(plan, log.readings, head);
  const early = [...head.faults, ...log.faults];
  if (!bench.ok) return failed(...early, ...bench.faults);
  const { model: bare, scope } = bench.value;
  const laid = trackStage(plan, { model: bare, scope });
  const rails = laid.ok ? laid.value : null;
  const land = sceneryStage(plan, { ...bench.value, model: bare, track: rails?.model ?? null });
  const wired = laid.ok && land.ok ? wiringStage(plan, { model: bare, scope, rails, land: land.value }) : done(null);
  const wires = wired.ok ? wired.value : null;
  const rooms = [laid, land, wired].flatMap((room) => (room.ok ? [] : room.faults));
  // names of layers and boards are in the log and the steps: without the land they would all be unknown
  if (!land.ok) return failed(...early, ...rooms);
  const requests = [rails?.model, land.value, wires].flatMap((room) => room?.requests ?? []);
  const holes = penetrationsStage(bare, requests);
  const bored = { ...bare, parts: [...holes.parts, ...(land.value?.parts ?? [])] };
  const model = withoutCutAway(bored, new Set(requests.map(({ part }) => part)));
  const steps = stepsStage(plan, { model, scope, rails, land: land.value, wires });
  const state = stateStage(plan, { model, steps: steps.steps, records: log.records, budget: head.budget });
  const tilts = tiltsOf(plan, model);
  const faults = [...early, ...rooms, ...tilts.faults, ...steps.faults, ...state.faults];
  if (faults.length > 0) return failed(...faults);
  const { thicknesses } = bench.value;
  const together = assemblyStage(plan, { model, thicknesses, head, tilts: tilts.of, steps: steps.steps });
  const cut = cuttingStage(model.parts, plan, head);
  const { sheets } = cut;
  const buy = shoppingStage({
    ...{ sheets, hardware: model.hardware, scenery: land.value, stock: plan.stock, head, show: plan.head.show },
    supplies: rails?.model.supplies ?? null,
    wiring: wires,
  });
  const { parts, joints } = model;
  const late = placingFindings({ parts, joints, assembly: together.assembly, steps: steps.steps });
  const found = [
    model,
    holes,
    ...(rails === null ? [] : [rails]),
    ...(land.value === null ? [] : [land.value]),
    ...(wires === null ? [] : [wires]),
    together,
    cut,
    buy,
    log,
    { findings: steps.findings.filter((one) => !isHalted(one, late)) },
    head,
    state,
    { findings: drillFindings(model, head.drills) },
    { findings: orderFindings(model.parts, steps.deeds) },
    { findings: late },
  ].flatMap(({ findings }) => findings);
  const answered = acceptFindings(found, log.records);
  return done({
    ...cover(plan),
    dimensions: bench.value.dimensions,
    thicknesses,
    stock: plan.stock,
    benches: model.benches,
    parts: model.parts,
    joints: model.joints,
    seams: model.seams,
    envelopes: [...model.envelopes, ...(rails?.model.envelopes ?? [])],
    fasteners: model.fasteners,
    hardware: model.hardware,
    masses: massesOf(model.parts, plan.stock),
    sheets,
    bounds: cut.bounds,
    offcuts: cut.offcuts,
    yard: cut.yard,
    whatIf: cut.whatIf,
    shopping: buy.shopping,
    assembly: together.assembly,
    machining: together.machining,
    track: rails?.model ?? null,
    trackPlan: rails?.input ?? null,
    scenery: withSheets(land.value, sheets, plan),
    wiring: wires,
    requests,
    steps: steps.steps,
    log: byPiece(log.records, model.parts),
    state,
    findings: [...answered.findings, ...answered.notes],
  });
}

/** Whether a care about a step's order is told as a halt already, which says more. */
function isHalted({ rule, where }: Finding, halts: readonly Finding[]): boolean {
  return rule === 'step-before-its-base' && halts.some((halt) => halt.where === where);
}

function cover(plan: Plan) {
  const { title, scale, show, makers, licence } = plan.head;
  return { slug: plan.slug, title, scale, show, makers, licence };
}

type ForSteps = {
  readonly model: BenchworkModel;
  readonly scope: Scope;
  readonly rails: TrackStage | null;
  readonly land: SceneryModel | null;
  readonly wires: WiringModel | null;
};

/** Stage 10: written and generated steps of all chapters, in order. */
function stepsStage(plan: Plan, { model, scope, rails, land, wires }: ForSteps) {
  const chapters = { benchwork: plan.benchwork, track: plan.track, wiring: plan.wiring, scenery: plan.scenery };
  const benches = model.benches.map(({ id }) => id);
  return planSteps({
    parts: model.parts,
    joints: model.joints,
    frames: model.benches,
    fasteners: model.fasteners,
    hardware: model.hardware,
    chapters: Object.entries(chapters).map(([chapter, content]) => ({ chapter, steps: content?.steps ?? [] })),
    stock: plan.stock,
    materials: stockOfRoles(plan),
    ...(rails === null ? {} : { track: layWork(plan, rails.model, benches) }),
    ...(land === null ? {} : { land: landWork(plan, land) }),
    ...(wires === null ? {} : { wires: wireWork(plan, wires, benches) }),
    scope,
  });
}

type Work = {
  readonly model: BenchworkModel;
  readonly steps: readonly Step[];
  readonly records: readonly LogRecord[];
  readonly budget: Money | null;
};

/** Stage 10, too: where the work stands. */
function stateStage(plan: Plan, { model, steps, records, budget }: Work): LogState {
  const { parts, benches } = model;
  return logState({
    records,
    parts,
    steps,
    benches,
    measurable: Object.keys(measurable(plan)),
    budget,
    toBuy: null,
    today: null,
  });
}
