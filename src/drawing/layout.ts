import { benchLayout } from './bench-drawing.ts';
import type { BenchViewKind } from './bench-stage.ts';
import { benchWords } from './bench-words.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import { cuttingLayout } from './cutting-drawing.ts';
import type { Drawing, DrawingOptions, DrawingSheet } from './drawing.ts';
import { jointGroups, jointLayout, jointWords } from './joint-drawing.ts';
import { type DrawingEntry, type DrawingKind, listDrawings } from './list.ts';
import type { Mark } from './mark.ts';
import { frameOf, papers } from './paper.ts';
import { partLayout } from './part-drawing.ts';
import { onSheets } from './sheet.ts';
import { titleBlockMarks } from './title-block.ts';

/** What a drawing is made of before it is put on paper. */
export type DrawingContent = { readonly blocks: readonly Block[]; readonly scale: number; readonly desc: string };

const documentTypes: Readonly<Record<DrawingKind, string>> = {
  plan: 'Arrangement',
  elevation: 'Arrangement',
  section: 'Arrangement',
  part: 'Part drawing',
  sheet: 'Cutting layout',
  joint: 'Joint detail',
};

function benchView(id: string): BenchViewKind {
  const kinds: readonly BenchViewKind[] = ['plan', 'deck', 'front', 'left', 'section'];
  return kinds.find((kind) => id.endsWith(`.${kind}`)) ?? 'plan';
}

function contentOf(notebook: DrawingBook, entry: DrawingEntry, options: DrawingOptions): DrawingContent {
  if (entry.kind === 'part') {
    const part = notebook.parts.find(({ id }) => id === entry.of);
    if (part !== undefined) return partLayout(part, options);
  }
  if (entry.kind === 'sheet') {
    const sheet = notebook.sheets[Number(entry.id.slice('sheet.'.length)) - 1];
    if (sheet !== undefined) return cuttingLayout(notebook, sheet, options);
  }
  const group = jointGroups(notebook).find(({ first }) => entry.kind === 'joint' && first.id === entry.of);
  if (group !== undefined)
    return { ...jointLayout(notebook, group, options), desc: jointWords(notebook, group, options.unit) };
  const bench = notebook.benches.find(({ id }) => id === entry.of);
  if (bench !== undefined) {
    const kind = benchView(entry.id);
    return {
      ...benchLayout(notebook, bench, { kind, options }),
      desc: benchWords(notebook, bench, { kind, unit: options.unit }),
    };
  }
  return { blocks: [], scale: 10, desc: entry.title };
}

function frameMark({ paper }: DrawingOptions): Mark {
  const { x0, y0, x1, y1 } = frameOf(paper);
  return {
    kind: 'polygon',
    rings: [
      [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ],
    ],
    fill: 'none',
    pen: 'frame',
    role: 'frame',
  };
}

/** Lays a drawing out for a unit and a paper: pure, the same answer each time. Throws a RangeError for an id that listDrawings does not give. */
export function layOutDrawing(notebook: DrawingBook, id: string, options: DrawingOptions): Drawing {
  const entry = listDrawings(notebook).find((one) => one.id === id);
  if (entry === undefined) throw new RangeError(`no drawing ${id}`);
  const { blocks, scale, desc } = contentOf(notebook, entry, options);
  const filled = onSheets(blocks, options.paper);
  const sheets = (filled.length === 0 ? [{ marks: [], views: [], dimensions: [] }] : filled).map(
    (block, index, all): DrawingSheet => {
      const titleBlock = titleBlockMarks(
        {
          owner: notebook.makers.join(', '),
          title: notebook.title,
          subtitle: entry.title,
          type: documentTypes[entry.kind],
          number: id,
          scale,
          unit: options.unit,
          sheet: index + 1,
          of: all.length,
          paper: options.paper,
        },
        frameOf(options.paper),
      );
      return {
        id,
        unit: options.unit,
        title: entry.title,
        desc,
        ...papers[options.paper],
        scale,
        sheet: index + 1,
        of: all.length,
        marks: [frameMark(options), ...titleBlock, ...block.marks],
        views: block.views,
        dimensions: block.dimensions,
      };
    },
  );
  const [first = sheets[0]] = sheets;
  if (first === undefined) throw new RangeError(`nothing to draw for ${id}`);
  return { ...first, sheets };
}
