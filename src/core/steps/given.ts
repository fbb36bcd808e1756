import type { Finding } from '../finding.ts';
import { say } from '../units/say.ts';
import { type Edge, inOrder, type Loop, withoutLoops } from './order.ts';
import type { Step } from './step.ts';

/** A step's word that it comes after another, as its author wrote it. */
export type Word = { readonly edge: Edge; readonly name: string };

/** One `after` that turns the usual order round: what of that gave way, and how the steps run without it, first to last. */
export type Given = { readonly word: Word; readonly usual: readonly Edge[]; readonly order: readonly string[] };

type Giving = {
  readonly loops: readonly Loop[];
  readonly words: readonly Word[];
  /** what authors wrote, and what is usual */
  readonly authored: readonly Edge[];
  readonly usual: readonly Edge[];
  /** ids in the order that is followed where no edge says otherwise */
  readonly preferred: readonly string[];
};

/** What of the usual order gave way, by the author's word that it gave way to. */
export function givenWay(giving: Giving): readonly Given[] {
  const byWord = new Map<Word, Edge[]>();
  for (const { edge, loop } of giving.loops) {
    const word = giving.words.find(({ edge: { from, to } }) => loop.some((id, i) => id === from && loop[i + 1] === to));
    if (word !== undefined) byWord.set(word, [...(byWord.get(word) ?? []), edge]);
  }
  return [...byWord].map(([word, usual]) => ({ word, usual, order: orderWithout(word, usual, giving) }));
}

function orderWithout(word: Word, gave: readonly Edge[], { authored, usual, preferred }: Giving): readonly string[] {
  const rest = authored.filter(({ from, to }) => from !== word.edge.from || to !== word.edge.to);
  const { kept } = withoutLoops(rest, usual);
  const concerned = new Set([word.edge, ...gave].flatMap(({ from, to }) => [from, to]));
  return inOrder(preferred, kept).filter((id) => concerned.has(id));
}

/** A care for every `after` that sets a step before what it usually rests on, with the order that holds without it. */
export function givenFindings(given: readonly Given[], steps: readonly Step[]): readonly Finding[] {
  const titles = new Map(steps.map(({ id, title }) => [id, title]));
  const quoted = (ids: readonly string[]) => ids.flatMap((id) => titles.get(id) ?? []).map((title) => `'${title}'`);
  return given.flatMap(({ word: { edge, name }, usual, order }): readonly Finding[] => {
    const [step] = steps.filter(({ id }) => id === edge.to);
    if (step === undefined) return [];
    const late = [...new Set(usual.map(({ to }) => to))];
    const base = [...new Set(usual.map(({ from }) => from))];
    return [
      {
        rule: 'step-before-its-base',
        level: 'care',
        where: step.id,
        chapter: step.chapter,
        what: say`'${step.title}' says after: [${name}]; so ${quoted(late).join(', ')} is to be done before ${quoted(base).join(' and ')}, on which it usually rests.`,
        figure: usual.length,
        limit: 0,
        unit: 'count',
        mend: say`Take ${name} out of that after, unless you have a reason for it; the usual order is ${quoted(order).join(', ')}.`,
        source: 'common practice, no source',
        accepted: null,
      },
    ];
  });
}
