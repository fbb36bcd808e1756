import type { Finding } from '../finding.ts';
import type { Stock } from '../stock/goods.ts';
import { evaluate } from '../units/evaluate.ts';
import type { Fault } from '../units/problem.ts';
import type { Scope } from '../units/quantity.ts';
import { say } from '../units/say.ts';
import { machineForChild } from './cautions.ts';
import { generatedStep, materials, writtenStep } from './compose.ts';
import { benchworkDrafts, type Timber } from './generated/benchwork.ts';
import { type Merged, merged, type Taker } from './merge.ts';
import { authoredEdges, type Edge, inOrder, withoutLoops } from './order.ts';
import type { Step } from './step.ts';
import {
  type ChapterSteps,
  makeable,
  namedSteps,
  noSuchStep,
  referredStep,
  resolvedMakes,
  type Written,
} from './written.ts';

/** What the steps follow from: the chapters' written steps and the parts as computed. */
export type StepsInput = Timber & {
  readonly chapters: readonly ChapterSteps[];
  readonly stock: readonly Stock[];
  /** names a `wait` may use */
  readonly scope: Scope;
};

export type StepsAnswer = {
  readonly steps: readonly Step[];
  readonly faults: readonly Fault[];
  readonly findings: readonly Finding[];
};

/** All steps of all chapters in an order that keeps every `after`; written ones take over generated ones they name. */
export function planSteps(input: StepsInput): StepsAnswer {
  const drafts = benchworkDrafts(input);
  const { written, faults } = namedSteps(input.chapters);
  const names = makeable(input.parts, drafts);
  const made = written.map((one) => ({ written: one, ...resolvedMakes(one, names) }));
  const merge = merged(drafts, made);
  const waits = new Map(written.map((one) => [one.id, waitOf(one, input.scope)]));
  const steps = composed({ merge, takers: made, waits, input });
  const links = linked({ steps, written, merge, drafts });
  const findings = steps.flatMap(childFindings);
  return {
    steps: links.steps,
    faults: [
      ...faults,
      ...made.flatMap((one) => one.faults),
      ...[...waits.values()].flatMap((one) => one.faults),
      ...links.faults,
    ],
    findings,
  };
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

type Linking = {
  readonly steps: readonly Step[];
  readonly written: readonly Written[];
  readonly merge: Merged;
  readonly drafts: ReturnType<typeof benchworkDrafts>;
};

function linked({ steps, written, merge, drafts }: Linking) {
  const known = new Set([...merge.stands.keys(), ...written.map((one) => one.id)]);
  const authored = written.map((one) => authoredAfter(one, { known, merge }));
  const { kept, loops } = authoredEdges(authored.flatMap((one) => one.edges));
  const soft = drafts.flatMap((draft) => draft.after.flatMap((name) => between(merge, name, draft.id)));
  const edges = withoutLoops(kept, soft).kept;
  const order = inOrder(preference({ steps, written, merge }), edges);
  const faults = [
    ...authored.flatMap((one) => one.faults),
    ...unknownFaults(
      authored.flatMap((one) => one.unknown),
      known,
    ),
    ...loops.slice(0, LOOPS).map(({ edge, loop }) => loopFault(edge, loop, written)),
  ];
  return { steps: withAfter(order, steps, edges), faults };
}

/** Names looked up for a nearest one; a file with more unknown names than this has another trouble. */
const HINTS = 20;

/** Loops told one by one, and names told of one loop. */
const LOOPS = 20;
const LONGEST = 12;

/** A generated edge holds for whatever stands for its two ends now. */
function between(merge: Merged, from: string, to: string): Edge[] {
  const starts = merge.stands.get(`benchwork.${from}`) ?? [];
  const ends = merge.stands.get(`benchwork.${to}`) ?? [];
  return starts.flatMap((start) => ends.filter((end) => end !== start).map((end) => ({ from: start, to: end })));
}

type Unknown = { readonly name: string; readonly one: Written; readonly at: string };

function unknownFaults(unknown: readonly Unknown[], known: ReadonlySet<string>): Fault[] {
  const none: ReadonlySet<string> = new Set();
  return unknown.map(({ name, one, at }, i) => noSuchStep(name, one, { at, known: i < HINTS ? known : none }));
}

function authoredAfter(one: Written, { known, merge }: { known: ReadonlySet<string>; merge: Merged }) {
  const faults: Fault[] = [];
  const unknown: Unknown[] = [];
  const edges: Edge[] = [];
  (one.step.after ?? []).forEach((name, i) => {
    const id = referredStep(name, one, known);
    if (id === null) unknown.push({ name, one, at: `${one.at}.after.${i}` });
    else if (id === one.id) faults.push(waitsForItself(one, i));
    else for (const from of merge.stands.get(id) ?? [id]) if (from !== one.id) edges.push({ from, to: one.id });
  });
  return { edges, faults, unknown };
}

function waitsForItself(one: Written, i: number): Fault {
  const what = `'${one.step.id}' waits for itself`;
  return { rule: 'step-cycle', at: `${one.at}.after.${i}`, what, mend: 'take its own name out of after' };
}

function loopFault(edge: Edge, loop: readonly string[], written: readonly Written[]): Fault {
  const one = written.find((candidate) => candidate.id === edge.to);
  const short = edge.from.split('.').at(-1) ?? edge.from;
  const i = (one?.step.after ?? []).findIndex((name) => name === edge.from || name === short);
  const at = one === undefined ? '' : `${one.at}.after${i < 0 ? '' : `.${i}`}`;
  const ring = loop.length <= LONGEST ? loop : [...loop.slice(0, LONGEST - 1), '…', ...loop.slice(-1)];
  const chain = [edge.to, ...[...ring].reverse()];
  return {
    rule: 'step-cycle',
    at,
    what: `these steps wait for each other in a ring: ${chain.join(' after ')}`,
    mend: `take one of these names out of its step's after`,
  };
}

/** Generated steps in the order of the bench with their takers in their place; other written ones after the one they follow. */
function preference({ steps, written, merge }: Pick<Linking, 'steps' | 'written' | 'merge'>): string[] {
  const alive = new Set(steps.map((step) => step.id));
  const base = [...new Set([...merge.stands.values()].flat())].filter((id) => alive.has(id));
  const based = new Set(base);
  const behind = new Map<string, string[]>();
  const own = (one: Written) => (one.chapter === 'benchwork' ? 'first' : 'last');
  let anchor = 'first';
  written.forEach((one, i) => {
    if (written[i - 1]?.chapter !== one.chapter) anchor = own(one);
    if (based.has(one.id)) anchor = one.id;
    else listUnder(behind, anchor, one.id);
  });
  const after = (anchored: string) => behind.get(anchored) ?? [];
  return [...after('first'), ...base.flatMap((id) => [id, ...after(id)]), ...after('last')];
}

function listUnder(lists: Map<string, string[]>, key: string, id: string): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [id]);
  else list.push(id);
}

function withAfter(order: readonly string[], steps: readonly Step[], edges: readonly Edge[]): Step[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const before = new Map<string, string[]>();
  for (const { from, to } of edges) listUnder(before, to, from);
  return order.flatMap((id) => {
    const step = byId.get(id);
    return step === undefined ? [] : [{ ...step, after: [...new Set(before.get(id) ?? [])] }];
  });
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
