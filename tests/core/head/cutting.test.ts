import { describe, expect, it } from 'vitest';
import { headSchema } from '../../../src/core/head.schema.ts';
import { headValues } from '../../../src/core/head.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { quantityKit } from '../../../src/core/units/schema.ts';

const cover = {
  ...{ title: 'T', show: 'mm', scale: 'N', makers: ['one'], licence: 'CC-BY-4.0' },
  tools: { 'table-saw': { rip: '600 mm', kerf: '2.4 mm' } },
};

function valuesOf(more: object) {
  return headValues(headSchema(quantityKit(null)).parse({ ...cover, ...more }));
}

const rules = (more: object) => valuesOf(more).faults.map(({ rule }) => rule);

describe('settings of the saw', () => {
  it('are read as written, and then nothing is assumed', () => {
    const { findings, saw } = valuesOf({ cutting: { trim: '5 mm', keep: '120 mm', rounds: 'two' } });
    expect(saw).toEqual({ kerf: 2.4, rip: 600, trim: 5, keep: 120, rounds: 2, nest: null, car: null });
    expect(findings).toEqual([]);
  });

  it('that nobody wrote are told as assumed', () => {
    const { findings, saw } = valuesOf({});
    expect([saw.trim, saw.keep, saw.rounds]).toEqual([0, 100, 3]);
    const [note] = findings;
    expect(note?.rule).toBe('cutting-assumed');
    const words = spoken(note?.what ?? [], (mm) => `${mm} mm`);
    expect(words).toBe(
      'not written, so assumed: factory edges are kept (trim 0); an offcut is kept from 100 mm up; sheets are cut in three rounds, rips first',
    );
    const some = valuesOf({ cutting: { trim: '0 mm', rounds: 'any' } }).findings[0]?.what ?? [];
    expect(spoken(some, String)).toBe('not written, so assumed: an offcut is kept from 100 up');
  });

  it.each([
    ['a trim less than nothing', { cutting: { trim: '-1 mm' } }],
    ['an offcut of no size', { cutting: { keep: '0 mm' } }],
    ['a car of no size', { cutting: { car: { length: '0 mm', width: '1 m', within: '5 mm' } } }],
    ['a piece of no width', { 'in-hand': [{ id: 'a', stock: 'ply', length: '1 m', width: '0 mm' }] }],
    ['a price less than nothing', { prices: { ply: '-1 EUR' } }],
    ['spares less than nothing', { spares: '-10 %' }],
  ])('%s is a fault', (_, more) => {
    expect(rules(more)).toEqual(['size-not-positive']);
  });

  it('half a piece, and one id on two pieces, are faults', () => {
    const piece = { id: 'a', stock: 'ply', length: '1 m', width: '300 mm' };
    expect(rules({ 'in-hand': [{ ...piece, count: '0.5' }] })).toEqual(['no-count']);
    expect(rules({ 'in-hand': [piece, piece] })).toEqual(['duplicate-id']);
  });

  it('pieces and prices come as numbers', () => {
    const { buying, pieces } = valuesOf({
      'in-hand': [{ id: 'a', stock: 'ply', length: '1 m', width: '300 mm', spoilt: [['0', '1 cm', '20 mm', '30 mm']] }],
      'goods-in-hand': { screw: '60' },
      prices: { ply: '62.50 EUR' },
      spares: '10 %',
    });
    expect(pieces).toEqual([
      {
        ...{ id: 'a', stock: 'ply', length: 1000, width: 300, count: 1, edges: 'sawn', thickness: null },
        spoilt: [{ x: 0, y: 10, length: 20, width: 30 }],
      },
    ]);
    expect(buying).toEqual({ prices: { ply: { value: 62.5, currency: 'EUR' } }, inHand: { screw: 60 }, spares: 0.1 });
  });
});
