import type { Block } from './block.ts';
import type { Mark } from './mark.ts';
import { lettering, smallText, textWidth, wrapped } from './text.ts';

const LINE = 4.4;
/** Paper between columns, mm, and the most rows in a block so that it fits the smallest paper. */
const BETWEEN = 2.5;
const MOST = 24;

/** A small table on paper, with words under it. */
export type TableAsk = {
  readonly heading: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly foot: readonly string[];
};

/** A table in columns as wide as their words; a block for each that fits the smallest paper. */
export function tableBlocks({ columns, foot, heading, rows }: TableAsk): readonly Block[] {
  const widths = columns.map((name, i) =>
    Math.max(...[name, ...rows.map((row) => row[i] ?? '')].map((text) => textWidth(text, smallText, 'bold'))),
  );
  const starts = widths.map((_, i) => widths.slice(0, i).reduce((sum, one) => sum + one + BETWEEN, 0));
  const wide = widths.reduce((sum, one) => sum + one + BETWEEN, -BETWEEN);
  const below = foot.flatMap((words) => wrapped(words, Math.max(wide, 60), { size: smallText, weight: 'regular' }));
  const pages = Array.from({ length: Math.ceil(rows.length / MOST) }, (_, i) => rows.slice(i * MOST, (i + 1) * MOST));
  return pages.map((page, i): Block => {
    const cells = (row: readonly string[], at: number, head: boolean): readonly Mark[] =>
      row.flatMap((text, k) =>
        text === ''
          ? []
          : [lettering(text, [starts[k] ?? 0, at * LINE], { weight: k === 0 && !head ? 'bold' : 'regular' })],
      );
    const last = i === pages.length - 1 ? below : [];
    const title = i === 0 ? heading : `${heading}, continued`;
    const marks = [
      lettering(title, [0, 0], { weight: 'bold' }),
      ...cells(columns, 1, true),
      ...page.flatMap((row, k) => cells(row, k + 2, false)),
      ...last.map((words, k) => lettering(words, [0, (page.length + 2 + k) * LINE + 0.6])),
    ];
    return { marks, views: [], dimensions: [] };
  });
}
