import { join } from 'node:path';
import type { Finding } from '../core/finding.ts';
import { publicityFindings } from '../core/log/publicity.ts';
import { datedFindings } from '../core/log/today.ts';
import type { Notebook } from '../core/notebook.ts';
import type { Spot } from '../core/units/problem.ts';
import { type ShowLength, spoken } from '../core/units/say.ts';
import { showLength } from '../core/units/show.ts';
import { findingPlaces } from '../reading/finding-place.ts';
import { printProblem } from '../reading/print.ts';
import { findingJson } from '../writing/notebook-json.ts';
import { type Books, noSuchBook, onlyOne, openBooks } from './books.ts';
import { type Desk, type ExitCode, refuse } from './desk.ts';

export type CheckWish = {
  readonly slug: string | null;
  readonly format: 'text' | 'json';
  /** the least level that is told; `care` tells of the notes only those that a person has to act on */
  readonly level: Finding['level'];
};

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** A finding of a notebook and where to look, as problems name it. */
type Placed = { readonly notebook: Notebook; readonly finding: Finding; readonly place: Spot };

function placed({ notebooks, plans }: Books): readonly Placed[] {
  return notebooks.flatMap((notebook) => {
    const plan = plans.find(({ slug }) => slug === notebook.slug);
    if (plan === undefined) throw new Error(`no plan of ${notebook.slug}`);
    const placeOf = findingPlaces(plan);
    return notebook.findings.map((finding) => ({ notebook, finding, place: placeOf(finding) }));
  });
}

function findingText({ notebook, finding, place: { file, line, column } }: Placed): string {
  const show: ShowLength = (mm, way) => showLength(mm, notebook.show, way);
  const accepted = finding.accepted === null ? '' : `\n    accepted: ${finding.accepted}`;
  const place = `${file}:${line}:${column}`;
  const head = `${finding.level}  ${place}  ${finding.where}  ${spoken(finding.what, show)}`;
  return `${head}\n    mend: ${spoken(finding.mend, show)}${accepted}`;
}

/** What there is in all, what of it was not told, and which notebooks could not be computed. */
function summary(books: Books, untold: number): string {
  const findings = books.notebooks.flatMap((notebook) => notebook.findings);
  const of = (level: Finding['level']) => counted(findings.filter((finding) => finding.level === level).length, level);
  const levels = [of('halt'), of('care'), of('note')].join(', ');
  const known = new Set(books.notebooks.map(({ slug }) => slug));
  const waiting = books.slugs.filter((slug) => !known.has(slug));
  return [
    ...(untold === 0 ? [] : [`${counted(untold, 'note')} more: npm run check -- --level note`]),
    ...(waiting.length === 0 ? [] : [`not computed until the problems are mended: ${waiting.join(', ')}`]),
    `${counted(books.slugs.length, 'notebook')}, ${counted(books.problems.length, 'problem')}, ${levels}`,
  ].join('\n');
}

/** From the gravest to the least. */
export const LEVELS = ['halt', 'care', 'note'] as const satisfies readonly Finding['level'][];

/** Notes that a person has to act on, so they are told among the cares: what the log and the plan disagree about, and these. */
function toAct({ rule, source }: Finding): boolean {
  return ['goes-public', 'upkeep-due'].includes(rule) || source === 'this notebook';
}

function isTold(finding: Finding, least: Finding['level']): boolean {
  return LEVELS.indexOf(finding.level) <= LEVELS.indexOf(least) || (least === 'care' && toAct(finding));
}

/** The books with what only a command finds, because it knows the day and is asked before a site goes out. */
export function onTheDay(books: Books, today: string): Books {
  const more = ({ log, slug }: Notebook) => [
    ...datedFindings(log, today),
    ...publicityFindings({
      records: log,
      room: books.plans.some(({ slug: one, head }) => one === slug && head.room !== undefined),
    }),
  ];
  const notebooks = books.notebooks.map((notebook) => ({
    ...notebook,
    findings: [...notebook.findings, ...more(notebook)],
  }));
  return { ...books, notebooks };
}

/** Problems and findings as lines of text, each once, down to a level. */
export function asText(books: Books, level: Finding['level'] = 'care'): string {
  const all = placed(books);
  const told = all.filter(({ finding }) => isTold(finding, level));
  const lines = new Set(told.map(findingText));
  const untold = all.filter(({ finding }) => finding.level === 'note' && !isTold(finding, level)).length;
  return `${[...books.problems.map(printProblem), ...lines, summary(books, untold)].join('\n')}\n`;
}

/** The same with everything a program needs, notes too. */
export function asJson(books: Books): string {
  const findings = placed(books).map(({ notebook, finding, place: { file, line, column } }) => {
    const told = findingJson(finding, (mm, way) => showLength(mm, notebook.show, way));
    return { notebook: notebook.slug, file, line, column, ...told };
  });
  const problems = books.problems.map(({ rule, file, line, column, path, what, mend }) => {
    return { rule, file, line, column, path, what, mend };
  });
  return `${JSON.stringify({ notebooks: books.slugs, problems, findings }, null, 2)}\n`;
}

/** 0 when nothing is wrong and no halt is open; a halt can't be accepted, so each one is open. */
export function verdict(books: Books): ExitCode {
  const halted = books.notebooks.some(({ findings }) => findings.some(({ level }) => level === 'halt'));
  return books.problems.length === 0 && !halted ? 0 : 1;
}

/** Tells every mistake and finding of all notebooks or of one; its exit code is the verdict. */
export async function check(desk: Desk, { slug, format, level }: CheckWish): Promise<ExitCode> {
  const all = await openBooks(desk.content, join(desk.root, 'content'));
  if (slug !== null && !all.slugs.includes(slug)) return refuse(desk, noSuchBook(all, slug));
  const books = onTheDay(slug === null ? all : onlyOne(all, slug), desk.today());
  desk.write(format === 'json' ? asJson(books) : asText(books, level));
  return verdict(books);
}
