import { type Bed, isLinear, kerfTicks, type Laydown, laydowns, levelsOf } from './bed.ts';
import type { Ground } from './forest.ts';
import type { Pieces } from './insertion.ts';
import type { CutJob, CutPart, Unplaced, UnplacedReason } from './job.ts';
import { isSize, LONGEST, SMALLEST, TICK, ticksUp } from './tick.ts';

/** Most instances one search takes. */
export const MOST_PARTS = 20_000;

/** One kind of sheet as the search sees it. */
export type Kind = {
  readonly grounds: readonly Ground[];
  /** the sheet without its trim, spots that can't be used included */
  readonly whole: Ground;
  /** grounds' area together, square ticks */
  readonly area: number;
  readonly price: number;
  /** how many there are; Infinity when as many as asked */
  readonly count: number;
};

/** A job without units: pieces to lay on grounds. `ids` names the part of each piece. */
export type Task = {
  readonly pieces: Pieces;
  readonly parts: readonly CutPart[];
  readonly partOf: Int32Array;
  readonly kinds: readonly Kind[];
  readonly laydowns: readonly Laydown[];
  readonly kerf: number;
  /** most rounds of cuts */
  readonly levels: number;
  readonly unplaced: readonly Unplaced[];
};

type Sized = {
  readonly part: CutPart;
  readonly index: number;
  readonly w: number;
  readonly h: number;
  readonly turns: boolean;
};

/** Sorts out what can't be cut, and turns the rest into whole ticks grown by one kerf. */
export function taskOf(job: CutJob): Task {
  const whole = Number.isFinite(job.kerf) && job.kerf >= 0 && Number.isFinite(job.trim) && job.trim >= 0;
  const laid = whole ? laydowns(job) : [];
  const kerf = whole ? kerfTicks(job) : 0;
  const kinds = laid.map((lay, index) => kindOf(job, { lay, index }));
  const unplaced: Unplaced[] = [];
  const sized: Sized[] = [];
  const how = { linear: isLinear(job), grained: job.stock.some((stock) => stock.grain !== 'any'), kerf };
  let room = MOST_PARTS;
  for (const [index, part] of job.parts.entries()) {
    const entry = sizeOf({ part, index }, how);
    const why = refusal(entry, kinds, how.linear);
    const taken = why === null ? Math.min(part.quantity, room) : 0;
    room -= taken;
    if (taken > 0) sized.push({ ...entry, part: { ...part, quantity: taken } });
    const left = whole && Number.isInteger(part.quantity) ? part.quantity - taken : part.quantity;
    if (left !== 0) unplaced.push(refused(part, { quantity: left, why: why ?? 'too-many', laid, turns: entry.turns }));
  }
  return { ...spread(sized), parts: job.parts, kinds, laydowns: laid, kerf, levels: levelsOf(job), unplaced };
}

type Which = { readonly part: CutPart; readonly index: number };
type How = { readonly linear: boolean; readonly grained: boolean; readonly kerf: number };

function sizeOf({ part, index }: Which, { linear, grained: sheets, kerf }: How): Sized {
  const grained = sheets && part.grain !== 'any';
  const crossed = grained && part.grain === 'width';
  const [along, across] = crossed ? [part.width, part.length] : [part.length, part.width];
  const h = linear && part.width === 0 ? kerf + 1 : ticksUp(across) + kerf;
  return { part, index, w: ticksUp(along) + kerf, h, turns: !grained && !linear && along !== across };
}

function refusal(entry: Sized, kinds: readonly Kind[], linear: boolean): UnplacedReason | null {
  const { part, w, h, turns } = entry;
  const real = isSize(part.length) && (isSize(part.width) || (linear && part.width === 0));
  if (Math.min(part.length, linear && part.width === 0 ? part.length : part.width) < SMALLEST) return 'not-a-size';
  if (!real || !Number.isInteger(part.quantity) || part.quantity < 0) return 'not-a-size';
  if (Math.max(part.length, part.width) > LONGEST) return 'too-large';
  const fits = (g: Ground) => (w <= g.w && h <= g.h) || (turns && h <= g.w && w <= g.h);
  return kinds.some((kind) => kind.grounds.some(fits)) ? null : 'too-large';
}

type Refusal = {
  readonly quantity: number;
  readonly why: UnplacedReason;
  readonly laid: readonly Laydown[];
  readonly turns: boolean;
};

/** A part without a place, with the bed that would take most of it. */
export function refused(part: CutPart, { quantity, why, laid, turns }: Refusal): Unplaced {
  const ways = laid.flatMap((lay) => lay.beds.flatMap((bed) => largestOn(bed, { part, turns })));
  const share = (way: { length: number; width: number }) =>
    Math.min(1, way.length / part.length) * Math.min(1, part.width === 0 ? 1 : way.width / part.width);
  const best = ways.reduce<(typeof ways)[number] | null>((a, b) => (a === null || share(b) > share(a) ? b : a), null);
  return { part: part.id, quantity: Number.isFinite(quantity) ? quantity : 0, largest: best, why };
}

function largestOn(bed: Bed, { part, turns }: { readonly part: CutPart; readonly turns: boolean }) {
  const { x, y, length, width } = bed.area;
  const straight = { x, y, length, width };
  const turned = { x, y, length: width, width: length };
  if (turns) return [straight, turned];
  return (part.grain === 'width') === bed.across || part.grain === 'any' ? [straight] : [turned];
}

function kindOf(job: CutJob, { lay, index }: { readonly lay: Laydown; readonly index: number }): Kind {
  const stock = job.stock[index];
  const grounds = lay.beds.map((bed) => bed.ground);
  const count = stock?.count ?? null;
  const area = grounds.reduce((sum, g) => sum + g.w * g.h, 0);
  const most =
    count === null ? (stock?.offcut === true ? 1 : Number.POSITIVE_INFINITY) : Math.max(0, Math.floor(count) || 0);
  return { grounds, whole: lay.whole, area, price: priceOf(job, { index, area }), count: most };
}

/** Offcuts cost nothing. Where no sheet has a price, sheets cost their area. */
function priceOf(job: CutJob, { index, area }: { readonly index: number; readonly area: number }): number {
  const stock = job.stock[index];
  if (stock === undefined || stock.offcut) return 0;
  const known = job.stock.some((one) => !one.offcut && isSize(one.price));
  return known ? (isSize(stock.price) ? stock.price : 1e-9) : area * TICK * TICK;
}

function spread(sized: readonly Sized[]): { readonly pieces: Pieces; readonly partOf: Int32Array } {
  const all = sized.flatMap((entry) => Array.from({ length: entry.part.quantity }, () => entry));
  const number = new Map<string, number>();
  const likeOf = (e: Sized) => {
    const key = `${e.w} ${e.h} ${e.turns}`;
    const like = number.get(key) ?? number.size;
    number.set(key, like);
    return like;
  };
  return {
    pieces: {
      ...{ count: all.length, w: Float64Array.from(all, (e) => e.w), h: Float64Array.from(all, (e) => e.h) },
      ...{ turns: Uint8Array.from(all, (e) => Number(e.turns)), like: Int32Array.from(all, likeOf) },
    },
    partOf: Int32Array.from(all, (e) => e.index),
  };
}
