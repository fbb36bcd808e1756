import type { Extent, Spot } from './mark.ts';

export type Straight = readonly [Spot, Spot];

/** Whether some line that passes near a box passes a test. */
export type LinesNear = (box: Extent, test: (line: Straight) => boolean) => boolean;

/** Side of the squares by which lines are found, mm of paper. */
const CELL = 8;

/** Lines kept by the squares their boxes touch: a label asks only those about it, however many the drawing has. */
export function linesNear(lines: readonly Straight[]): LinesNear {
  const cells = new Map<number, Straight[]>();
  for (const line of lines) {
    for (const key of keysOf(boxOf(line))) {
      const here = cells.get(key);
      if (here === undefined) cells.set(key, [line]);
      else here.push(line);
    }
  }
  return (box, test) => keysOf(box).some((key) => cells.get(key)?.some(test) ?? false);
}

function boxOf([[ax, ay], [bx, by]]: Straight): Extent {
  return { x0: Math.min(ax, bx), x1: Math.max(ax, bx), y0: Math.min(ay, by), y1: Math.max(ay, by) };
}

/** Cells of a row; no drawing is so many cells wide. */
const ROW = 100_000;

function keysOf({ x0, x1, y0, y1 }: Extent): readonly number[] {
  const [left, right] = [Math.floor(x0 / CELL), Math.floor(x1 / CELL)];
  const [top, bottom] = [Math.floor(y0 / CELL), Math.floor(y1 / CELL)];
  const keys: number[] = [];
  for (let row = top; row <= bottom; row += 1) {
    for (let column = left; column <= right; column += 1) keys.push(row * ROW + column);
  }
  return keys;
}
