import type { Finding } from '../finding.ts';
import type { Stock } from '../stock/goods.ts';
import { evaluate } from '../units/evaluate.ts';
import type { Fault } from '../units/problem.ts';
import type { Scope } from '../units/quantity.ts';
import { say } from '../units/say.ts';
import { machineForChild } from './cautions.ts';
import { generatedStep, materials, writtenStep } from './compose.ts';
import type { Deed } from './deed.ts';
import { benchworkDrafts, type Timber } from './generated/benchwork.ts';
import { draftId } from './generated/draft.ts';
import { type LandWork, landDrafts } from './generated/land.ts';
import { type LayWork, layDrafts } from './generated/laying.ts';
import { type WireWork, wireDrafts } from './generated/wires.ts';
import { givenFindings } from './given.ts';
import { linked } from './link.ts';
import { type Merged, merged, type Taker } from './merge.ts';
import type { Step } from './step.ts';
import { type ChapterSteps, makeable, namedSteps, resolvedFits, resolvedMakes, type Written } from './written.ts';

/** What the steps follow from: the chapters' written steps and the parts as computed. */
export type StepsInput = Timber & {
  readonly chapters: readonly ChapterSteps[];
  readonly stock: readonly Stock[];
  /** the track to lay; absent without track */
  readonly track?: LayWork;
  /** the land to build; absent without scenery */
  readonly land?: LandWork;
  /** the wires to run; absent without wiring */
  readonly wires?: WireWork;
  /** names a `wait` may use */
  readonly scope: Scope;
};

export type StepsAnswer = {
  readonly steps: readonly Step[];
  readonly faults: readonly Fault[];
  readonly findings: readonly Finding[];
  /** what is done to which pieces, in the order of the steps */
  readonly deeds: readonly Deed[];
};

/** All steps of all chapters in an order that keeps every `after`; written ones take over generated ones they name. */
export function planSteps(input: StepsInput): StepsAnswer {
  const drafts = [
    ...benchworkDrafts(input),
    ...(input.track === undefined ? [] : layDrafts(input.track)),
    ...(input.wires === undefined ? [] : wireDrafts(input.wires)),
    ...(input.land === undefined ? [] : landDrafts(input.land)),
  ];
  const { written, faults } = namedSteps(input.chapters);
  const names = makeable(input.parts, drafts);
  const made = written.map((one) => ({ written: one, ...resolvedMakes(one, names) }));
  const fitted = new Map(written.map((one) => [one.id, resolvedFits(one, names)]));
  const merge = merged(drafts, made);
  const waits = new Map(written.map((one) => [one.id, waitOf(one, input.scope)]));
  const steps = withFits(composed({ merge, takers: made, waits, input }), fitted);
  const links = linked({ steps, written, merge, drafts });
  const findings = [...steps.flatMap(childFindings), ...givenFindings(links.given, links.steps)];
  return {
    steps: links.steps,
    faults: [
      ...faults,
      ...made.flatMap((one) => one.faults),
      ...[...fitted.values()].flatMap((one) => one.faults),
      ...[...waits.values()].flatMap((one) => one.faults),
      ...links.faults,
    ],
    findings,
    deeds: links.steps.flatMap(({ id }) => deedsOf(id, merge)),
  };
}

/** Steps with what their authors say they put in place; what one says so of is put in place by no other step. */
function withFits(steps: readonly Step[], said: ReadonlyMap<string, { readonly fits: readonly string[] }>): Step[] {
  const owned = new Set([...said.values()].flatMap(({ fits }) => fits));
  return steps.map((step) => {
    const own = said.get(step.id)?.fits ?? [];
    const rest = (step.fits ?? []).filter((id) => !owned.has(id));
    return { ...step, fits: [...own, ...rest] };
  });
}

function deedsOf(step: string, { drafts, taken }: Merged): readonly Deed[] {
  const work = taken.get(step)?.work ?? drafts.find((draft) => draftId(draft) === step)?.work ?? [];
  return work.map(({ noun, makes }) => ({ step, noun, makes }));
}

type Wait = { readonly minutes: number | null; readonly faults: readonly Fault[] };

function waitOf({ step }: Written, scope: Scope): Wait {
  if (step.wait === undefined) return { minutes: null, faults: [] };
  const amount = evaluate(step.wait, scope);
  return amount.ok ? { minutes: amount.value.value, faults: [] } : { minutes: null, faults: amount.faults };
}

type Composition = {
  readonly merge: Merged;
  readonly takers: readonly Taker[];
  readonly waits: ReadonlyMap<string, Wait>;
  readonly input: StepsInput;
};

function composed({ merge, takers, waits, input }: Composition): Step[] {
  const of = materials(input.parts, input.stock);
  const generated = merge.drafts.map((draft) => generatedStep(draft, of));
  const own = takers.map((taker) => {
    const { id } = taker.written;
    return writtenStep(taker, merge.taken.get(id), { wait: waits.get(id)?.minutes ?? null, of });
  });
  return [...generated, ...own];
}

function childFindings(step: Step): Finding[] {
  const machine = machineForChild(step.child, step.tools);
  if (machine === null) return [];
  return [
    {
      rule: 'child-at-machine',
      level: 'care',
      where: step.id,
      chapter: step.chapter,
      what: say`'${step.title}' gives a child work with the ${machine}.`,
      figure: null,
      limit: null,
      unit: 'count',
      mend: say`Write 'child: watches' or 'child: away', or split off a step without the ${machine}.`,
      source: '29 CFR 570.55 and 570.65, power-driven saws and woodworking machines under 18 (from memory)',
      accepted: null,
    },
  ];
}
