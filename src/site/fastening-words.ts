import type { Assembly } from '../core/assembly/assembly.ts';
import type { Fastener } from '../core/stock/fastener.ts';
import { chosenPose, labelsFromTo, type PicturedStep } from './assembly-words.ts';
import { type Html, line, listedAnd, partLinks, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { wholeName } from './parts.ts';
import { stockName } from './sheet-words.ts';
import type { Told } from './table.ts';

/** Fasteners of one item that go through the same pieces after the same picture. */
type Driven = { readonly picture: number | null; readonly fastener: Fastener; readonly blockedBy: readonly string[] };

/** What is driven after which picture, with room for the tool; null for a bench without screws and bolts. */
export function fasteningTable(book: Book, of: Assembly, steps: readonly PicturedStep[]): Told | null {
  const runs = runsOf(drivenOf(book, of, steps));
  if (runs.length === 0) return null;
  return {
    label: `Screws and bolts of ${of.bench}`,
    caption: text(
      'Each as soon as all it goes through stands. A driver’s room behind every head was looked for among the pieces that stand by then.',
    ),
    columns: [['After picture', 'right'], ['Number', 'right'], ['What'], ['Through'], ['Room for the tool']],
    rows: runs.map((run) => {
      const [first] = run;
      const blocked = [...new Set(run.flatMap(({ blockedBy }) => blockedBy))];
      return [
        text(first?.picture === null || first === undefined ? '–' : `${first.picture}`),
        text(`${run.length}`),
        text(first === undefined ? '' : stockName(book, first.fastener.item)),
        partLinks(book, first?.fastener.through ?? []),
        blocked.length === 0 ? text('free') : line(text('in its way: '), partLinks(book, blocked)),
      ];
    }),
  };
}

/** What is driven once the pieces of a picture stand: how many of what through which pieces. */
export function drivenNow(book: Book, of: Assembly, one: PicturedStep): readonly Html[] {
  const byItem = new Map<string, (readonly Driven[])[]>();
  for (const run of runsOf(drivenOf(book, of, [one]).filter(({ picture }) => picture === one.number))) {
    const item = run[0]?.fastener.item ?? '';
    byItem.set(item, [...(byItem.get(item) ?? []), run]);
  }
  return [...byItem].map(([item, runs]) =>
    line(
      text(`${stockName(book, item)}: `),
      separated(runs.slice(0, TOLD).map((run) => drivenThrough(book, run))),
      more(runs),
    ),
  );
}

/** So many groups of screws are told beside a picture; the table below it has all. */
const TOLD = 4;

function drivenThrough(book: Book, run: readonly Driven[]): Html {
  const { through = [], form = 'screw' } = run[0]?.fastener ?? {};
  const named = (ids: readonly string[]) => listedAnd(wholes(ids).map((some) => wholeOr(book, some)));
  if (through.length < 2) return line(text(`${run.length} in `), named(through));
  if (form === 'bolt') return line(text(`${run.length} through `), named(through), text(', their nuts behind'));
  return line(text(`${run.length} through `), named(through.slice(0, -1)), text(' into '), named(through.slice(-1)));
}

/** So many pieces of one leg in a row are told by the first and the last. */
const LAYERS = 3;

/** Pieces in a row that are of one leg or drawer. */
function wholes(ids: readonly string[]): readonly (readonly string[])[] {
  const runs: string[][] = [];
  for (const id of ids) {
    const run = runs.at(-1);
    if (run !== undefined && wholeName([...run, id]) !== null) run.push(id);
    else runs.push([id]);
  }
  return runs;
}

function wholeOr(book: Book, ids: readonly string[]): Html {
  return ids.length < LAYERS ? listedAnd(ids.map((id) => partLinks(book, [id]))) : text(labelsFromTo(book, ids));
}

function separated(runs: readonly Html[]): Html {
  return line(...runs.flatMap((run, i) => (i === 0 ? [run] : [text('; '), run])));
}

function more(runs: readonly (readonly Driven[])[]): Html {
  const rest = runs.slice(TOLD).reduce((sum, run) => sum + run.length, 0);
  return text(rest === 0 ? '' : `; and ${rest} more, in the table of screws`);
}

function runsOf(all: readonly Driven[]): readonly (readonly Driven[])[] {
  const runs = new Map<string, Driven[]>();
  for (const one of all) runs.set(keyOf(one), [...(runs.get(keyOf(one)) ?? []), one]);
  return [...runs.values()];
}

function drivenOf(book: Book, of: Assembly, steps: readonly PicturedStep[]): readonly Driven[] {
  const order = chosenPose(of)?.order ?? [];
  const byId = new Map(book.notebook.fasteners.map((one) => [one.id, one]));
  return of.fastening.flatMap(({ fastener, after, blockedBy }): readonly Driven[] => {
    const found = byId.get(fastener);
    const placing = after === null ? undefined : order[after];
    const shown = steps.find(({ step }) => placing !== undefined && step.placings.includes(placing));
    return found === undefined ? [] : [{ picture: shown?.number ?? null, fastener: found, blockedBy }];
  });
}

function keyOf({ picture, fastener, blockedBy }: Driven): string {
  return [picture ?? '', fastener.item, ...fastener.through, '', ...blockedBy].join(' ');
}
