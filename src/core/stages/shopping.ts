import type { Area, CutSheet } from '../cutting/job.ts';
import type { HeadValues } from '../head.ts';
import type { SceneryModel } from '../scenery/model.ts';
import type { GoodsWanted, SheetWanted, Shopping } from '../shopping/line.ts';
import { shoppingFindings, shoppingList } from '../shopping/shopping.ts';
import type { HardwareUse } from '../stock/fastener.ts';
import type { Stock } from '../stock/goods.ts';

/** What the chapters ask for: their sheets, their hardware, and the land's covers. */
export type Asked = {
  readonly sheets: readonly CutSheet[];
  readonly hardware: readonly HardwareUse[];
  readonly scenery: SceneryModel | null;
  readonly stock: readonly Stock[];
  readonly head: HeadValues;
};

/** Stage 10: what to buy for all chapters. */
export function shoppingStage({ sheets, hardware, scenery, stock, head }: Asked) {
  const shopping: Shopping = shoppingList({
    sheets: sheets.filter(({ piece }) => piece === undefined).map(sheetWanted),
    goods: [...hardware.map((use) => hardwareWanted(use, stock)), ...landWanted(scenery)],
    stock,
    buying: head.buying,
    budget: head.budget,
  });
  return { shopping, findings: shoppingFindings(shopping, stock, head.buying.prices) };
}

function sheetWanted({ stock, length, width, parts, offcuts, chapter }: CutSheet): SheetWanted {
  const area = (areas: readonly Area[]) => areas.reduce((sum, one) => sum + one.length * one.width, 0);
  return { stock, length, width, parts: area(parts), kept: area(offcuts), for: chapter ?? 'benchwork' };
}

function hardwareWanted({ item, quantity }: HardwareUse, stock: readonly Stock[]): GoodsWanted {
  const name = stock.find(({ id }) => id === item)?.name ?? item;
  return { stock: item, name, unit: null, quantity, for: 'benchwork' };
}

/** The land's quantities; its foam is on the sheets already. */
function landWanted(scenery: SceneryModel | null): readonly GoodsWanted[] {
  return (scenery?.quantities ?? [])
    .filter(({ unit }) => unit !== 'sheet')
    .filter(({ buyUnit }) => buyUnit !== 'sheet')
    .map(({ stock, name, buy, buyUnit }) => ({ stock, name, unit: buyUnit, quantity: buy, for: 'scenery' }));
}
