import type { HardwareStock, Stock } from '../stock/goods.ts';
import { priceOfUnit } from '../stock/price.ts';
import type { GoodsWanted, ShoppingLine } from './line.ts';
import { type Buying, chaptersOf, times } from './sum.ts';

/** Hardware, wire, covers and the rest by stock, in the order of their names; what no stock is named for comes last. */
export function goodsLines(
  wanted: readonly GoodsWanted[],
  goods: readonly Stock[],
  buying: Buying,
): readonly ShoppingLine[] {
  const groups = new Map<string, GoodsWanted[]>();
  for (const one of wanted) {
    const key = one.stock === null ? `~${one.name}` : one.stock;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([id, alike]) => {
      const stock = goods.find((one) => one.id === id) ?? null;
      return lineOf(alike, stock, buying);
    })
    .filter((line) => line.quantity !== 0);
}

function lineOf(alike: readonly GoodsWanted[], stock: Stock | null, buying: Buying): ShoppingLine {
  const need = alike.some(({ quantity }) => quantity === null)
    ? null
    : alike.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
  const inHand = (stock === null ? undefined : buying.inHand[stock.id]) ?? 0;
  const reels = reelsOf(alike);
  const bought = quantities(stock, {
    need: stock?.kind === 'wire' ? metresOf(reels, need) : need,
    inHand,
    spares: buying.spares,
  });
  const each = stock === null ? null : priceOfUnit(stock, buying.prices);
  const [first] = alike;
  return {
    stock: stock?.id ?? first?.stock ?? null,
    name: `${stock?.name ?? first?.name ?? ''}${reelsSaid(reels)}`,
    unit: unitOf(stock) ?? first?.unit ?? 'piece',
    size: null,
    ...bought,
    inHand,
    waste: null,
    each,
    price: bought.quantity === null ? null : times(each, bought.quantity),
    for: chaptersOf(alike),
  };
}

type Reel = { readonly colour: string; readonly metres: number };

/** Whole metres of each colour that is asked for, in the order they are. */
function reelsOf(alike: readonly GoodsWanted[]): readonly Reel[] {
  const colours = [...new Set(alike.flatMap(({ colour }) => colour ?? []))];
  return colours.map((colour) => {
    const mine = alike.filter((one) => one.colour === colour);
    return { colour, metres: whole(mine.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0) / 1000) };
  });
}

/** What all reels come to, mm; the need itself where none has a colour. */
function metresOf(reels: readonly Reel[], need: number | null): number | null {
  return reels.length === 0 || need === null ? need : reels.reduce((sum, { metres }) => sum + metres * 1000, 0);
}

function reelsSaid(reels: readonly Reel[]): string {
  return reels.length === 0 ? '' : ` (${reels.map(({ colour, metres }) => `${colour} ${metres} m`).join(', ')})`;
}

type Asked = { readonly need: number | null; readonly inHand: number; readonly spares: number };
type Bought = Pick<ShoppingLine, 'quantity' | 'counted' | 'over'>;

/** What drops and rolls away; casters, slides, brackets and catches don't. */
const SMALL: readonly HardwareStock['form'][] = ['screw', 'bolt', 'nut', 'washer', 'insert'];

/** Whole packs of hardware, of the small sort with its spares; metres of wire; all else as asked. */
function quantities(stock: Stock | null, { need, inHand, spares }: Asked): Bought {
  if (need === null) return { quantity: null, counted: null, over: null };
  if (stock?.kind === 'wire') return { quantity: whole(Math.max(0, need / 1000 - inHand)), counted: null, over: null };
  if (stock?.kind !== 'hardware' && stock?.kind !== 'caster')
    return { quantity: whole(Math.max(0, need - inHand)), counted: null, over: null };
  const pack = stock.kind === 'hardware' ? Math.max(1, stock.pack) : 1;
  const small = stock.kind === 'hardware' && SMALL.includes(stock.form);
  const wanted = small ? whole(need * (1 + spares)) : need;
  const quantity = whole(Math.max(0, wanted - inHand) / pack);
  return { quantity, counted: need, over: quantity * pack + inHand - need };
}

/** Whole units, noise of the last bits left out. */
function whole(amount: number): number {
  return Math.ceil(amount - 1e-9) + 0;
}

function unitOf(stock: Stock | null): string | null {
  switch (stock?.kind) {
    case 'hardware':
      return stock.pack > 1 ? `pack of ${stock.pack}` : 'piece';
    case 'caster':
      return 'piece';
    case 'cover':
      return stock.unit;
    case 'wire':
      return 'metre';
    case 'sheet':
    case 'board':
      return stock.kind;
    default:
      return null;
  }
}
