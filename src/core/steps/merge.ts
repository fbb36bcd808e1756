import type { Sentence } from '../units/say.ts';
import { type Draft, draftChapter, draftId, type Work } from './generated/draft.ts';
import type { Makes, Written } from './written.ts';

/** A written step with what the model adds to it. */
export type Taker = { readonly written: Written; readonly makes: Makes };

/** What a written step took over from the generated ones. */
export type Taken = {
  readonly drafts: readonly Draft[];
  readonly work: readonly Work[];
  readonly lines: readonly Sentence[];
  readonly makes: readonly string[];
};

export type Merged = {
  /** generated steps with the work nobody took over */
  readonly drafts: readonly Draft[];
  /** what each written step took, by its full id */
  readonly taken: ReadonlyMap<string, Taken>;
  /** for each generated id in full, the steps that stand for it now */
  readonly stands: ReadonlyMap<string, readonly string[]>;
};

function takes(taker: Taker, draft: Draft, work: Work): boolean {
  if (taker.written.id === draftId(draft)) return true;
  if (taker.makes.nouns.includes(work.noun)) return true;
  const all = new Set(taker.makes.pieces);
  return work.kind === 'role' && work.makes.length > 0 && work.makes.every((id) => all.has(id));
}

function takerOf(all: readonly Taker[], draft: Draft, work: Work): string | null {
  const takers = all.filter(({ written }) => written.chapter === draftChapter(draft));
  const named = takers.find((taker) => taker.written.id === draftId(draft));
  const found = named ?? takers.find((taker) => takes(taker, draft, work));
  return found?.written.id ?? null;
}

type Split = {
  readonly draft: Draft;
  readonly left: readonly Work[];
  readonly given: ReadonlyMap<string, readonly Work[]>;
};

function split(draft: Draft, takers: readonly Taker[]): Split {
  const left: Work[] = [];
  const given = new Map<string, Work[]>();
  for (const work of draft.work) {
    const taker = takerOf(takers, draft, work);
    if (taker === null) left.push(work);
    else given.set(taker, [...(given.get(taker) ?? []), work]);
  }
  return { draft, left, given };
}

function takenBy(id: string, splits: readonly Split[]): Taken | null {
  const mine = splits.filter((one) => one.given.has(id));
  if (mine.length === 0) return null;
  const lines = mine.flatMap(({ draft, left, given }) => {
    const share = given.get(id) ?? [];
    const whole = left.length === 0 && [...given.keys()][0] === id;
    const leads = draft.linesOf === undefined ? (whole ? draft.lines : []) : linesOf(draft, share);
    return [...leads, ...share.flatMap((work) => work.lines)];
  });
  const work = mine.flatMap(({ given }) => given.get(id) ?? []);
  const makes = [...new Set(work.flatMap((one) => one.makes))];
  return { drafts: mine.map((one) => one.draft), work, lines, makes };
}

/** What is said first of a share of a draft's work. */
function linesOf(draft: Draft, share: readonly Work[]): readonly Sentence[] {
  return draft.linesOf?.(new Set(share.flatMap(({ makes }) => makes))) ?? draft.lines;
}

/** A draft with the work nobody took, under a title that says so. */
function restOf({ draft, left, given }: Split): Draft {
  const title = given.size === 0 ? draft.title : (draft.restTitle ?? draft.title);
  return { ...draft, title, work: left, lines: linesOf(draft, left) };
}

/** Gives every piece of generated work to the written step that names it; the author's words win, the numbers stay. */
export function merged(drafts: readonly Draft[], takers: readonly Taker[]): Merged {
  const splits = drafts.map((draft) => split(draft, takers));
  const taken = new Map<string, Taken>();
  for (const { written } of takers) {
    const share = takenBy(written.id, splits);
    if (share !== null) taken.set(written.id, share);
  }
  const stands = new Map(
    splits.map(({ draft, left, given }): [string, string[]] => {
      const id = draftId(draft);
      return [id, left.length > 0 ? [id, ...given.keys()] : [...given.keys()]];
    }),
  );
  const kept = splits.filter((one) => one.left.length > 0).map(restOf);
  return { drafts: kept, taken, stands };
}
