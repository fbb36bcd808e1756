import type { Stock } from '../stock/goods.ts';
import type { KnownThickness } from '../stock/thickness.ts';
import { evaluate } from '../units/evaluate.ts';
import { done, type Fault, failed, type Result } from '../units/problem.ts';
import type { Scope } from '../units/quantity.ts';
import { dimensionScope, thicknessScope } from './dimensions.ts';
import { drawersOf, goodsOf, legsOf, shelvesOf } from './evaluate-fittings.ts';
import type { BenchInput, BenchworkInput, DeckInput, Material, Struts } from './input.ts';
import { settingStep } from './machining.ts';
import { sheetOf } from './materials.ts';
import type { Reader } from './reader.ts';
import type { Benchwork } from './schema.ts';

/** What evaluation needs besides the chapter: names known before it, sheets as known, the router's bits in hand. */
export type BenchworkContext = {
  readonly scope: Scope;
  readonly thicknesses: Readonly<Record<string, KnownThickness>>;
  readonly stock: readonly Stock[];
  readonly show: 'mm' | 'in';
  readonly bits?: readonly number[];
};

type BenchSource = Benchwork['benches'][number];
type StrutSource = NonNullable<BenchSource['struts']>['along'];

/** The chapter's quantities as numbers, ready for `frame`; every fault of every value at once. */
export function evaluateBenchwork(benchwork: Benchwork, context: BenchworkContext): Result<BenchworkInput> {
  const scope = dimensionScope(benchwork.dimensions, { ...context.scope, ...thicknessScope(context.thicknesses) });
  if (!scope.ok) return scope;
  const faults: Fault[] = [];
  const reader = readerOf(scope.value, faults);
  const cutter = bit(benchwork, context, reader);
  const input: BenchworkInput = {
    dimensions: Object.fromEntries(
      Object.keys(benchwork.dimensions).map((name) => [name, scope.value[name]?.value ?? 0]),
    ),
    materials: materials(benchwork, context),
    machining: {
      step: reader.value(benchwork.machining?.['round-to'], settingStep(context.show)),
      bit: cutter,
    },
    benches: benchwork.benches.map((bench, i) => {
      const at = `benchwork.benches.${i}`;
      const asked = { at, reader, stock: context.stock, roles: Object.keys(benchwork.materials), bit: cutter };
      return {
        ...benchInput(bench, at, reader),
        drawers: drawersOf(bench.drawers, asked),
        legs: legsOf(bench.legs, asked),
        shelves: shelvesOf(bench.shelves, asked),
      };
    }),
    goods: goodsOf(context.stock, context.show),
  };
  return faults.length > 0 ? failed(...faults) : done(input);
}

function readerOf(scope: Scope, faults: Fault[]): Reader {
  return {
    faults,
    value(quantity, instead) {
      if (quantity === undefined) return instead;
      const amount = evaluate(quantity, scope);
      if (amount.ok) return amount.value.value;
      faults.push(...amount.faults);
      return instead;
    },
  };
}

/** The bit named by the chapter, else the smallest in hand. */
function bit(benchwork: Benchwork, context: BenchworkContext, reader: Reader): number | null {
  const own = benchwork.machining?.bit;
  if (own !== undefined) return reader.value(own, 0);
  const inHand = context.bits ?? [];
  return inHand.length === 0 ? null : inHand.reduce((least, one) => Math.min(least, one));
}

function materials(benchwork: Benchwork, context: BenchworkContext): Readonly<Record<string, Material>> {
  const entries = Object.entries(benchwork.materials).flatMap(
    ([role, material]): readonly (readonly [string, Material])[] => {
      const stock = sheetOf(material, context.stock);
      const thickness = context.thicknesses[role];
      return stock === null || thickness === undefined ? [] : [[role, { stock, thickness }]];
    },
  );
  return Object.fromEntries(entries);
}

function benchInput(bench: BenchSource, at: string, reader: Reader): BenchInput {
  const { place, struts, deck } = bench;
  const strips = bench['flange-strips'];
  return {
    id: bench.id,
    at,
    place: { x: reader.value(place?.x, 0), y: reader.value(place?.y, 0), turn: reader.value(place?.turn, 0) },
    phase: bench.phase,
    construction: bench.construction,
    struts:
      struts === undefined ? null : { along: strutsOf(struts.along, reader), across: strutsOf(struts.across, reader) },
    flangeStrips: strips === undefined ? null : reader.value(strips.width, 1),
    deck: deck === undefined ? null : deckInput(deck, reader),
  };
}

function strutsOf(struts: StrutSource, reader: Reader): Struts {
  if ('at' in struts && Array.isArray(struts.at))
    return { kind: 'at', at: struts.at.map((place) => reader.value(place, 0)) };
  return 'tree' in struts ? { kind: 'even', count: reader.value(struts, 0) } : { kind: 'even', count: 0 };
}

function deckInput(deck: NonNullable<BenchSource['deck']>, reader: Reader): DeckInput {
  const seams = [...(deck.seam === undefined ? [] : [deck.seam]), ...(deck.seams ?? [])];
  return {
    overhang: reader.value(deck.overhang, 0),
    flush: deck.flush,
    seams: seams.map((seam) => ({ parallelTo: seam['parallel-to'], on: seam.on })),
  };
}
