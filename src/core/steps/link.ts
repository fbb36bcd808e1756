import type { Fault } from '../units/problem.ts';
import { type Draft, draftChapter, draftId } from './generated/draft.ts';
import { givenWay, type Word } from './given.ts';
import type { Merged } from './merge.ts';
import { authoredEdges, type Edge, inOrder, withoutLoops } from './order.ts';
import type { Step } from './step.ts';
import { noSuchStep, referredStep, type Written } from './written.ts';

type Linking = {
  readonly steps: readonly Step[];
  readonly written: readonly Written[];
  readonly merge: Merged;
  readonly drafts: readonly Draft[];
};

/**
 * Steps in an order that keeps every `after`: an author's word first, then the usual order where it still can hold;
 * `given` is what of the usual order gave way, and to which word.
 */
export function linked({ steps, written, merge, drafts }: Linking) {
  const known = new Set([...merge.stands.keys(), ...written.map((one) => one.id)]);
  const authored = written.map((one) => authoredAfter(one, { known, merge }));
  const { kept, loops } = authoredEdges(authored.flatMap((one) => one.words.map(({ edge }) => edge)));
  const soft = drafts.flatMap((draft) => draft.after.flatMap((name) => between(draft, name, { merge, known })));
  const { kept: edges, loops: given } = withoutLoops(kept, soft);
  const preferred = preference({ steps, written, merge });
  const order = inOrder(preferred, edges);
  const words = authored.flatMap((one) => one.words);
  const faults = [
    ...authored.flatMap((one) => one.faults),
    ...unknownFaults(
      authored.flatMap((one) => one.unknown),
      known,
    ),
    ...loops.slice(0, LOOPS).map(({ edge, loop }) => loopFault(edge, loop, written)),
  ];
  const ways = givenWay({ loops: given, words, authored: kept, usual: soft, preferred });
  return { steps: withAfter(order, steps, edges), faults, given: ways };
}

/** Names looked up for a nearest one; a file with more unknown names than this has another trouble. */
const HINTS = 20;

/** Loops told one by one, and names told of one loop. */
const LOOPS = 20;
const LONGEST = 12;

/** A generated edge holds for whatever stands for its two ends now; one to a step that is not there does not. */
function between(draft: Draft, name: string, { merge, known }: { merge: Merged; known: ReadonlySet<string> }): Edge[] {
  const own = `${draftChapter(draft)}.${name}`;
  const starts = merge.stands.get(own) ?? merge.stands.get(name) ?? (known.has(name) ? [name] : []);
  const ends = merge.stands.get(draftId(draft)) ?? [];
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
  const words: Word[] = [];
  (one.step.after ?? []).forEach((name, i) => {
    const id = referredStep(name, one, known);
    if (id === null) unknown.push({ name, one, at: `${one.at}.after.${i}` });
    else if (id === one.id) faults.push(waitsForItself(one, i));
    else
      for (const from of merge.stands.get(id) ?? [id])
        if (from !== one.id) words.push({ edge: { from, to: one.id }, name });
  });
  return { words, faults, unknown };
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

/** Generated steps in the order of the work with their takers in their place; other written ones after the one they follow, else before their chapter's. */
function preference({ steps, written, merge }: Pick<Linking, 'steps' | 'written' | 'merge'>): string[] {
  const alive = new Set(steps.map((step) => step.id));
  const base = [...new Set([...merge.stands.values()].flat())].filter((id) => alive.has(id));
  const based = new Set(base);
  const behind = new Map<string, string[]>();
  const chapterOf = (id: string) => id.slice(0, id.indexOf('.'));
  const heads = new Map([...base].reverse().map((id) => [chapterOf(id), id]));
  const own = ({ chapter }: Written) =>
    chapter === 'benchwork' || heads.has(chapter) ? `first of ${chapter}` : 'last';
  let anchor = 'first of benchwork';
  written.forEach((one, i) => {
    if (written[i - 1]?.chapter !== one.chapter) anchor = own(one);
    if (based.has(one.id)) anchor = one.id;
    else listUnder(behind, anchor, one.id);
  });
  const after = (anchored: string) => behind.get(anchored) ?? [];
  const before = (id: string) => {
    const chapter = chapterOf(id);
    return chapter !== 'benchwork' && heads.get(chapter) === id ? after(`first of ${chapter}`) : [];
  };
  const generated = base.flatMap((id) => [...before(id), id, ...after(id)]);
  return [...after('first of benchwork'), ...generated, ...after('last')];
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
