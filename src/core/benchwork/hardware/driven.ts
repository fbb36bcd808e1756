import type { Finding } from '../../finding.ts';
import type { Pose, Vector } from '../../geometry/shapes.ts';
import { placed, turned } from '../../geometry/vector.ts';
import type { Fastener, HardwareUse } from '../../stock/fastener.ts';
import type { HardwareStock } from '../../stock/goods.ts';
import { atLeast, length, say } from '../../units/say.ts';
import type { Goods } from '../goods.ts';
import { tidy } from '../machining.ts';
import { told } from '../told.ts';
import { type Bolt, boltFor, lengthNeeded, threadName, threadText } from './bolts.ts';
import { groupOf } from './count.ts';
import { longestScrew, type Screwed, screwFor, shortestScrew, usualDiameter } from './screws.ts';

/** Screws or bolts of one kind: where their heads lie and which way they go, in the coordinates of `view`. */
export type Drive = {
  readonly view: Pose;
  /** the joint or thing they hold */
  readonly holds: string;
  readonly heads: readonly Vector[];
  readonly direction: Vector;
  readonly through: readonly string[];
};

export type Driven = {
  readonly fasteners: readonly Fastener[];
  readonly hardware: readonly HardwareUse[];
  readonly findings: readonly Finding[];
};

export const UNDRIVEN: Driven = { fasteners: [], hardware: [], findings: [] };

/** Screws that never come through, or a halt with the lengths that would do; nothing where nobody counts. */
export function screwed(goods: Goods | null, drive: Drive, wood: Screwed): Driven {
  if (goods === null || drive.heads.length === 0) return UNDRIVEN;
  const screw = screwFor(goods, wood);
  if (screw === null) return { ...UNDRIVEN, findings: [noScrew(goods, drive.holds, wood)] };
  return {
    ...UNDRIVEN,
    fasteners: fasteners(drive, { form: 'screw', item: screw.id, diameter: screw.diameter, length: screw.length }),
  };
}

type Kind = Pick<Fastener, 'form' | 'item' | 'diameter' | 'length'>;

function fasteners({ view, holds, heads, direction, through }: Drive, kind: Kind): readonly Fastener[] {
  const clean = ([x, y, z]: Vector): Vector => [tidy(x), tidy(y), tidy(z)];
  return heads.map((head, i) => ({
    id: `${kind.form}.${holds}.${i + 1}`,
    ...kind,
    holds,
    head: clean(placed(view, head)),
    direction: clean(turned(view, direction)),
    through,
  }));
}

/** Small screws through metal into one piece of wood; a care where stock has none that stays inside. */
export function metalScrewed(goods: Goods | null, drive: Drive, wood: Screwed): Driven {
  const driven = screwed(goods, drive, wood);
  const where = groupOf(drive.holds);
  const cares = driven.findings.map(
    (one): Finding => ({ ...one, where, rule: 'metal-screw-not-in-stock', level: 'care' }),
  );
  return { ...driven, findings: cares };
}

/** Several drives as one. */
export function drivenTogether(all: readonly Driven[]): Driven {
  return {
    fasteners: all.flatMap((one) => one.fasteners),
    hardware: all.flatMap((one) => one.hardware),
    findings: all.flatMap((one) => one.findings),
  };
}

/** Bolts of one item from stock, into inserts of one piece. */
export function intoInserts(drive: Drive, bolt: HardwareStock & { readonly length: number }): Driven {
  const kind: Kind = { form: 'bolt', item: bolt.id, diameter: bolt.diameter ?? 0, length: bolt.length };
  return { ...UNDRIVEN, fasteners: fasteners(drive, kind) };
}

function noScrew(goods: Goods, where: string, wood: Screwed): Finding {
  const usual = usualDiameter(wood, goods.show);
  const [least, most] = [shortestScrew(wood, usual), longestScrew(wood, usual)];
  const what = say`no screw in the stock files holds here without coming through ${length(wood.through + wood.into)}`;
  const mend =
    least <= most
      ? say`add one about ${length(usual)} thick and ${length(least)} to ${length(most)} long (form: screw) to a stock file`
      : say`use wood at least ${atLeast(least + 1 - wood.through)} thick behind it`;
  return told('halt', {
    rule: 'no-screw-fits',
    where,
    what,
    figure: tidy(wood.through + wood.into),
    limit: least,
    mend,
  });
}

/** Bolts with nut and two washers each; a halt with the length needed when stock has none. */
export function bolted(
  goods: Goods | null,
  drive: Drive,
  { thread, grip }: { readonly thread: number; readonly grip: number },
): Driven {
  if (goods === null || drive.heads.length === 0) return UNDRIVEN;
  const found = boltFor(goods, thread, grip);
  if (found === null) return { ...UNDRIVEN, findings: [noBolt(drive.holds, { thread, grip })] };
  const kind: Kind = { form: 'bolt', item: found.bolt.id, diameter: thread, length: found.bolt.length };
  return { fasteners: fasteners(drive, kind), hardware: nuts(found, drive), findings: [] };
}

function nuts({ nut, washer }: Bolt, { heads, holds }: Drive): readonly HardwareUse[] {
  return [
    { item: nut.id, quantity: heads.length, length: null, where: holds },
    { item: washer.id, quantity: 2 * heads.length, length: null, where: holds },
  ];
}

function noBolt(where: string, { thread, grip }: { readonly thread: number; readonly grip: number }): Finding {
  const needed = lengthNeeded(thread, grip);
  const what = say`the stock files have no bolt ${threadName(thread)} with its nut and washer for a grip of ${length(grip)}`;
  const mend =
    needed === null
      ? say`use a thread of M5, M6, M8, M10, M12, 1/4 in, 5/16 in or 3/8 in`
      : say`add a bolt of diameter: ${threadText(thread)} at least ${atLeast(needed)} long (form: bolt), its nut (form: nut) and its washer (form: washer) to a stock file`;
  return told('halt', {
    rule: 'no-bolt-fits',
    where,
    what,
    figure: grip,
    limit: needed,
    mend,
    source: 'ISO 4032, ISO 7089, ISO 261 (from memory), ASME B18.2.2',
  });
}
