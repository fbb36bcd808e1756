import type { DrawingUnit } from './drawing.ts';
import { unitNames } from './figures.ts';
import type { Extent, Mark, Spot } from './mark.ts';
import { scaleText } from './paper.ts';
import { lettering, middleText, shortened, smallText, textWidth, wrapped } from './text.ts';

/** What the title block says; data fields of ISO 7200. */
export type TitleBlock = {
  readonly owner: string;
  readonly title: string;
  readonly subtitle: string;
  readonly type: string;
  readonly number: string;
  /** null for a diagram that is drawn to none */
  readonly scale: number | null;
  readonly unit: DrawingUnit;
  readonly sheet: number;
  readonly of: number;
  readonly paper: string;
};

/** ISO 7200, 5.2: 180 mm wide. */
export const titleBlockSize = { width: 180, height: 25.5 } as const;

/** What inch figures are rounded to, and what their signs say. */
const inchWords = 'Inches to 1/32: + over, - under; fits to 0.001';

type Cell = {
  readonly x: number;
  readonly width: number;
  readonly row: number;
  readonly rows: number;
  readonly name: string;
  readonly value: string;
};

const rowHeight = titleBlockSize.height / 3;

function cells(block: TitleBlock): readonly Cell[] {
  return [
    { x: 0, width: 52, row: 0, rows: 1, name: 'Owner', value: block.owner },
    { x: 0, width: 52, row: 1, rows: 1, name: 'Document', value: block.type },
    { x: 0, width: 26, row: 2, rows: 1, name: 'Unit', value: unitNames[block.unit] },
    { x: 26, width: 26, row: 2, rows: 1, name: 'Scale', value: block.scale === null ? 'none' : scaleText(block.scale) },
    { x: 52, width: 90, row: 0, rows: 2, name: 'Title', value: block.title },
    { x: 52, width: 90, row: 2, rows: 1, name: 'Number', value: block.number },
    { x: 142, width: 38, row: 0, rows: 1, name: 'Creator', value: 'Fettlebook' },
    { x: 142, width: 38, row: 1, rows: 1, name: 'Paper', value: block.paper },
    { x: 142, width: 38, row: 2, rows: 1, name: 'Sheet', value: `${block.sheet} of ${block.of}` },
  ];
}

/** A value in a cell of one row, its upper left corner at `at`: on two lines where one is too short for it. */
function valueMarks(value: string, width: number, [x, y]: Spot): readonly Mark[] {
  const style = { size: smallText, weight: 'bold' } as const;
  const [first = '', ...rest] = wrapped(value, width, style);
  if (rest.length === 0) return [lettering(first, [x, y + 5.6], style)];
  const second = shortened(rest.join(' '), width, style);
  return [lettering(first, [x, y + 3.6], style), lettering(second, [x, y + 7.55], style)];
}

function cellMarks(cell: Cell, block: TitleBlock, corner: Extent): readonly Mark[] {
  const [x, y] = [corner.x0 + cell.x, corner.y0 + cell.row * rowHeight];
  const lower = y + cell.rows * rowHeight;
  const ring = [
    [x, y],
    [x + cell.width, y],
    [x + cell.width, lower],
    [x, lower],
  ] as const;
  const outline: Mark = { kind: 'polygon', rings: [ring], fill: 'none', pen: 'grid', role: 'frame' };
  const name = lettering(cell.name, [x + 1.5, y + 4], {});
  const large = cell.rows > 1 ? middleText : smallText;
  const start = cell.rows > 1 ? 1.5 : textWidth(cell.name, smallText) + 3.5;
  const style = { size: large, weight: 'bold' } as const;
  const baseline = cell.rows > 1 ? y + 9.5 : y + 5.6;
  const under =
    cell.rows > 1
      ? [
          lettering(shortened(block.subtitle, cell.width - 3, { size: smallText, weight: 'regular' }), [
            x + 1.5,
            y + 14.6,
          ]),
        ]
      : [];
  if (cell.rows === 1) {
    return [
      outline,
      lettering(cell.name, [x + 1.5, y + 5.6]),
      ...valueMarks(cell.value, cell.width - start - 1, [x + start, y]),
    ];
  }
  return [
    outline,
    name,
    ...(block.unit === 'in' ? [lettering(inchWords, [x + cell.width - 1.5, y + 4], { anchor: 'end' })] : []),
    lettering(shortened(cell.value, cell.width - 3, style), [x + start, baseline], style),
    ...under,
  ];
}

/** The title block with its lower right corner in the frame's. */
export function titleBlockMarks(block: TitleBlock, frame: Extent): readonly Mark[] {
  const corner: Extent = { ...frame, x0: frame.x1 - titleBlockSize.width, y0: frame.y1 - titleBlockSize.height };
  return cells(block)
    .flatMap((cell) => cellMarks(cell, block, corner))
    .filter((mark) => mark.kind !== 'text' || mark.text !== '');
}
