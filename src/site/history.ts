import type { LogRecord } from '../core/log/record.ts';
import type { Part } from '../core/stock/part.ts';
import { lengthPair, type Pair } from './lengths.ts';
import type { Book } from './notebooks.ts';

/** One thing that happened to a part, with the entry that tells it. */
export type Happening = { readonly entry: LogRecord; readonly words: Pair };

function plain(words: string): Pair {
  return { mm: words, in: words };
}

function happenings(entry: LogRecord, names: ReadonlySet<string>): readonly Pair[] {
  const readings = entry.measured.filter(({ what }) =>
    [...names].some((name) => what === name || what.startsWith(`${name}.`)),
  );
  return [
    ...entry.made.filter((id) => names.has(id)).map((id) => plain(`${id} made`)),
    ...readings.map(({ what, mean }) => {
      const size = lengthPair(mean);
      return { mm: `${what} measured: ${size.mm}`, in: `${what} measured: ${size.in}` };
    }),
    ...entry.fixes
      .filter((fix) => names.has(fix.part))
      .map((fix) => plain(`${fix.part}: ${fix.what}; mended by ${fix.mend ?? 'nothing yet'}`)),
  ];
}

/** What the log says about a part and its pieces, oldest first. */
export function historyOf(book: Book, part: Part): readonly Happening[] {
  const names = new Set([part.id, ...part.places.map(({ id }) => id)]);
  return book.notebook.log.flatMap((entry) => happenings(entry, names).map((words) => ({ entry, words })));
}
