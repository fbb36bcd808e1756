import { readdirSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import type { Notebook } from '../core/notebook.ts';
import type { Step } from '../core/steps/step.ts';
import { nearest } from '../core/units/nearest.ts';
import { printProblem } from '../reading/print.ts';
import { type EntryDraft, entryName, entryText } from '../writing/log-entry.ts';
import { noSuchBook, onlyOne, openBooks } from './books.ts';
import { type Desk, type ExitCode, type Refusal, refuse } from './desk.ts';

/** `step` and `words` are null when the person left them open. */
export type LogWish = { readonly slug: string; readonly step: string | null; readonly words: string | null };

/** Steps that can be started now, the workshop's first. */
function ready({ state, steps }: Notebook): readonly Step[] {
  const ids = [...state.next.workshop, ...state.next.room, ...state.next.outdoors];
  return ids.flatMap((id) => steps.filter((step) => step.id === id));
}

/** The step that was named, in full or by its short name; else the first that is next. */
function stepOf(notebook: Notebook, wanted: string | null): Step | null | Refusal {
  const next = ready(notebook);
  if (wanted === null) return next[0] ?? null;
  const found =
    notebook.steps.find(({ id }) => id === wanted) ?? notebook.steps.find(({ id }) => id.endsWith(`.${wanted}`));
  if (found !== undefined) return found;
  const names = notebook.steps.flatMap(({ id, chapter }) => [id, id.slice(chapter.length + 1)]);
  const near = nearest(wanted, names);
  const there = next.length === 0 ? 'no step is left' : `next are: ${next.map(({ id }) => id).join(', ')}`;
  return {
    what: `No step is called ${JSON.stringify(wanted)}.`,
    mend: near === null ? there : `did you mean ${near}?`,
  };
}

function isRefusal(step: Step | null | Refusal): step is Refusal {
  return step !== null && 'mend' in step;
}

/** Pieces the step makes that nobody has made. */
function piecesOf({ state }: Notebook, step: Step): readonly string[] {
  const missing = new Set(state.parts.filter(({ made }) => !made).map(({ instance }) => instance));
  return step.makes.filter((id) => missing.has(id));
}

/** What was planned is no record of what happened: it stands beside, for the author to write what was. */
function plannedWords({ minutes, people }: Step): string {
  const time = minutes === null ? '' : ` and ${minutes} minutes`;
  return `write people and minutes as they were; ${people === 1 ? 'one person' : `${people} people`}${time} planned`;
}

function measures({ id }: Step): boolean {
  return id.includes('measure');
}

/** A line to fill in for each sheet nobody has measured. */
function readingsToLog({ findings, show }: Notebook): readonly string[] {
  const roles = findings.filter(({ rule }) => rule === 'thickness-not-measured').map(({ where }) => where);
  const three = Array.from({ length: 3 }, () => `... ${show}`).join(', ');
  return roles.length === 0
    ? []
    : [
        'put your readings in and take the # away:',
        'measured:',
        ...roles.map((role) => `- { what: ${role}.thickness, readings: [${three}], with: caliper }`),
      ];
}

/** An entry of today for a step: its id, its pieces and its chapter are filled in, the rest is left to the author. */
export function draftOf(notebook: Notebook, step: Step | null, today: string): EntryDraft {
  const others = ready(notebook).filter(({ id }) => id !== step?.id);
  const hints = [
    ...(step === null ? [] : ['take out what is not done and not made', plannedWords(step)]),
    ...(step === null || !measures(step) ? [] : readingsToLog(notebook)),
    ...(others.length === 0
      ? []
      : [
          `next are too: ${others
            .slice(0, 6)
            .map(({ id }) => id)
            .join(', ')}`,
        ]),
  ];
  return {
    date: today,
    chapter: step?.chapter ?? 'benchwork',
    title: step?.title ?? 'entry',
    people: null,
    minutes: null,
    done: step === null ? [] : [step.id],
    made: step === null ? [] : piecesOf(notebook, step),
    spent: null,
    words: step === null ? 'What was done.' : `${step.title}.`,
    hints,
  };
}

/** The file gets the next free name of its day, and is never written over one that is there. */
async function place(folder: string, draft: EntryDraft): Promise<string> {
  await mkdir(folder, { recursive: true });
  for (;;) {
    const taken = readdirSync(folder).map((name) => name.replace(/\.md$/, ''));
    const file = join(folder, `${entryName(draft, taken)}.md`);
    try {
      await writeFile(file, entryText(draft), { flag: 'wx' });
      return file;
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
    }
  }
}

/** Writes a new entry into a notebook's log with what is next filled in. */
export async function writeEntry(desk: Desk, { slug, step: wanted, words }: LogWish): Promise<ExitCode> {
  const all = await openBooks(desk.content, join(desk.root, 'content'));
  if (!all.slugs.includes(slug)) return refuse(desk, noSuchBook(all, slug));
  const { problems, notebooks } = onlyOne(all, slug);
  const [notebook] = notebooks;
  if (problems.length > 0 || notebook === undefined) {
    desk.warn(`${problems.map(printProblem).join('\n')}\nNothing was written: ${problems.length} to mend first.\n`);
    return 1;
  }
  const step = stepOf(notebook, wanted);
  if (isRefusal(step)) return refuse(desk, step);
  const draft = draftOf(notebook, step, desk.today());
  const file = await place(join(desk.content, 'notebooks', slug, 'log'), { ...draft, title: words ?? draft.title });
  const way = relative(process.cwd(), file);
  const of = step === null ? '' : ` for ${step.id}`;
  desk.write(`Wrote ${way.startsWith('..') ? file : way}${of}. Put in your words, then: npm run check -- ${slug}\n`);
  return 0;
}
