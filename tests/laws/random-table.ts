import fc from 'fast-check';
import type { BenchInput, BenchworkInput, Struts } from '../../src/core/benchwork/input.ts';
import type { SheetStock } from '../../src/core/stock/goods.ts';
import { knownThickness } from '../../src/core/stock/thickness-check.ts';

/** Tables a builder might ask for, most of them possible: sizes on a 0.1 mm grid, sheets of 9 to 24 mm, readings on 0.1. */
export const randomTable: fc.Arbitrary<BenchworkInput> = fc
  .record({
    nominal: fc.constantFrom(9, 12, 15, 18, 21, 24),
    off: fc.array(fc.integer({ min: -6, max: 3 }), { maxLength: 4 }),
    deckOff: fc.array(fc.integer({ min: -3, max: 3 }), { maxLength: 2 }),
    length: tenths(600, 2400),
    width: tenths(300, 1300),
    height: tenths(500, 1200),
    side: tenths(90, 220),
    hang: fc.constantFrom(0, 20, 30, 35.5),
    clearance: tenths(0.1, 0.4),
    relief: tenths(0.3, 0.5),
    across: struts(5),
    along: struts(3),
    strips: fc.option(tenths(40, 80), { nil: null }),
    flush: fc.constantFrom('front-left', 'front-right', 'back-left', 'back-right'),
    overhang: tenths(0, 5),
    bare: fc.boolean(),
  })
  .map((raw) => {
    const frame = ply(raw.nominal, 'frame-ply');
    const deck = ply(9, 'deck-ply');
    const read = (sheet: SheetStock, off: readonly number[]) => off.map((d) => round(sheet.thickness.nominal + d / 10));
    const bench: BenchInput = {
      id: 'table',
      at: 'benchwork.benches.0',
      place: { x: 0, y: 0, turn: 0 },
      phase: 'now',
      construction: 'lapped-grid',
      struts: { across: placed(raw.across, raw.length), along: placed(raw.along, raw.width) },
      flangeStrips: raw.strips,
      deck: raw.bare ? null : { overhang: raw.overhang, flush: raw.flush, seams: seams(raw.across) },
    };
    return {
      dimensions: {
        length: raw.length,
        width: raw.width,
        height: raw.height,
        side: raw.side,
        strut: round(raw.side - raw.hang),
        clearance: raw.clearance,
        'lap-relief': raw.relief,
      },
      materials: {
        frame: { stock: frame, thickness: knownThickness(frame, read(frame, raw.off)) },
        deck: { stock: deck, thickness: knownThickness(deck, read(deck, raw.deckOff)) },
      },
      machining: { step: 0.1, bit: 6.35 },
      benches: [bench],
    };
  });

type Spread = { readonly count: number; readonly shares: readonly number[] | null };

/** A count of struts, evenly spread or at shares of the room. */
function struts(most: number): fc.Arbitrary<Spread> {
  return fc.record({
    count: fc.integer({ min: 0, max: most }),
    shares: fc.option(fc.array(fc.integer({ min: 60, max: 140 }), { minLength: most + 1, maxLength: most + 1 }), {
      nil: null,
    }),
  });
}

function placed({ count, shares }: Spread, outside: number): Struts {
  if (shares === null) return { kind: 'even', count };
  const used = shares.slice(0, count + 1);
  const sum = used.reduce((total, share) => total + share, 0);
  const at = used
    .slice(0, count)
    .map((_, i) => round((outside * used.slice(0, i + 1).reduce((a, b) => a + b, 0)) / sum));
  return { kind: 'at', at };
}

function seams({ count }: Spread): NonNullable<BenchInput['deck']>['seams'] {
  return count === 0 ? [] : [{ parallelTo: 'y', on: `strut.across-${Math.ceil(count / 2)}` }];
}

function tenths(least: number, most: number): fc.Arbitrary<number> {
  return fc.integer({ min: Math.round(least * 10), max: Math.round(most * 10) }).map((n) => n / 10);
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10;
}

function ply(nominal: number, id: string): SheetStock {
  return {
    kind: 'sheet',
    id,
    name: id,
    source: 'made for the test',
    price: null,
    material: 'plywood',
    thickness: { nominal, listed: round(nominal - 0.2), low: round(nominal - 0.7), high: round(nominal + 0.3) },
    sizes: [{ length: 2440, width: 1220, grain: 'length', price: null }],
    density: 680,
    stiffness: null,
    bending: null,
  };
}
