import type { Finding } from '../finding.ts';
import type { Stock } from '../stock/goods.ts';
import { evaluate } from '../units/evaluate.ts';
import type { Fault } from '../units/problem.ts';
import type { Scope } from '../units/quantity.ts';
import { say } from '../units/say.ts';
import { toolNotForChild } from './child-tools.ts';
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
import { poweredSteps } from './powered.ts';
import type { Step } from './step.ts';
import { toolMeant } from './tool-names.ts';
import { wayInFindings } from './way-in.ts';
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
  const findings = [
    ...steps.flatMap(childFindings),
    ...steps.flatMap(toolFindings),
    ...givenFindings(links.given, links.steps),
    ...(input.land === undefined ? [] : wayInFindings(links.steps, input.land)),
  ];
  return {
    steps: poweredSteps(links.steps),
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
  const found = toolNotForChild(step.child, step.tools);
  if (found === null) return [];
  const { tool, most } = found;
  const machine = most === 'watches';
  return [
    {
      ...about(step),
      rule: 'child-at-machine',
      level: 'care',
      what: machine
        ? say`'${step.title}' gives a child work with the ${tool}.`
        : say`'${step.title}' lets a child use the ${tool} alone.`,
      mend: machine
        ? say`Write 'child: watches' or 'child: away', or split off a step without the ${tool}.`
        : say`Write 'child: does with an adult', or split off a step without the ${tool}.`,
      source: machine
        ? '29 CFR 570.55 and 570.65, power-driven saws and woodworking machines under 18 (from memory)'
        : 'common practice, no source',
    },
  ];
}

function about({ id, chapter }: Step) {
  return { where: id, chapter, figure: null, limit: null, unit: 'count', accepted: null } as const;
}

/** Tools whose names are nearly those the cautions go by: misspelt, they would call for none. */
function toolFindings(step: Step): Finding[] {
  return step.tools.flatMap((tool): Finding[] => {
    const meant = toolMeant(tool);
    if (meant === null) return [];
    return [
      {
        ...about(step),
        rule: 'tool-misspelt',
        level: 'care',
        what: say`'${step.title}' names a tool nobody knows here, ${tool}; its cautions are not shown.`,
        mend: say`Did you mean ${meant}? Any name may be used, but cautions are known by the usual ones.`,
        source: 'this notebook',
      },
    ];
  });
}
