import type { CutBound, CutJob, CutStock } from './job.ts';
import { layOut } from './layout.ts';
import { isBought } from './parts-job.ts';
import type { CutLot } from './yard-lot.ts';

/** How many new sheets of each stock and thickness are used, and how few any layout of this style can do with. */
export function boundsOfLots(lots: readonly CutLot[]): readonly CutBound[] {
  return alike(lots).map((group) => {
    const stock = group[0]?.lot.goods.id ?? '';
    const found = group.reduce((sum, one) => sum + newSheets(one), 0);
    const whole = group.every(({ answer }) => answer.unplaced.length === 0);
    const bound = whole ? Math.min(found, fewest(group.map(({ job }) => job))) : 0;
    return { stock, found, bound, proved: whole && found === bound };
  });
}

function newSheets({ answer }: CutLot): number {
  return answer.sheets.filter((sheet) => isBought(sheet.stock)).length;
}

/** Lots of one stock and one thickness, whatever their chapter: they could share a sheet. */
function alike(lots: readonly CutLot[]): readonly (readonly CutLot[])[] {
  const groups = new Map<string, CutLot[]>();
  for (const one of lots) {
    const key = `${one.lot.goods.id} ${one.lot.thickness}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

/**
 * The bound of all chapters laid out together; the pieces in hand of the first lot are all there are. What fits nothing
 * else must come from its size; and of one size, what new sheets alone would need, less the pieces in hand, since none
 * of them holds more than a new sheet.
 */
function fewest(jobs: readonly CutJob[]): number {
  const [first] = jobs;
  if (first === undefined) return 0;
  const joint: CutJob = { ...first, parts: jobs.flatMap(({ parts }) => parts), budget: 0 };
  return Math.max(bought(joint), bought(withoutPieces(joint)) - piecesIn(joint), byArea(joint));
}

/** What the pieces in hand can't hold by their area needs so many of the largest new sheet. */
function byArea(job: CutJob): number {
  const area = ({ length, width }: Pick<CutStock, 'length' | 'width'>) => length * (width > 0 ? width : 1);
  const parts = job.parts.reduce((sum, part) => sum + area(part) * part.quantity, 0);
  const pieces = job.stock.filter(({ id }) => !isBought(id));
  const inHand = pieces.reduce((sum, piece) => sum + area(piece) * (piece.count ?? Number.POSITIVE_INFINITY), 0);
  const largest = Math.max(...job.stock.filter(({ id }) => isBought(id)).map(area));
  return largest > 0 ? Math.max(0, Math.ceil((parts - inHand) / largest - 1e-9)) : 0;
}

function bought(job: CutJob): number {
  const { bounds } = layOut(job);
  return bounds.filter(({ stock }) => isBought(stock)).reduce((sum, { bound }) => sum + bound, 0);
}

function withoutPieces(job: CutJob): CutJob {
  return { ...job, stock: job.stock.filter(({ id }) => isBought(id)) };
}

/** How many pieces are in hand; beyond counting when one of them is larger than a trimmed new sheet. */
function piecesIn(job: CutJob): number {
  const [size, another] = job.stock.filter(({ id }) => isBought(id));
  if (size === undefined || another !== undefined) return Number.POSITIVE_INFINITY;
  const pieces = job.stock.filter(({ id }) => !isBought(id));
  const within = (piece: CutStock) =>
    piece.length <= size.length - 2 * job.trim && piece.width <= size.width - 2 * (size.width > 0 ? job.trim : 0);
  if (!pieces.every((piece) => !piece.offcut || within(piece))) return Number.POSITIVE_INFINITY;
  return pieces.reduce((sum, { count }) => sum + (count ?? Number.POSITIVE_INFINITY), 0);
}
