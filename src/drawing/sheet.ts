import { type Block, extentOf, joined, movedBlock } from './block.ts';
import type { Extent } from './mark.ts';
import { frameOf, type PaperName, scales } from './paper.ts';
import { titleBlockSize } from './title-block.ts';

/** Room between two blocks, and between a block and the frame, mm. */
const between = 8;
const margin = 3;

type Placed = {
  readonly block: Block;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};
type Row = readonly Placed[];

/** The part of the frame above the title block. */
export function drawingArea(paper: PaperName): Extent {
  const frame = frameOf(paper);
  return {
    x0: frame.x0 + margin,
    y0: frame.y0 + margin,
    x1: frame.x1 - margin,
    y1: frame.y1 - titleBlockSize.height - margin,
  };
}

/** Whether a block fits an empty sheet. */
export function fitsSheet(block: Block, paper: PaperName): boolean {
  const area = drawingArea(paper);
  const { x0, y0, x1, y1 } = extentOf(block.marks);
  return x1 - x0 <= area.x1 - area.x0 && y1 - y0 <= area.y1 - area.y0;
}

/** Scales, full size at most, at which a drawing that takes at least this of the model, mm, may fit the paper. */
export function possibleScales(size: { readonly width: number; readonly height: number }, paper: PaperName) {
  const { x0, x1, y0, y1 } = drawingArea(paper);
  return scales.filter((one) => one >= 1 && size.width / one <= x1 - x0 && size.height / one <= y1 - y0);
}

/** What is drawn at the first of some scales at which it fits, and that scale; at 1:100 where it fits at none. */
export function firstFitting<Drawn>(
  tried: readonly number[],
  draw: (scale: number) => Drawn,
  fits: (drawn: Drawn) => boolean,
): { readonly drawn: Drawn; readonly scale: number } {
  for (const scale of tried) {
    const drawn = draw(scale);
    if (fits(drawn)) return { drawn, scale };
  }
  return { drawn: draw(100), scale: 100 };
}

function bottomOf(row: Row): number {
  return Math.max(...row.map(({ y, height }) => y + height));
}

type Filling = { readonly sheets: readonly (readonly Row[])[]; readonly rows: readonly Row[]; readonly row: Row };

/** How far right a block with this lower edge may reach: beside the title block there is only the left strip. */
function rightLimit(paper: PaperName, bottom: number): number | null {
  const area = drawingArea(paper);
  if (bottom <= area.y1) return area.x1;
  const frame = frameOf(paper);
  return bottom <= frame.y1 - margin ? frame.x1 - titleBlockSize.width - between : null;
}

function placedIn(filling: Filling, block: Block, paper: PaperName): Placed | null {
  const area = drawingArea(paper);
  const box = extentOf(block.marks);
  const [width, height] = [box.x1 - box.x0, box.y1 - box.y0];
  const last = filling.row.at(-1);
  const x = last === undefined ? area.x0 : last.x + last.width + between;
  const above = filling.rows.at(-1);
  const y = above === undefined ? area.y0 : bottomOf(above) + between;
  const limit = rightLimit(paper, y + height);
  return limit === null || x + width > limit ? null : { block, x, y, width, height };
}

function added(filling: Filling, block: Block, paper: PaperName): Filling {
  const here = placedIn(filling, block, paper);
  if (here !== null) return { ...filling, row: [...filling.row, here] };
  const wrapped: Filling =
    filling.row.length === 0 ? filling : { ...filling, rows: [...filling.rows, filling.row], row: [] };
  const next = placedIn(wrapped, block, paper);
  if (next !== null) return { ...wrapped, row: [next] };
  const full = wrapped.rows.length === 0 ? wrapped.sheets : [...wrapped.sheets, wrapped.rows];
  const area = drawingArea(paper);
  const box = extentOf(block.marks);
  const fresh = { block, x: area.x0, y: area.y0, width: box.x1 - box.x0, height: box.y1 - box.y0 };
  return { sheets: full, rows: [], row: [fresh] };
}

/** Rows stand apart by what height is left over, up to 8 mm more each, and a row above the title block is centred. */
function settled(rows: readonly Row[], paper: PaperName): Block {
  const area = drawingArea(paper);
  const left = area.y1 - Math.max(...rows.map(bottomOf));
  const lead = Math.max(0, Math.min(8, left / (rows.length + 1)));
  const blocks = rows.flatMap((row, i) => {
    const end = Math.max(...row.map(({ x, width }) => x + width));
    const shift = bottomOf(row) <= area.y1 ? Math.max(0, (area.x1 - end) / 2) : 0;
    return row.map(({ block, x, y }) => {
      const box = extentOf(block.marks);
      return movedBlock(block, [x + shift - box.x0, y + lead * (i + 1) - box.y0]);
    });
  });
  return joined(...blocks);
}

/** Blocks laid out in rows on as few sheets as their order allows; no block is cut and none overlaps another. */
export function onSheets(blocks: readonly Block[], paper: PaperName): readonly Block[] {
  const start: Filling = { sheets: [], rows: [], row: [] };
  const end = blocks.reduce((filling, block) => added(filling, block, paper), start);
  const rows = end.row.length === 0 ? end.rows : [...end.rows, end.row];
  const sheets = rows.length === 0 ? end.sheets : [...end.sheets, rows];
  return sheets.map((sheet) => settled(sheet, paper));
}
