import type { Finding } from '../../finding.ts';
import type { Fastener, HardwareUse } from '../../stock/fastener.ts';
import type { HardwareStock } from '../../stock/goods.ts';
import { length as long, say } from '../../units/say.ts';
import type { Goods } from '../goods.ts';
import { told } from '../told.ts';

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

/** The item of a form, and of a size where one is named. */
export function itemOf(goods: Goods, { form, length, diameter }: Omit<Wanted, 'where'>): HardwareStock | null {
  const found = goods.hardware.find(
    (one) =>
      one.form === form &&
      (length === undefined || (one.length !== null && Math.abs(one.length - length) < 0.5)) &&
      (diameter === undefined || one.diameter === diameter),
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
  const what = say`the stock files have no ${wanted.form} for ${wanted.where}`;
  const size = wanted.length === undefined ? say`` : say` of ${long(wanted.length)}`;
  const mend = [...say`add a ${wanted.form}`, ...size, ' to a stock file, so that it is counted'];
  return {
    hardware: [],
    findings: [
      told('care', { rule: 'hardware-not-in-stock', where: wanted.where, what, figure: null, limit: null, mend }),
    ],
  };
}
