import { join } from 'node:path';
import type { Finding } from '../core/finding.ts';
import { publicityFindings } from '../core/log/publicity.ts';
import { datedFindings } from '../core/log/today.ts';
import type { Notebook } from '../core/notebook.ts';
import { spoken } from '../core/units/say.ts';
import { showLength } from '../core/units/show.ts';
import { printProblem } from '../reading/print.ts';
import { findingJson } from '../writing/notebook-json.ts';
import { type Books, noSuchBook, onlyOne, openBooks } from './books.ts';
import { type Desk, type ExitCode, refuse } from './desk.ts';

export type CheckWish = { readonly slug: string | null; readonly format: 'text' | 'json' };

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

function findingText(notebook: Notebook, finding: Finding): string {
  const show = (mm: number) => showLength(mm, notebook.show);
  const accepted = finding.accepted === null ? '' : `\n    accepted: ${finding.accepted}`;
  const head = `${finding.level}  ${notebook.slug}  ${finding.where}  ${spoken(finding.what, show)}`;
  return `${head}\n    mend: ${spoken(finding.mend, show)}${accepted}`;
}

function summary(books: Books): string {
  const findings = books.notebooks.flatMap((notebook) => notebook.findings);
  const of = (level: Finding['level']) => counted(findings.filter((finding) => finding.level === level).length, level);
  const levels = [of('halt'), of('care'), of('note')].join(', ');
  return `${counted(books.slugs.length, 'notebook')}, ${counted(books.problems.length, 'problem')}, ${levels}`;
}

/** Notes that a person has to act on by themselves, so they are told among the cares. */
const TOLD: readonly string[] = ['goes-public', 'upkeep-due'];

/** The books with what only a command finds, because it knows the day and is asked before a site goes out. */
export function onTheDay(books: Books, today: string): Books {
  const more = ({ log, slug }: Notebook) => [
    ...datedFindings(log, today),
    ...publicityFindings({ records: log, room: books.rooms?.includes(slug) ?? false }),
  ];
  const notebooks = books.notebooks.map((notebook) => ({
    ...notebook,
    findings: [...notebook.findings, ...more(notebook)],
  }));
  return { ...books, notebooks };
}

/** Problems and findings as lines of text; most notes are only counted. */
export function asText(books: Books): string {
  const findings = books.notebooks.flatMap((notebook) => {
    return notebook.findings
      .filter(({ level, rule }) => level !== 'note' || TOLD.includes(rule))
      .map((finding) => findingText(notebook, finding));
  });
  return `${[...books.problems.map(printProblem), ...findings, summary(books)].join('\n')}\n`;
}

/** The same with everything a program needs, notes too. */
export function asJson(books: Books): string {
  const findings = books.notebooks.flatMap((notebook) => {
    return notebook.findings.map((finding) => ({
      notebook: notebook.slug,
      ...findingJson(finding, (mm) => showLength(mm, notebook.show)),
    }));
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
export async function check(desk: Desk, { slug, format }: CheckWish): Promise<ExitCode> {
  const all = await openBooks(desk.content, join(desk.root, 'content'));
  if (slug !== null && !all.slugs.includes(slug)) return refuse(desk, noSuchBook(all, slug));
  const books = onTheDay(slug === null ? all : onlyOne(all, slug), desk.today());
  desk.write(format === 'json' ? asJson(books) : asText(books));
  return verdict(books);
}
