import { describe, expect, it } from 'vitest';
import { evaluateTrack } from '../../../src/core/track/evaluate.ts';
import { layTrack } from '../../../src/core/track/lay.ts';
import { trackSchema } from '../../../src/core/track/schema.ts';
import { quantityKit } from '../../../src/core/units/schema.ts';
import { NO_GROUND } from './example.ts';

const schema = trackSchema(quantityKit(null));
const context = {
  scope: { gap: { value: 30, dimension: 'length' } },
  scale: 'N',
  stock: [],
  trains: [],
  ground: NO_GROUND,
} as const;

function read(chapter: object) {
  return evaluateTrack(schema.parse({ trains: [], ...chapter }), context);
}

const place = { x: '0', y: '0', heading: '0°' };

describe('a track chapter as numbers', () => {
  it('takes every form of turnout, and lays it', () => {
    const turnouts = {
      A: { frog: '6', hand: 'left' },
      B: { straight: '124 mm', angle: '15°', radius: '470 mm', hand: 'right', throw: '20 mm' },
      C: {
        form: 'curved',
        outer: { radius: '700 mm', angle: '15°' },
        inner: { radius: '400 mm', angle: '24°' },
        hand: 'left',
      },
      D: { form: 'wye', angle: '30°', radius: '400 mm' },
      E: { form: 'three-way', straight: '140 mm', angle: '15°', radius: '500 mm' },
      F: { form: 'crossing', straight: '120 mm', angle: '30°', hand: 'left' },
      G: { form: 'slip', straight: '160 mm', angle: '15°', slips: 'both', hand: 'right' },
    };
    const lay = [
      ...['A', 'B', 'C', 'E', 'F', 'G'].map((turnout) => ({ turnout, enter: 'points' })),
      { turnout: 'D', enter: 'points', take: 'left' },
    ];
    const input = read({ turnouts, lines: [{ id: 'main', from: place, lay, ends: 'open' }] });
    if (!input.ok) throw new Error(input.faults[0]?.what);
    expect(input.value.turnouts.map(({ form }) => form.kind)).toEqual([
      'frog',
      'template',
      'curved',
      'wye',
      'three-way',
      'crossing',
      'slip',
    ]);
    const { model, faults } = layTrack(input.value);
    expect(faults).toEqual([]);
    expect(model.turnouts).toHaveLength(7);
  });

  it('goes on straight, or to the points, when nothing is said', () => {
    const input = read({
      turnouts: { A: { frog: '6', hand: 'left' } },
      lines: [{ id: 'main', from: place, lay: [{ turnout: 'A', enter: 'branch' }], ends: 'buffer' }],
    });
    expect(input.ok && input.value.lines[0]?.pieces[0]).toMatchObject({ enter: 'branch', take: 'points' });
  });

  it('keeps unknowns, counts pieces, and uses named dimensions', () => {
    const input = read({
      lines: [
        {
          id: 'main',
          from: place,
          lay: [
            { straight: '4 * gap', times: '3' },
            { curve: 'left', radius: 'to close', through: '30°', easement: 'gap' },
          ],
          ends: 'main.start',
        },
      ],
    });
    expect(input.ok && input.value.lines[0]?.pieces).toMatchObject([
      { kind: 'straight', length: 120, times: 3, at: 'track.lines.0.lay.0' },
      { kind: 'curve', radius: 'to close', easement: 30, times: null },
    ]);
  });

  it('tells every value that does not come out, each at its place', () => {
    const input = read({
      lines: [{ id: 'main', from: place, lay: [{ straight: 'gpa' }, { straight: 'gap * gap' }], ends: 'open' }],
    });
    expect(input.ok ? [] : input.faults.map(({ rule }) => rule)).toEqual(['unknown-name', 'no-product']);
  });

  it('reads rules, flexible track and double track', () => {
    const input = read({
      flex: { length: '914 mm', height: '3.2 mm' },
      rules: { 'curve-per-percent': '120 mm', grade: '2.5 %', radius: 'nem-111', wire: 'true' },
      beside: [{ id: 'second', line: 'main', side: 'left', by: 'gap' }],
      lines: [{ id: 'main', from: place, lay: [{ straight: '500 mm' }], ends: 'open' }],
    });
    expect(input.ok && input.value).toMatchObject({
      flex: { yard: 914, height: 3.2 },
      rules: { curvePerPercent: 120, grade: 0.025, radius: 'nem-111', upperDeck: null, wire: true },
      beside: [{ id: 'second', line: 'main', side: 'left', by: 30, phase: 'now' }],
    });
  });
});
