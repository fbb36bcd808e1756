import type { Assembly } from '../core/assembly/assembly.ts';
import type { Fastener } from '../core/stock/fastener.ts';
import { chosenPose, type PicturedStep } from './assembly-words.ts';
import { type Html, line, listed, partLink, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
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
        pieces(book, first?.fastener.through ?? []),
        blocked.length === 0 ? text('free') : line(text('in its way: '), pieces(book, blocked)),
      ];
    }),
  };
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

function pieces(book: Book, ids: readonly string[]): Html {
  return listed(ids.map((id) => partLink(book, id, pieceLabel(book, id))));
}
