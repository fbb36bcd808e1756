import type { Bench, Seam } from './benchwork/bench.ts';
import { evaluateBenchwork } from './benchwork/evaluate.ts';
import { frame } from './benchwork/frame.ts';
import type { BenchworkModel } from './benchwork/input.ts';
import { materialThicknesses } from './benchwork/materials.ts';
import type { CutBound, CutSheet } from './cutting/job.ts';
import { layOut } from './cutting/layout.ts';
import { cutJobs } from './cutting/parts-job.ts';
import { notPlacedFindings } from './cutting/unplaced.ts';
import type { Finding } from './finding.ts';
import { type HeadValues, headValues } from './head.ts';
import { applyLog } from './log/apply.ts';
import type { LogRecord } from './log/record.ts';
import { logRecords } from './log/records.ts';
import { settablesOf } from './log/settable.ts';
import type { Plan } from './plan.ts';
import { planSteps } from './steps/plan.ts';
import type { Step } from './steps/step.ts';
import type { Stock } from './stock/goods.ts';
import { partMass } from './stock/mass.ts';
import type { Envelope, Joint, Part } from './stock/part.ts';
import type { KnownThickness } from './stock/thickness.ts';
import type { Reading } from './stock/thickness-check.ts';
import { done, type Fault, failed, type Result } from './units/problem.ts';
import type { Amount, Quantity, Scope } from './units/quantity.ts';

/** A named dimension with the text its author typed. */
export type NamedDimension = { readonly name: string; readonly amount: Amount; readonly text: string };

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
  /** kg of each part (one instance), by part id */
  readonly masses: Readonly<Record<string, number>>;
  readonly sheets: readonly CutSheet[];
  readonly bounds: readonly CutBound[];
  readonly steps: readonly Step[];
  readonly log: readonly LogRecord[];
  readonly findings: readonly Finding[];
};

/**
 * Everything that follows from a plan, in the order the contributor's guide gives; faults of a stage stop the stages that
 * rest on it and no others.
 */
export function compute(plan: Plan): Result<Notebook> {
  const head = headValues(plan.head);
  const log = readLog(plan);
  const inputs = benchworkInputs(plan, log.readings, head);
  const bench = inputs.ok ? frame(inputs.value.input) : inputs;
  const faults = [...head.faults, ...log.faults, ...(bench.ok ? [] : bench.faults)];
  if (!bench.ok || !inputs.ok) return failed(...faults);
  const model = bench.value;
  const steps = planSteps({
    ...timber(model),
    chapters: chapterSteps(plan),
    stock: plan.stock,
    scope: inputs.value.scope,
  });
  if (faults.length + steps.faults.length > 0) return failed(...faults, ...steps.faults);
  const cut = cutting(model.parts, plan.stock, head);
  const findings = [...model.findings, ...cut.findings, ...log.findings, ...steps.findings, ...head.findings];
  return done({
    ...cover(plan),
    dimensions: namedDimensions(plan, inputs.value.scope),
    thicknesses: Object.values(inputs.value.thicknesses),
    stock: plan.stock,
    benches: model.benches,
    parts: model.parts,
    joints: model.joints,
    seams: model.seams,
    envelopes: model.envelopes,
    masses: masses(model.parts, plan.stock),
    sheets: cut.sheets,
    bounds: cut.bounds,
    steps: steps.steps,
    log: log.records,
    findings,
  });
}

function cover(plan: Plan) {
  const { title, scale, show, makers, licence } = plan.head;
  return { slug: plan.slug, title, scale, show, makers, licence };
}

/** Stage 1: what the log measured and changed. */
function readLog(plan: Plan) {
  const values = { ...settablesOf('benchwork', plan.benchwork), ...settablesOf('notebook', plan.head) };
  const { records, faults } = logRecords(plan.log, { values, bare: plan.head.bare ?? null, scope: {} });
  const applied = applyLog({ values, measurable: measurable(plan) }, records);
  const readings = Object.keys(plan.benchwork.materials).map((role) => {
    const measured = applied.measured[`${role}.thickness`];
    return [role, (measured?.readings ?? []).map((value): Reading => ({ value, at: measured?.at ?? '' }))] as const;
  });
  return {
    records,
    readings: Object.fromEntries(readings),
    findings: applied.findings,
    faults: [...faults, ...applied.faults],
  };
}

/** Inputs a log reading enters, each with the chapter's own figure. */
function measurable(plan: Plan): Readonly<Record<string, Quantity | null>> {
  const roles = Object.entries(plan.benchwork.materials).map(([role, material]) => {
    const own = typeof material === 'string' ? null : (material.measured ?? null);
    return [`${role}.thickness`, own] as const;
  });
  return Object.fromEntries(roles);
}

type Readings = Readonly<Record<string, readonly Reading[]>>;

/** Stage 2: named dimensions and thicknesses as numbers. */
function benchworkInputs(plan: Plan, readings: Readings, head: HeadValues) {
  const thicknesses = materialThicknesses(plan.benchwork, { stock: plan.stock, readings });
  if (!thicknesses.ok) return thicknesses;
  const context = {
    scope: {},
    thicknesses: thicknesses.value,
    stock: plan.stock,
    show: plan.head.show,
    bits: head.bits,
  };
  const input = evaluateBenchwork(plan.benchwork, context);
  if (!input.ok) return input;
  return done({
    input: input.value,
    thicknesses: thicknesses.value,
    scope: scopeOf(input.value.dimensions, thicknesses.value),
  });
}

function scopeOf(
  dimensions: Readonly<Record<string, number>>,
  thicknesses: Readonly<Record<string, KnownThickness>>,
): Scope {
  const length = (value: number): Amount => ({ value, dimension: 'length' });
  const named = Object.entries(dimensions).map(([name, value]) => [name, length(value)] as const);
  const roles = Object.entries(thicknesses).map(([role, { mean }]) => [`${role}.thickness`, length(mean)] as const);
  return Object.fromEntries([...named, ...roles]);
}

function namedDimensions(plan: Plan, scope: Scope): readonly NamedDimension[] {
  return Object.entries(scope).map(([name, amount]) => ({
    name,
    amount,
    text: plan.benchwork.dimensions[name]?.text ?? '',
  }));
}

function timber(model: BenchworkModel) {
  return { parts: model.parts, joints: model.joints, frames: model.benches };
}

function chapterSteps(plan: Plan) {
  const chapters = { benchwork: plan.benchwork, track: plan.track, wiring: plan.wiring, scenery: plan.scenery };
  return Object.entries(chapters).map(([chapter, content]) => ({ chapter, steps: content?.steps ?? [] }));
}

/** Stage 8: every part on its sheet. */
function cutting(parts: readonly Part[], stock: readonly Stock[], head: HeadValues) {
  const answers = cutJobs(parts, stock, head.saw).map(layOut);
  return {
    sheets: answers.flatMap(({ sheets }) => sheets),
    bounds: answers.flatMap(({ bounds }) => bounds),
    findings: notPlacedFindings(answers.flatMap(({ unplaced }) => unplaced)),
  };
}

/** Stage 9: kg of one piece of each part. */
function masses(parts: readonly Part[], stock: readonly Stock[]): Readonly<Record<string, number>> {
  const known = parts.flatMap((part) => {
    const goods = stock.find((one) => one.id === part.stock);
    return goods?.kind === 'sheet' || goods?.kind === 'board'
      ? [[part.id, partMass(part, goods.density)] as const]
      : [];
  });
  return Object.fromEntries(known);
}

export type { Fault };
