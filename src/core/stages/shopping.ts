import type { Area, CutSheet } from '../cutting/job.ts';
import type { HeadValues } from '../head.ts';
import type { SceneryModel } from '../scenery/model.ts';
import type { GoodsWanted, SheetWanted, Shopping } from '../shopping/line.ts';
import { shoppingFindings, shoppingList } from '../shopping/shopping.ts';
import type { HardwareUse } from '../stock/fastener.ts';
import type { Stock } from '../stock/goods.ts';
import type { TrackSupplies } from '../track/supplies.ts';
import type { WiringModel } from '../wiring/wiring.ts';
import { roadbedWanted, trackWanted } from './track-wanted.ts';
import { wiresWanted } from './wires-wanted.ts';

/** What the chapters ask for: sheets, hardware, track, wires and the land's covers. */
export type Asked = {
  readonly sheets: readonly CutSheet[];
  readonly hardware: readonly HardwareUse[];
  readonly scenery: SceneryModel | null;
  readonly supplies: TrackSupplies | null;
  readonly wiring: WiringModel | null;
  readonly stock: readonly Stock[];
  readonly head: HeadValues;
  /** the measure of names that hold a length */
  readonly show: 'mm' | 'in';
};

/** Stage 10: what to buy for all chapters. */
export function shoppingStage({ sheets, hardware, scenery, supplies, wiring, stock, head, show }: Asked) {
  const cut = sheets.filter(({ piece }) => piece === undefined).map(sheetWanted);
  const shopping: Shopping = shoppingList({
    sheets: [...cut, ...roadbedWanted(supplies, stock)],
    goods: [
      ...hardware.map((use) => hardwareWanted(use, stock)),
      ...trackWanted(supplies, show),
      ...wiresWanted(wiring, stock),
      ...landWanted(scenery),
    ],
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
