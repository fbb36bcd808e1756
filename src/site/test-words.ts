import { gapTag } from '../core/wiring/gap.ts';
import type { TestRow } from '../core/wiring/test-sheet.ts';
import { type Pair, wholeSentence } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { counted } from './words.ts';

/** One test to make and tick: its name, what is done, what has to be seen. */
export type TestWords = {
  readonly tick: string;
  readonly name: string;
  readonly what: Pair;
  readonly expect: Pair;
  readonly content: TestRow;
};

/** `volts.quay` is the voltage of quay; a feeder's test and a cut's go by their own names. */
export function testName({ id, of }: Pick<TestRow, 'id' | 'of'>, { notebook }: Book): string {
  const [kind = ''] = id.split('.');
  const wiring = notebook.wiring;
  const name = wiring?.districts.find((one) => one.id === of)?.name ?? of;
  const label = wiring?.wires.find((wire) => wire.id === `${of}-a`)?.label.replace(/a$/, '');
  if (kind === 'feeder' && label !== undefined) return `Pair ${label}`;
  if (kind === 'cut') return `Cut ${gapTag(of)}`;
  if (kind === 'volts') return `Voltage in ${name}`;
  if (kind === 'coin') return `Coin on the rails of ${name}`;
  return of.charAt(0).toUpperCase() + of.slice(1).replaceAll('-', ' ');
}

/** The tests in the order they are made. */
export function testWords(book: Book): readonly TestWords[] {
  return (book.notebook.wiring?.tests ?? []).map((row) => ({
    tick: `test:${row.id}`,
    name: testName(row, book),
    what: wholeSentence(row.what),
    expect: wholeSentence(row.expect),
    content: row,
  }));
}

/** Tests that are made together, numbered on from the group before. */
export type TestGroup = { readonly title: string; readonly first: number; readonly tests: readonly TestWords[] };

/** The tests without power and those with it, in the order they are made; groups without any left out. */
export function testGroups(book: Book): readonly TestGroup[] {
  const all = testWords(book);
  const off = all.filter(({ content }) => /^(?:cut|feeder)\./.test(content.id));
  const on = all.filter((one) => !off.includes(one));
  return [
    { title: `${counted(off.length, 'test')} with the supply off`, first: 1, tests: off },
    { title: `${counted(on.length, 'test')} with the supply on`, first: off.length + 1, tests: on },
  ].filter(({ tests }) => tests.length > 0);
}
