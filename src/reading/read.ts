import type { Plan } from '../core/plan.ts';
import { inReadingOrder, type Problem } from '../core/units/problem.ts';
import { byCodeUnit, type ContentFile } from './content-file.ts';
import { readGoods } from './goods.ts';
import { roleOf } from './names.ts';
import { type ReadNotebook, readNotebook } from './read-notebook.ts';
import { unreadProblem } from './source.ts';

/**
 * `plans` of the notebooks without problems, in the order of their folders. `drafts` are what can be used of the others:
 * never shown, but good for finding more of their mistakes.
 */
export type Content = {
  readonly plans: readonly Plan[];
  readonly drafts: readonly Plan[];
  readonly problems: readonly Problem[];
};

/** Most problems told of one file; the rest are counted. */
const MOST_TOLD = 100;

function sameProblem(a: Problem, b: Problem | undefined): boolean {
  return (
    b !== undefined &&
    a.file === b.file &&
    a.line === b.line &&
    a.column === b.column &&
    a.rule === b.rule &&
    a.what === b.what
  );
}

function counted(problems: readonly Problem[]): readonly Problem[] {
  const last = problems.at(-1);
  if (problems.length <= MOST_TOLD || last === undefined) return problems;
  const what = `${problems.length - MOST_TOLD} more problems in this file`;
  return [
    ...problems.slice(0, MOST_TOLD),
    { ...last, rule: 'more', what, mend: 'mend the first ones, then check again' },
  ];
}

function grouped<T>(list: readonly T[], by: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of list) {
    const group = groups.get(by(item));
    if (group === undefined) groups.set(by(item), [item]);
    else group.push(item);
  }
  return groups;
}

/** Problems in the order of files and lines, each once, and no more of one file than anyone reads. */
export function sortedProblems(problems: readonly Problem[]): readonly Problem[] {
  const sorted = [...problems].sort((a, b) => inReadingOrder(a, b) || byCodeUnit(a.what, b.what));
  const each = sorted.filter((problem, i) => !sameProblem(problem, sorted[i - 1]));
  const byFile = grouped(each, (problem) => problem.file);
  return [...byFile.values()].flatMap(counted);
}

function notebooksIn(files: readonly ContentFile[]): ReadonlyMap<string, readonly ContentFile[]> {
  const inNotebook = files.filter((file) => /^notebooks\/[^/]+\/./.test(file.path));
  return grouped(inNotebook, (file) => file.path.split('/')[1] ?? '');
}

/** Files that belong to no notebook and no goods, and photos that were not listed as plain files. */
function looseProblems(files: readonly ContentFile[]): readonly Problem[] {
  return files.flatMap((file): Problem[] => {
    const role = roleOf(file.path);
    const unread = unreadProblem(file);
    if (role.kind === 'photo' || role.kind === 'stray') {
      if (unread !== null) return [unread];
      return role.kind === 'stray' && role.slug === null ? [role.problem] : [];
    }
    return [];
  });
}

function isTold(file: ContentFile): boolean {
  const { kind } = roleOf(file.path);
  return file.kind === 'file' || (kind !== 'photo' && kind !== 'stray');
}

/**
 * Reads all files of a content folder: pure, the same in Node and in a browser. Every mistake of every file is a
 * problem with its place; a notebook with problems has no plan, and takes nothing from the others.
 */
export function readContent(given: readonly ContentFile[]): Content {
  const files = [...given].sort((a, b) => byCodeUnit(a.path, b.path));
  const of = (kind: 'stock' | 'trains') => files.filter((file) => roleOf(file.path).kind === kind);
  const goods = readGoods(of('stock'), of('trains'));
  const readable = files.filter(isTold);
  const read = [...notebooksIn(readable)].map(([slug, own]): ReadNotebook => readNotebook(slug, own, goods));
  const problems = [...goods.problems, ...looseProblems(files), ...read.flatMap((notebook) => notebook.problems)];
  const plans = (sound: boolean) =>
    read.flatMap((notebook) =>
      (notebook.sound && goods.problems.length === 0) === sound ? (notebook.plan ?? []) : [],
    );
  return { plans: plans(true), drafts: plans(false), problems: sortedProblems(problems) };
}
