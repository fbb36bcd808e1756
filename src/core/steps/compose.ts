import type { Stock } from '../stock/goods.ts';
import type { Part } from '../stock/part.ts';
import { cautionsFor, makesDust } from './cautions.ts';
import { childAt } from './child-tools.ts';
import { type Draft, draftChapter, draftId } from './generated/draft.ts';
import type { Taken, Taker } from './merge.ts';
import type { Step, Where } from './step.ts';
import { toolNamed } from './tool-names.ts';

/** What the made parts are made of: `plywood`, `mdf`, `foam`; by instance. */
export function materials(parts: readonly Part[], stock: readonly Stock[]): Map<string, string> {
  const byStock = new Map(stock.map((goods) => [goods.id, goods.kind === 'sheet' ? goods.material : goods.kind]));
  return new Map(
    parts.flatMap((part) => part.places.map((place): [string, string] => [place.id, byStock.get(part.stock) ?? ''])),
  );
}

type Worked = {
  readonly makes: readonly string[];
  readonly of: ReadonlyMap<string, string>;
  /** pieces that stand as what they are in this step: a leg is no leg yet while its strips are ripped */
  readonly whole: readonly string[];
};

function words(tools: readonly string[], { makes, of, whole }: Worked): string[] {
  const made = makesDust(tools) ? makes.map((id) => of.get(id) ?? '').filter((word) => word !== '') : [];
  const roles = whole.map((id) => id.split('.')[0] ?? '');
  return [...tools, ...made, ...roles];
}

/** A generated step as the notebook shows it. */
export function generatedStep(draft: Draft, of: ReadonlyMap<string, string>): Step {
  const makes = [...new Set(draft.work.flatMap((work) => work.makes))];
  return {
    id: draftId(draft),
    chapter: draftChapter(draft),
    title: draft.title,
    generated: true,
    makes,
    tools: draft.tools,
    people: draft.people,
    minutes: null,
    wait: draft.wait,
    child: draft.child,
    where: usualPlace(draftChapter(draft)),
    after: [],
    closes: null,
    cautions: cautionsFor(words([...draft.tools, ...draft.deeds], { makes, of, whole: draft.fits })),
    fits: draft.fits,
    lines: [...draft.lines, ...draft.work.flatMap((work) => work.lines)],
  };
}

/** Where a chapter's work is done unless its author says otherwise. */
function usualPlace(chapter: string): Where {
  return chapter === 'benchwork' ? 'workshop' : 'room';
}

const NOTHING: Taken = { drafts: [], work: [], lines: [], makes: [] };

/** A written step with the numbers it took over; `wait` is evaluated, minutes. */
export function writtenStep(
  { written, makes }: Taker,
  taken: Taken = NOTHING,
  more: { wait: number | null; of: ReadonlyMap<string, string> },
): Step {
  const { step, chapter, id } = written;
  const tools = step.with?.map(toolNamed) ?? [...new Set(taken.drafts.flatMap((draft) => draft.tools))];
  const deeds = taken.drafts.flatMap((draft) => draft.deeds);
  const all = [...new Set([...makes.instances, ...taken.makes])];
  return {
    id,
    chapter,
    title: step.do,
    generated: false,
    makes: all,
    tools,
    people: step.people ?? Math.max(1, ...taken.drafts.map((draft) => draft.people)),
    minutes: step.minutes ?? null,
    wait: more.wait ?? Math.max(0, ...taken.drafts.map((draft) => draft.wait)),
    child: step.child ?? childAt(tools),
    where: step.where ?? usualPlace(chapter),
    after: [],
    closes: step.closes ?? null,
    cautions: cautionsFor(words([...tools, ...deeds], { makes: all, of: more.of, whole: makesDust(tools) ? [] : all })),
    fits: [...new Set(taken.drafts.flatMap((draft) => draft.fits))],
    lines: taken.lines,
  };
}
