import { parseDocument } from 'yaml';
import type { Problem } from '../core/units/problem.ts';
import { lineIndex, problemOn, type Source, spotAt } from './source.ts';
import { explained } from './syntax.ts';
import { type ReadError, type Trap, tokensOf, trapsIn } from './traps.ts';
import { type Tree, treeOf } from './tree.ts';

/** What was read; `cut` says that the file was read only up to a mistake in its syntax. */
export type Yaml = Tree & { readonly cut: boolean };

type Parsed = { readonly root: unknown; readonly error: ReadError | null };

/** YAML 1.2, failsafe: every scalar is its text. Nothing is ever expanded, so an alias costs nothing. */
function parsed(text: string): Parsed {
  const document = parseDocument(text, {
    version: '1.2',
    schema: 'failsafe',
    merge: false,
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: 'silent',
  });
  const [first] = [...document.errors].sort((a, b) => a.pos[0] - b.pos[0]);
  return {
    root: document.contents,
    error: first === undefined ? null : { code: first.code, offset: first.pos[0], message: first.message },
  };
}

/** Start of the top-level key that holds an offset; all before it can still be read. */
function startOfKey(source: Source, offset: number): number {
  for (let index = lineIndex(source, offset); index > 0; index -= 1) {
    const start = source.lines[index] ?? 0;
    if (/^[^\s#\]}-]/.test(source.text.slice(start, start + 1))) return start;
  }
  return 0;
}

function syntaxTrap(source: Source, error: ReadError, traps: readonly Trap[]): Trap | null {
  const line = lineIndex(source, error.offset);
  const told = traps.some((trap) => lineIndex(source, trap.offset) <= line);
  return told ? null : explained(source, error);
}

function located(source: Source, prefix: string, traps: readonly Trap[]): readonly Problem[] {
  return traps.map(({ offset, ...telling }) => problemOn(spotAt(source, offset, prefix), telling));
}

const isComment = (trap: Trap) => trap.rule === 'comment-in-text';

/** A value cut off by a comment is told once, at the comment. */
function besides(problems: readonly Problem[], told: readonly Problem[]): readonly Problem[] {
  const lines = new Set(told.map((problem) => problem.line));
  return problems.filter((problem) => problem.rule !== 'no-value' || !lines.has(problem.line));
}

/** Reads keys and values with their places; never throws, and never takes more than linear time. */
export function readYaml(source: Source, prefix: string): Yaml {
  const traps = trapsIn(source, tokensOf(source.text));
  const blocking = traps.find((trap) => !isComment(trap));
  const whole = blocking === undefined ? parsed(source.text) : { root: null, error: null };
  if (blocking === undefined && whole.error === null) {
    const told = located(source, prefix, traps);
    const tree = treeOf(whole.root, source, prefix);
    return { ...tree, problems: [...told, ...besides(tree.problems, told)], cut: false };
  }
  const own = whole.error === null ? null : syntaxTrap(source, whole.error, traps);
  const found = own === null ? traps : [...traps, own];
  const stop = found.reduce((least, trap) => Math.min(least, trap.offset), source.text.length);
  const told = located(source, prefix, found);
  const head = source.text.slice(0, startOfKey(source, stop));
  const rest = parsed(head);
  const tree = treeOf(rest.error === null ? rest.root : null, source, prefix);
  return { ...tree, problems: [...told, ...besides(tree.problems, told)], cut: true };
}
