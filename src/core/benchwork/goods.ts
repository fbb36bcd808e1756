import type { CoverStock, HardwareStock } from '../stock/goods.ts';

/** Hardware in the stock files; null in a site where nobody counts. `show` prefers sizes sold in that measure. */
export type Goods = {
  readonly hardware: readonly HardwareStock[];
  readonly covers: readonly CoverStock[];
  readonly show: 'mm' | 'in';
};
