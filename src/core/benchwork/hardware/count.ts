import type { Finding } from '../../finding.ts';
import type { Fastener, HardwareUse } from '../../stock/fastener.ts';
import type { HardwareStock } from '../../stock/goods.ts';
import { length as long, type Sentence, say } from '../../units/say.ts';
import { slideLengths } from '../drawers/box.ts';
import type { Goods } from '../goods.ts';
import { told } from '../told.ts';
import { threadName, threadText } from './bolts.ts';
import { inMeasure, sameThread } from './measure.ts';

/** Equal items at one place as one line, by item and place in code unit order. */
export function counted(fasteners: readonly Fastener[], uses: readonly HardwareUse[]): readonly HardwareUse[] {
  const driven = fasteners.map(
    ({ item, length, holds }): HardwareUse => ({ item, quantity: 1, length, where: groupOf(holds) }),
  );
  const sums = new Map<string, HardwareUse>();
  for (const use of [...driven, ...uses.map((one) => ({ ...one, where: groupOf(one.where) }))]) {
    const key = `${use.item} ${use.where}`;
    const before = sums.get(key);
    sums.set(key, before === undefined ? use : { ...before, quantity: before.quantity + use.quantity });
  }
  return [...sums.entries()].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, use]) => use);
}

const GROUPS = /(?:^|\.)((?:drawer|leg|shelf|spacer)\.[a-z]+(?:-[a-z0-9]+)*|deck\.[0-9]+|flange)/;

/** `butt.drawer.front-2.front.drawer.front-2.face` is of `drawer.front-2`; a joint of the bare frame stands for itself. */
export function groupOf(holds: string): string {
  return GROUPS.exec(holds)?.[1] ?? holds;
}

type Wanted = {
  readonly form: HardwareStock['form'];
  readonly length?: number;
  readonly diameter?: number;
  readonly where: string;
};

/** The item of a form, and of a size where one is named; where none is, one sold in the measure that pages show. */
export function itemOf(goods: Goods, { form, length, diameter }: Omit<Wanted, 'where'>): HardwareStock | null {
  const formed = goods.hardware.filter((one) => one.form === form);
  const found = (length === undefined && diameter === undefined ? inMeasure(formed, goods) : formed).find(
    (one) =>
      (length === undefined || (one.length !== null && Math.abs(one.length - length) < 0.5)) &&
      (diameter === undefined || sameThread(one.diameter, diameter)),
  );
  return found ?? null;
}

export type Fetched = { readonly hardware: readonly HardwareUse[]; readonly findings: readonly Finding[] };

/** A number of one item, or a care that the stock files have none. */
export function fetched(goods: Goods | null, wanted: Wanted, quantity: number): Fetched {
  if (goods === null) return { hardware: [], findings: [] };
  const item = itemOf(goods, wanted);
  if (item !== null)
    return { hardware: [{ item: item.id, quantity, length: item.length, where: wanted.where }], findings: [] };
  return { hardware: [], findings: [lacking(goods, wanted, quantity)] };
}

function lacking(goods: Goods, { form, length, diameter, where }: Wanted, quantity: number): Finding {
  const size = sizeWords(length, diameter);
  const what = [...say`the stock files have no ${form}`, ...size];
  const about = { rule: 'hardware-not-in-stock', where, what, figure: quantity, limit: 0, unit: 'count' } as const;
  return told('care', { ...about, mend: [...exampleOf({ form, length, diameter }), ...insteadOf(goods, form)] });
}

function sizeWords(length: number | undefined, diameter: number | undefined): Sentence {
  if (diameter !== undefined) return say` for a thread of ${threadName(diameter)}`;
  return length === undefined ? say`` : say` ${long(length)} long`;
}

type Size = { readonly form: string; readonly length: number | undefined; readonly diameter: number | undefined };

/** An entry that would do, as it stands in a stock file. */
function exampleOf({ form, length, diameter }: Size): Sentence {
  const thread = diameter === undefined ? '' : `, diameter: ${threadText(diameter)}`;
  const along = length === undefined ? say`` : say`, length: ${long(length)}`;
  const head = say`add one under stock: in a file of content/stock, so that it is counted, for example "- { id: my-${form}, kind: hardware, name: ${form}, source: the shop, form: ${form}${thread}`;
  return [...head, ...along, ', pack: 1 }"'];
}

/** The lengths of that form that stock has. */
function insteadOf(goods: Goods, form: HardwareStock['form']): Sentence {
  if (form !== 'slide') return [];
  const lengths = slideLengths(goods);
  const listed = goods.hardware.some((one) => one.form === 'slide');
  return listed ? ['; in stock are ', ...lengths.flatMap((one, i) => (i === 0 ? [long(one)] : [', ', long(one)]))] : [];
}
