import type { Pose, Vector } from '../../geometry/shapes.ts';
import type { HardwareUse } from '../../stock/fastener.ts';
import type { CasterStock } from '../../stock/goods.ts';
import type { Envelope } from '../../stock/part.ts';
import { length, say } from '../../units/say.ts';
import { type Fitting, NOTHING, type Site } from '../fitting.ts';
import type { Goods } from '../goods.ts';
import { boltIntoInsert, threadName, threadText } from '../hardware/bolts.ts';
import { fetched, itemOf } from '../hardware/count.ts';
import { type Drive, intoInserts, UNDRIVEN } from '../hardware/driven.ts';
import type { LegsInput, Stand } from '../input.ts';
import { tidy } from '../machining.ts';
import { inBench } from '../side-view.ts';
import { told } from '../told.ts';
import type { LegFigures } from './figures.ts';
import { type PadFigures, padId, pattern, UP } from './pad.ts';

/** A caster's plate and a stem's thread nobody measured, an insert's hole beyond its thread; common practice, no source. mm. */
const PLATE = 3;
const STEM = 8;
const INSERT_ROUND = 2;
/** Washer under a bolt's head (ISO 7089, M6 to M8, from memory), mm. */
const WASHER = 1.6;

/** A caster of this leg: the braked ones in front, others behind where the plan names them. */
export function casterOf(stand: Stand, leg: string): CasterStock | null {
  if (stand.kind !== 'caster') return null;
  return stand.free !== null && leg.includes('back') ? stand.free : stand.caster;
}

/** From the floor to the leg's end, mm. */
export function standHeight(stand: Stand, leg: string): number {
  if (stand.kind === 'foot') return stand.height;
  return casterOf(stand, leg)?.overallHeight ?? 0;
}

/** The plate a pad must carry, mm; a stem or a foot asks for room round its insert. */
export function plateOf(stand: Stand, leg: string): readonly [number, number] {
  const caster = casterOf(stand, leg);
  return caster?.plate ?? (stand.kind === 'floor' ? [0, 0] : [40, 40]);
}

/** How thick a caster's plate is taken, mm. */
export function plateThickness(caster: CasterStock): number {
  return caster.plateThickness ?? PLATE;
}

/** Thread of what goes into a pad: a plate's bolts, a stem, a foot; mm. */
export function standThread(stand: Stand, leg: string): number {
  if (stand.kind === 'foot') return stand.foot.diameter ?? STEM;
  const caster = casterOf(stand, leg);
  return (caster?.mount === 'plate' ? caster.bolts?.diameter : caster?.stem) ?? STEM;
}

/** Hole for an insert of this thread, as its stock says; mm. */
export function insertHole(goods: Goods | null, thread: number): number {
  const insert = goods === null ? null : itemOf(goods, { form: 'insert', diameter: thread });
  return insert?.hole ?? tidy(thread + INSERT_ROUND);
}

/** Holes in the pad for inserts, from its underside. */
export function standHoles(
  { input: { stand }, goods }: Pick<LegFigures, 'input' | 'goods'>,
  leg: string,
  middle: readonly [number, number],
): { readonly at: readonly (readonly [number, number])[]; readonly diameter: number } {
  const caster = casterOf(stand, leg);
  if (caster?.mount === 'plate' && caster.bolts !== null) {
    return { at: pattern(middle, caster.bolts.spacing), diameter: insertHole(goods, caster.bolts.diameter) };
  }
  if (stand.kind === 'floor') return { at: [], diameter: 0 };
  return { at: [middle], diameter: insertHole(goods, standThread(stand, leg)) };
}

type Under = {
  readonly view: Pose;
  readonly leg: string;
  /** the leg, or which of its feet */
  readonly foot: string;
  readonly middle: readonly [number, number];
  readonly pad: PadFigures;
};

type Stood = Pick<Fitting, 'fasteners' | 'hardware' | 'envelopes' | 'findings'>;

/** What a pad stands on: its hardware and the circle its wheel sweeps. */
export function standing(site: Site, { stand }: LegsInput, under: Under): Stood {
  if (stand.kind === 'floor') return NOTHING;
  if (stand.kind === 'foot') {
    const insert = fetched(
      site.goods,
      { form: 'insert', diameter: standThread(stand, under.foot), where: under.leg },
      1,
    );
    const foot: HardwareUse = { item: stand.foot.id, quantity: 1, length: stand.foot.length, where: under.leg };
    const hardware = site.goods === null ? [] : [foot, ...insert.hardware];
    return { fasteners: [], hardware, envelopes: [], findings: insert.findings };
  }
  const caster = casterOf(stand, under.foot);
  if (caster === null) return NOTHING;
  const held = casterHardware(site, caster, { under, thread: standThread(stand, under.foot) });
  return { ...held, envelopes: [circle(caster, under)] };
}

function circle(caster: CasterStock, { view, foot, leg, middle: [u, v] }: Under): Envelope {
  const r = caster.swivelRadius;
  const box = inBench(view, [tidy(u - r), tidy(v - r), 0], [tidy(u + r), tidy(v + r), caster.overallHeight]);
  return { id: `${foot}.caster`, of: leg, kind: 'caster', ...box };
}

function casterHardware(
  site: Site,
  caster: CasterStock,
  { under, thread }: { readonly under: Under; readonly thread: number },
): Pick<Fitting, 'fasteners' | 'hardware' | 'findings'> {
  if (site.goods === null) return UNDRIVEN;
  const { leg: where, view, pad } = under;
  const wheel: HardwareUse = { item: caster.id, quantity: 1, length: null, where };
  const count = pad.holes.length;
  const insert = fetched(site.goods, { form: 'insert', diameter: thread, where }, count);
  if (caster.mount === 'stem')
    return { fasteners: [], hardware: [wheel, ...insert.hardware], findings: insert.findings };
  const washer = fetched(site.goods, { form: 'washer', diameter: thread, where }, count);
  const deep = itemOf(site.goods, { form: 'insert', diameter: thread })?.length ?? 0;
  const through = plateThickness(caster) + WASHER;
  const bolt = boltIntoInsert(site.goods, { thread, through, insert: deep });
  const piece = padId(pad, 1);
  const heads = pad.holes.map(([u, v]): Vector => [u, v, tidy(pad.low - through)]);
  const drive: Drive = { view, holds: `caster.${piece}`, heads, direction: UP, through: [piece] };
  const bolts = bolt === null ? UNDRIVEN : intoInserts(drive, bolt);
  const missing = bolt === null && deep > 0 ? [noCasterBolt(where, { thread, through, deep })] : [];
  return {
    fasteners: bolts.fasteners,
    hardware: [wheel, ...insert.hardware, ...washer.hardware],
    findings: [...insert.findings, ...washer.findings, ...missing],
  };
}

function noCasterBolt(
  where: string,
  { thread, through, deep }: { readonly thread: number; readonly through: number; readonly deep: number },
) {
  const what = say`the stock files have no bolt ${threadName(thread)} that ends inside an insert ${length(deep)} long under a plate`;
  const mend = say`add one ${length(through + thread)} to ${length(through + deep)} long (form: bolt, diameter: ${threadText(thread)}) to a stock file`;
  return told('halt', { rule: 'no-bolt-fits', where, what, figure: null, limit: tidy(through + deep), mend });
}
