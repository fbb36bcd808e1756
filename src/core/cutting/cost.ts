import type { CutJob, CutSheet } from './job.ts';

/** Price of the sheets a layout uses; offcuts in hand cost nothing. In the stock's money. */
export function costOfSheets(job: CutJob, sheets: readonly CutSheet[]): number {
  const price = new Map(
    job.stock.map((stock) => [stock.id, stock.offcut || !Number.isFinite(stock.price) ? 0 : stock.price]),
  );
  return sheets.reduce((sum, sheet) => sum + (price.get(sheet.stock) ?? 0), 0);
}

/** Which sheets a part's pieces come from, by index, once a piece: parts remember their sheet, and so its thickness. */
export function sheetsByPart(sheets: readonly CutSheet[]): ReadonlyMap<string, readonly number[]> {
  const found = new Map<string, number[]>();
  for (const [index, sheet] of sheets.entries()) {
    for (const { part } of sheet.parts) found.set(part, [...(found.get(part) ?? []), index]);
  }
  return found;
}

/** Sheets that are cut alike, as lists of their indexes: the first of each is the pattern. */
export function patterns(sheets: readonly CutSheet[]): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  for (const [index, sheet] of sheets.entries()) {
    const key = JSON.stringify([sheet.stock, sheet.parts.map(({ x, y, length, width }) => [x, y, length, width])]);
    groups.set(key, [...(groups.get(key) ?? []), index]);
  }
  return [...groups.values()];
}
