import type { Point } from '../geometry/shapes.ts';
import type { CoverStock, SheetStock, Stock } from '../stock/goods.ts';
import { evaluate } from '../units/evaluate.ts';
import type { Fault } from '../units/problem.ts';
import type { Quantity, Scope } from '../units/quantity.ts';

/** Reads values and gathers what is wrong with them; a value that fails counts as 0 and the whole is refused. */
export type Reader = {
  readonly faults: Fault[];
  readonly number: (quantity: Quantity) => number;
  /** a value that must be more than nothing */
  readonly above: (quantity: Quantity, name: string) => number;
  /** a height over the deck, no more than a room has */
  readonly height: (quantity: Quantity, name: string) => number;
  readonly point: (pair: readonly [Quantity, Quantity]) => Point;
  readonly sheet: (id: string, at: string) => SheetStock | null;
  readonly cover: (id: string, at: string) => CoverStock | null;
};

/** No room holds land higher over its deck, mm. */
const HIGHEST = 2000;

export function readerOf(scope: Scope, stock: readonly Stock[]): Reader {
  const faults: Fault[] = [];
  const number = (quantity: Quantity): number => {
    const amount = evaluate(quantity, scope);
    if (amount.ok) return amount.value.value;
    faults.push(...amount.faults);
    return 0;
  };
  const known = (id: string, at: string, kind: Stock['kind']) => {
    const goods = stock.find((one) => one.id === id);
    if (goods?.kind === kind) return goods;
    faults.push(wrongStock(id, at, kind));
    return null;
  };
  return {
    faults,
    number,
    above(quantity, name) {
      const before = faults.length;
      const value = number(quantity);
      if (faults.length === before && value <= 0) faults.push(notAbove(quantity, name));
      return value;
    },
    height(quantity, name) {
      const value = number(quantity);
      if (value > HIGHEST) faults.push(tooHigh(quantity, name));
      return value;
    },
    point: ([x, y]) => [number(x), number(y)],
    sheet(id, at) {
      const goods = known(id, at, 'sheet');
      return goods?.kind === 'sheet' ? goods : null;
    },
    cover(id, at) {
      const goods = known(id, at, 'cover');
      return goods?.kind === 'cover' ? goods : null;
    },
  };
}

function notAbove({ at, text }: Quantity, name: string): Fault {
  return {
    rule: 'land-nothing',
    at,
    what: `${name} is ${text}, and must be more than 0`,
    mend: `write how much ${name} is, or take the whole entry off`,
  };
}

function tooHigh({ at, text }: Quantity, name: string): Fault {
  return {
    rule: 'land-too-high',
    at,
    what: `${name} is ${text}, which is over ${HIGHEST / 1000} m above the deck`,
    mend: `write how high it stands on the model; ${HIGHEST} mm at most`,
  };
}

function wrongStock(id: string, at: string, kind: Stock['kind']): Fault {
  const words = kind === 'sheet' ? 'a sheet' : 'something that covers or fills';
  return { rule: 'land-stock', at, what: `'${id}' is not ${words}`, mend: `name stock of kind \`${kind}\`` };
}
