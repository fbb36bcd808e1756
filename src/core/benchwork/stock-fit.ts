import type { Finding } from '../finding.ts';
import type { BoardStock, SheetStock } from '../stock/goods.ts';
import type { Blank, Part } from '../stock/part.ts';
import { atLeast, atMost, length, say } from '../units/say.ts';

/** A size of stock as one rectangle, `long` along its grain. */
type Piece = { readonly long: number; readonly short: number; readonly free: boolean };

/** Sizes a stock is sold in. */
function pieces(stock: SheetStock | BoardStock): readonly Piece[] {
  if (stock.kind === 'board') return stock.lengths.map((long) => ({ long, short: stock.width, free: false }));
  return stock.sizes.map(({ length: l, width: w, grain }) => {
    const [long, short] = grain === 'width' ? [w, l] : [l, w];
    return { long, short, free: grain === 'any' };
  });
}

/** Whether a rectangle can be cut from the piece, lying with the grain or either way. */
function holds(piece: Piece, blank: Blank): boolean {
  const straight = blank.length <= piece.long && blank.width <= piece.short;
  const turned = blank.length <= piece.short && blank.width <= piece.long;
  if (blank.grain === 'length') return straight || (piece.free && turned);
  if (blank.grain === 'width') return turned || (piece.free && straight);
  return straight || turned;
}

/** Whether some size of the stock holds the blank. */
export function fitsStock(stock: SheetStock | BoardStock, blank: Blank): boolean {
  return pieces(stock).some((piece) => holds(piece, blank));
}

function hasGrain(stock: SheetStock | BoardStock): boolean {
  return stock.kind === 'board' || stock.material === 'plywood' || stock.material === 'osb';
}

/** The grain a long part is given: along it where the stock allows, else any way. */
export function grainFor(stock: SheetStock | BoardStock, blank: Blank): Blank['grain'] {
  return hasGrain(stock) && fitsStock(stock, blank) ? 'length' : 'any';
}

/** The size of the stock that comes nearest to holding the blank: the most of its area. */
function nearest(stock: SheetStock | BoardStock, blank: Blank): Piece {
  const covered = (piece: Piece) =>
    Math.max(
      Math.min(piece.long, blank.length) * Math.min(piece.short, blank.width),
      Math.min(piece.short, blank.length) * Math.min(piece.long, blank.width),
    );
  return pieces(stock).reduce((best, piece) => (covered(piece) > covered(best) ? piece : best), {
    long: 0,
    short: 0,
    free: true,
  });
}

/** A part no size of its stock holds (halt), or only across the grain (care). */
export function stockFitFindings(part: Part, stock: SheetStock | BoardStock): readonly Finding[] {
  const { blank } = part;
  const about = { where: part.id, chapter: part.chapter, unit: 'mm', accepted: null } as const;
  if (!fitsStock(stock, blank)) {
    const most = nearest(stock, blank);
    const across = Math.max(0, Math.min(blank.width, most.short));
    return [
      {
        ...about,
        rule: 'larger-than-stock',
        level: 'halt',
        what: say`${part.label} is ${length(blank.length)} by ${length(blank.width)}; no size of ${stock.id} holds it`,
        figure: blank.length,
        limit: most.long,
        mend: say`make it at most ${atMost(most.long)} by ${atMost(across)}, part it at a seam, or choose a stock that comes larger`,
        source: stock.source,
      },
    ];
  }
  if (!hasGrain(stock) || blank.grain !== 'any') return [];
  return [
    {
      ...about,
      rule: 'grain-across',
      level: 'care',
      what: say`${part.label} fits ${stock.id} only with the face grain across it, where it is less stiff`,
      figure: blank.length,
      limit: nearest(stock, { ...blank, grain: 'length' }).long,
      mend: say`choose a size whose grain runs at least ${atLeast(blank.length)}`,
      source: 'common practice, no source',
    },
  ];
}
