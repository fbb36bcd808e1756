import type { HardwareStock } from '../../stock/goods.ts';
import type { Goods } from '../goods.ts';
import { tidy } from '../machining.ts';
import { sameThread } from './measure.ts';

/** What a bolt must hold, mm: the wood, a washer at each end, its nut, and the rise of its thread. */
export type Bolted = {
  readonly grip: number;
  readonly washer: number;
  readonly nut: number;
  readonly pitch: number;
};

/** Shortest bolt: grip, two washers, nut and two threads beyond it (fastener makers' guides), mm. */
export function boltLength({ grip, washer, nut, pitch }: Bolted): number {
  return tidy(grip + 2 * washer + nut + 2 * pitch);
}

const IN = 25.4;

/**
 * Heights of nuts (ISO 4032), washers (ISO 7089) and coarse pitch (ISO 261) by thread, from memory; below them inch threads:
 * nuts by ASME B18.2.2, threads an inch by ASME B1.1, plain washers of 0.065 in (ASME B18.21.1, from memory); mm.
 */
const THREADS: readonly (Omit<Bolted, 'grip'> & { readonly thread: number })[] = [
  { thread: 5, washer: 1, nut: 4.7, pitch: 0.8 },
  { thread: 6, washer: 1.6, nut: 5.2, pitch: 1 },
  { thread: 8, washer: 1.6, nut: 6.8, pitch: 1.25 },
  { thread: 10, washer: 2, nut: 8.4, pitch: 1.5 },
  { thread: 12, washer: 2.5, nut: 10.8, pitch: 1.75 },
  { thread: IN / 4, washer: 0.065 * IN, nut: (7 * IN) / 32, pitch: IN / 20 },
  { thread: (5 * IN) / 16, washer: 0.065 * IN, nut: (17 * IN) / 64, pitch: IN / 18 },
  { thread: (3 * IN) / 8, washer: 0.065 * IN, nut: (21 * IN) / 64, pitch: IN / 16 },
];

/** Inch threads by the names they are bought by. */
const INCH_NAMES: readonly (readonly [number, string])[] = [
  [IN / 4, '1/4 in'],
  [(5 * IN) / 16, '5/16 in'],
  [(3 * IN) / 8, '3/8 in'],
];

/** A thread as it is bought: `M8`, `5/16 in`. */
export function threadName(thread: number): string {
  return INCH_NAMES.find(([inch]) => sameThread(inch, thread))?.[1] ?? `M${tidy(thread)}`;
}

/** A thread as it is written under `diameter` in a stock file. */
export function threadText(thread: number): string {
  return INCH_NAMES.find(([inch]) => sameThread(inch, thread))?.[1] ?? `${tidy(thread)} mm`;
}

/** A bolt with the nut and washer of its thread. */
export type Bolt = {
  readonly bolt: HardwareStock & { readonly length: number };
  readonly nut: HardwareStock;
  readonly washer: HardwareStock;
  /** from the wood to the bolt's end */
  readonly beyond: number;
};

/** Length a grip asks of a thread, mm; null for a thread nobody listed. */
export function lengthNeeded(thread: number, grip: number): number | null {
  const known = THREADS.find((one) => sameThread(one.thread, thread));
  return known === undefined ? null : boltLength({ grip, ...known });
}

/** Hole for a bolt, close fit (ISO 273 fine series; inch threads and 1/64 in, ASME B18.2.8; both from memory), mm. */
export function boltHole(thread: number): number {
  if (INCH_NAMES.some(([inch]) => sameThread(inch, thread))) return tidy(thread + IN / 64);
  return thread < 8 ? tidy(thread + 0.4) : thread < 10 ? 8.4 : tidy(thread + 0.5);
}

/** The shortest bolt in stock that is long enough, with its nut and washer; null when one of the three is missing. */
export function boltFor(goods: Goods, thread: number, grip: number): Bolt | null {
  const needed = lengthNeeded(thread, grip);
  const of = (form: HardwareStock['form']) =>
    goods.hardware.filter((one) => one.form === form && sameThread(one.diameter, thread));
  const bolt = of('bolt')
    .filter((one): one is Bolt['bolt'] => one.length !== null && needed !== null && one.length >= needed)
    .reduce<Bolt['bolt'] | null>((best, one) => (best === null || one.length < best.length ? one : best), null);
  const [nut, washer] = [of('nut')[0], of('washer')[0]];
  if (bolt === null || nut === undefined || washer === undefined) return null;
  return { bolt, nut, washer, beyond: tidy(bolt.length - grip) };
}

/** The longest bolt in stock that ends inside an insert, holding by at least its own diameter; null when none does. */
export function boltIntoInsert(
  goods: Goods,
  { thread, through, insert }: { readonly thread: number; readonly through: number; readonly insert: number },
): Bolt['bolt'] | null {
  return goods.hardware
    .filter(
      (one): one is Bolt['bolt'] => one.form === 'bolt' && sameThread(one.diameter, thread) && one.length !== null,
    )
    .filter(({ length }) => length >= through + thread && length <= through + insert)
    .reduce<Bolt['bolt'] | null>((best, one) => (best === null || one.length > best.length ? one : best), null);
}
