import { describe, expect, test } from 'vitest';
import type { Path } from '../../../src/core/scenery/land.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { sectionAlong, waterSpans } from '../../../src/core/scenery/section.ts';
import { straightWay, wayAlong } from '../../../src/core/scenery/way.ts';
import { around, bare, hill, pond } from './table.ts';

const slope: Path = {
  ...{ id: 'slope', half: 10, slope: 2 / 3, free: [] },
  points: [
    { at: 0, x: 0, y: 300, z: 0 },
    { at: 500, x: 500, y: 300, z: 10 },
    { at: 1000, x: 1000, y: 300, z: 20 },
  ],
};
const tunnel = { id: 'bore', line: 'slope', from: 400, to: 600, at: '' };
const ground = {
  ...{ field: () => 0, paths: [slope], tunnels: [tunnel], water: [pond], train: 40 },
};

describe('a straight section', () => {
  test('tells a dome as the parabola it is', () => {
    const [along, across] = sceneryModel({ ...bare, forms: [hill] }, around).sections;
    expect([along?.id, across?.id]).toEqual(['down-along', 'down-across']);
    const dome = (s: number, middle: number) => Math.max(0, 100 * (1 - ((s - middle) / 140) ** 2));
    // thinned lines stay within 0.2 mm, and the foot has a corner between two samples of 5 mm
    for (const [s, h] of along?.heights ?? []) expect(Math.abs(h - dome(s, 500))).toBeLessThan(1e-9);
    for (const [s, h] of across?.heights ?? []) expect(Math.abs(h - dome(s, 300))).toBeLessThan(1e-9);
  });

  test('meets a roadbed across it at its height, wider the more aslant', () => {
    const [bed] = sectionAlong(straightWay('cut', [250, 0], [250, 600]), ground).beds;
    expect(bed).toEqual({
      line: 'slope',
      points: [
        [290, 5],
        [310, 5],
      ],
    });
    // through the same place at 45 degrees: 10 mm become 10 root 2
    const [aslant] = sectionAlong(straightWay('cut', [0, 50], [500, 550]), ground).beds;
    const [from, to] = [aslant?.points[0]?.[0] ?? 0, aslant?.points[1]?.[0] ?? 0];
    expect(to - from).toBeCloseTo(20 * Math.SQRT2, 9);
    expect((from + to) / 2).toBeCloseTo(250 * Math.SQRT2, 9);
  });

  test('shows the room of a tunnel where it crosses one, and none beside it', () => {
    const [bore] = sectionAlong(straightWay('cut', [500, 0], [500, 600]), ground).bores;
    expect(bore).toEqual([
      [290, 10],
      [310, 10],
      [310, 50],
      [290, 50],
    ]);
    expect(sectionAlong(straightWay('cut', [300, 0], [300, 600]), ground).bores).toEqual([]);
  });

  test('tells where it enters and leaves a water, each stretch of one that bends', () => {
    expect(waterSpans(straightWay('cut', [300, 0], [300, 600]), pond)).toEqual([{ id: 'pond', from: 100, to: 200 }]);
    const horseshoe = [
      [0, 0],
      [300, 0],
      [300, 200],
      [200, 200],
      [200, 100],
      [100, 100],
      [100, 200],
      [0, 200],
    ] as const;
    const spans = waterSpans(straightWay('cut', [-50, 150], [350, 150]), { id: 'bend', outline: horseshoe });
    expect(spans.map(({ from, to }) => [from, to])).toEqual([
      [50, 150],
      [250, 350],
    ]);
    expect(waterSpans(straightWay('cut', [320, 0], [320, 500]), { id: 'bend', outline: horseshoe })).toEqual([]);
  });
});

describe('a section along a line', () => {
  test("keeps the line's own lengths and heights, and the room of its tunnel", () => {
    const { beds, bores, way } = sectionAlong(wayAlong('run', slope, [300, 700]), ground);
    expect(way.map(({ s }) => s)).toEqual([0, 200, 400]);
    expect(beds).toEqual([
      {
        line: 'slope',
        points: [
          [0, 6],
          [400, 14],
        ],
      },
    ]);
    expect(bores).toEqual([
      [
        [100, 8],
        [200, 10],
        [300, 12],
        [300, 52],
        [200, 50],
        [100, 48],
      ],
    ]);
  });

  test('asked for past its end, or over no bench, is told', () => {
    const asked = (way: Parameters<typeof sceneryModel>[0]['sections'][number]['way']) =>
      sceneryModel({ ...bare, sections: [{ id: 'mine', at: '', way }] }, { ...around, lines: [slope] });
    const told = ({ findings }: ReturnType<typeof asked>) => findings.filter(({ rule }) => rule.startsWith('section-'));
    const past = asked({ kind: 'line', line: 'slope', from: 900, to: 1100 });
    expect(told(past).map(({ rule, figure, limit }) => [rule, figure, limit])).toEqual([
      ['section-past-line', 1100, 1000],
    ]);
    expect(past.sections[0]?.way[past.sections[0].way.length - 1]?.s).toBe(100);
    const off = asked({ kind: 'cut', from: [0, -50], to: [900, -50] });
    expect(told(off).map(({ rule }) => rule)).toEqual(['section-off-deck']);
    expect(told(asked({ kind: 'cut', from: [100, 50], to: [900, 550] }))).toEqual([]);
  });
});
