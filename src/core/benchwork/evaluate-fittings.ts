import type { CasterStock, Stock } from '../stock/goods.ts';
import { nearest } from '../units/nearest.ts';
import { fault } from './fault.ts';
import type { Goods } from './goods.ts';
import { ASSUMED_BIT } from './grid.ts';
import type { DrawersInput, Gaps, LegsInput, ShelvesInput, Stand } from './input.ts';
import type { Reader } from './reader.ts';
import type { Benchwork } from './schema.ts';

type BenchSource = Benchwork['benches'][number];
type DrawersSource = Exclude<NonNullable<BenchSource['drawers']>, readonly unknown[]>;
type ShelvesSource = Exclude<NonNullable<BenchSource['shelves']>, readonly unknown[]>;
type LegsSource = NonNullable<BenchSource['legs']>;

/** What the fittings of a bench are read with: the bench's path, the stock, the roles that have a material, the bit in use. */
export type Asked = {
  readonly at: string;
  readonly reader: Reader;
  readonly stock: readonly Stock[];
  readonly roles: readonly string[];
  readonly bit: number | null;
};

/** Slides stand off the box by half an inch each side; common practice, no source. mm. */
export const SLIDE_CLEARANCE = 12.7;

/** One set, or several: each with its path. */
function listed<T>(sets: T | readonly T[] | undefined, at: string): readonly (readonly [T, string])[] {
  if (sets === undefined) return [];
  if (!isList(sets)) return [[sets, at]];
  return sets.map((set, i) => [set, `${at}.${i}`]);
}

function isList<T>(sets: T | readonly T[]): sets is readonly T[] {
  return Array.isArray(sets);
}

/** The first of these roles that the materials name; the last where none is. */
function roleOf(roles: readonly string[], ...wanted: readonly string[]): string {
  return wanted.find((role) => roles.includes(role)) ?? wanted[wanted.length - 1] ?? 'frame';
}

export function drawersOf(source: BenchSource['drawers'], asked: Asked): readonly DrawersInput[] {
  return listed<DrawersSource>(source, `${asked.at}.drawers`).map(([set, at]) => drawers(set, at, asked));
}

function drawers(set: DrawersSource, at: string, { reader, roles, bit }: Asked): DrawersInput {
  return {
    at,
    side: set.side,
    bays: set.bays.map((bay) => reader.value(bay, 0)),
    slides: {
      length: reader.value(set.slides.length, 0),
      clearance: reader.value(set.slides.clearance, SLIDE_CLEARANCE),
    },
    faces: set.faces,
    bit: reader.value(set.bit, bit ?? ASSUMED_BIT),
    corners: set.corners,
    pull: set.pull,
    opening: set.opening === undefined ? null : reader.value(set.opening, 0),
    ligament: set.ligament === undefined ? null : reader.value(set.ligament, 0),
    ...(set.gaps === undefined ? {} : { gaps: gapsOf(set.gaps, reader) }),
    material: set.material ?? roleOf(roles, 'drawer', 'frame'),
    bottom: set.bottom ?? roleOf(roles, 'drawer-bottom', 'deck', 'frame'),
    unsaid: [
      ...(set.slides.clearance === undefined ? (['clearance'] as const) : []),
      ...(set.bit === undefined && bit === null ? (['bit'] as const) : []),
    ],
  };
}

function gapsOf(gaps: NonNullable<DrawersSource['gaps']>, reader: Reader): Gaps {
  const read = (quantity: (typeof gaps)['under']) => (quantity === undefined ? null : reader.value(quantity, 0));
  return { under: read(gaps.under), liftOut: read(gaps['lift-out']), overlap: read(gaps.overlap) };
}

export function shelvesOf(source: BenchSource['shelves'], { at, reader }: Asked): readonly ShelvesInput[] {
  return listed<ShelvesSource>(source, `${at}.shelves`).map(([set, path]) => ({
    at: path,
    side: set.side,
    bays: set.bays.map((bay) => reader.value(bay, 0)),
    material: set.material,
    below: set.below === undefined ? null : reader.value(set.below, 0),
  }));
}

export function legsOf(source: LegsSource | undefined, asked: Asked): LegsInput | null {
  if (source === undefined) return null;
  const { reader } = asked;
  const at = `${asked.at}.legs`;
  const optional = (quantity: LegsSource['width']) => (quantity === undefined ? null : reader.value(quantity, 0));
  return {
    at,
    form: source.form,
    material: source.material,
    layers: reader.value(source.layers, 1),
    width: optional(source.width),
    footWidth: optional(source['foot-width']),
    stand: standOf(source, at, asked),
  };
}

function standOf(source: LegsSource, at: string, asked: Asked): Stand {
  const { casters, feet } = source;
  if (casters !== undefined && feet !== undefined) {
    const words = { what: 'legs stand on casters or on feet, not on both', mend: 'take one of the two out' };
    asked.reader.faults.push(fault('legs-stand-twice', at, words));
  }
  if (casters !== undefined) return casterStand(casters, `${at}.casters`, asked);
  return feet === undefined ? { kind: 'floor' } : footStand(feet, `${at}.feet`, asked);
}

function casterStand(source: NonNullable<LegsSource['casters']>, at: string, asked: Asked): Stand {
  const caster = casterOf(source.stock, source.mount, { at: `${at}.stock`, asked });
  const free = source.free === undefined ? null : casterOf(source.free, source.mount, { at: `${at}.free`, asked });
  return caster === null ? { kind: 'floor' } : { kind: 'caster', caster, free };
}

type Naming = { readonly at: string; readonly asked: Asked };

function casterOf(id: string, mount: 'plate' | 'stem', { at, asked }: Naming): CasterStock | null {
  const casters = asked.stock.filter((one): one is CasterStock => one.kind === 'caster');
  const found = casters.find((one) => one.id === id);
  if (found === undefined) {
    asked.reader.faults.push(unknown(id, 'caster', { at, known: casters.map((one) => one.id) }));
    return null;
  }
  if (found.mount === mount) {
    if (mount === 'plate' && (found.plate === null || found.bolts === null)) {
      const what = `${id} is mounted by a plate whose size or holes its stock does not tell`;
      const words = { what, mend: 'write plate: [length, width] and bolts: { diameter, spacing } on it' };
      asked.reader.faults.push(fault('caster-without-plate', at, words));
      return null;
    }
    return found;
  }
  const others = casters.filter((one) => one.mount === mount).map((one) => one.id);
  const mend = `write "mount: ${found.mount}"${others.length === 0 ? '' : `, or use ${others.join(' or ')}`}`;
  asked.reader.faults.push(fault('caster-mount', at, { what: `${id} is mounted by a ${found.mount}`, mend }));
  return null;
}

/** A foot's pad, below its thread, mm; common practice, no source. */
export const FOOT_PAD = 10;

function footStand(source: NonNullable<LegsSource['feet']>, at: string, { reader, stock }: Asked): Stand {
  const feet = stock.filter((one) => one.kind === 'hardware').filter((one) => one.form === 'foot');
  const foot = feet.find((one) => one.id === source.stock);
  if (foot === undefined) {
    reader.faults.push(unknown(source.stock, 'foot', { at: `${at}.stock`, known: feet.map((one) => one.id) }));
    return { kind: 'floor' };
  }
  const travel = reader.value(source.travel, (foot.length ?? 0) / 2);
  return { kind: 'foot', foot, travel, height: reader.value(source.height, FOOT_PAD + travel / 2) };
}

function unknown(id: string, what: string, { at, known }: { readonly at: string; readonly known: readonly string[] }) {
  const near = nearest(id, known);
  const choice = known.length === 0 ? 'add one to a stock file' : `use one of ${known.join(', ')}`;
  const mend = near === null ? choice : `did you mean ${near}?`;
  return fault('stock-unknown', at, { what: `${id} is no ${what} in the stock files`, mend });
}

/** What is counted from the stock files. */
export function goodsOf(stock: readonly Stock[], show: 'mm' | 'in'): Goods {
  return {
    hardware: stock.filter((one) => one.kind === 'hardware'),
    covers: stock.filter((one) => one.kind === 'cover'),
    show,
  };
}
