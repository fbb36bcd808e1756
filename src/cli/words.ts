import { nearest } from '../core/units/nearest.ts';
import type { Refusal } from './desk.ts';

/** A command line taken apart: words in their order, and options with their values. */
export type Words = { readonly words: readonly string[]; readonly options: Readonly<Record<string, string>> };

/** What a command takes: so many words at least and at most, and options that have a value. */
export type Takes = { readonly least: number; readonly most: number; readonly options: readonly string[] };

export type Taken = ({ readonly ok: true } & Words) | { readonly ok: false; readonly refusal: Refusal };

function refused(what: string, mend: string): Taken {
  return { ok: false, refusal: { what, mend } };
}

function unknownOption(name: string, { options }: Takes): Taken {
  const near = nearest(name, options);
  const there = options.length === 0 ? 'this command has no options' : `there is --${options.join(', --')}`;
  return refused(`There is no option --${name}.`, near === null ? there : `did you mean --${near}?`);
}

/** Takes a command line apart; `--name value` and `--name=value` mean the same. */
export function wordsOf(line: readonly string[], takes: Takes): Taken {
  const words: string[] = [];
  const options: Record<string, string> = {};
  for (let i = 0; i < line.length; i += 1) {
    const [, name, given] = /^--([^=]*)(?:=(.*))?$/s.exec(line[i] ?? '') ?? [];
    if (name === undefined) {
      words.push(line[i] ?? '');
      continue;
    }
    if (name === '') return refused('A second -- stands on this line.', 'leave it out: the first is enough');
    if (!takes.options.includes(name)) return unknownOption(name, takes);
    if (options[name] !== undefined) return refused(`--${name} is given twice.`, 'give it once');
    const value = given ?? line[++i];
    if (value === undefined || value === '')
      return refused(`--${name} has no value.`, `write --${name} and what it is`);
    options[name] = value;
  }
  if (words.length < takes.least) return refused('Something is missing on this line.', 'see the line under usage');
  if (words.length > takes.most)
    return refused(`${JSON.stringify(words[takes.most])} is one word too many.`, 'see the line under usage');
  return { ok: true, words, options };
}
