import { describe, expect, it } from 'vitest';
import { layTrack } from '../../../src/core/track/lay.ts';
import { moved, wayLength, wayMove } from '../../../src/core/track/stretch.ts';
import type { TurnoutForm } from '../../../src/core/track/turnout.ts';
import { endStance, endsFrom, isEnd, routeBetween, turnoutShape } from '../../../src/core/track/turnout-shape.ts';
import { line, radians, straight, through, track, turnout } from './example.ts';

const FORMS: readonly TurnoutForm[] = [
  { kind: 'frog', number: 4, hand: 'left' },
  { kind: 'frog', number: 6, hand: 'right' },
  { kind: 'template', straight: 124, angle: radians(15), radius: 470, hand: 'left', lead: 0, branch: null },
  { kind: 'template', straight: 160, angle: radians(12), radius: null, hand: 'right', lead: 20, branch: 150 },
  {
    kind: 'curved',
    hand: 'left',
    outer: { radius: 700, angle: radians(15) },
    inner: { radius: 400, angle: radians(24) },
  },
  { kind: 'wye', angle: radians(30), radius: 400 },
  { kind: 'three-way', straight: 140, angle: radians(15), radius: 500 },
  { kind: 'crossing', straight: 120, angle: radians(30), hand: 'left' },
  { kind: 'slip', straight: 160, angle: radians(15), hand: 'right', slips: 'both' },
];

const shapeOf = (form: TurnoutForm) => turnoutShape(turnout('W', form), 9);
const START = { x: 100, y: 50, heading: 0.7 };

describe('every form of turnout', () => {
  for (const form of FORMS) {
    it(`${form.kind}: each way joins its ends, and comes back the same way`, () => {
      const shape = shapeOf(form);
      for (const from of Object.keys(shape.ends).filter(isEnd)) {
        for (const to of endsFrom(shape, from)) {
          const way = routeBetween(shape, from, to) ?? [];
          const back = routeBetween(shape, to, from) ?? [];
          const start = endStance(shape, from, START);
          const end = moved({ ...start, heading: start.heading + Math.PI }, wayMove(way));
          const wanted = endStance(shape, to, START);
          expect(Math.hypot(end.x - wanted.x, end.y - wanted.y)).toBeLessThan(1e-9);
          expect(Math.cos(end.heading - wanted.heading)).toBeCloseTo(1, 12);
          expect(wayLength(back)).toBeCloseTo(wayLength(way), 9);
        }
      }
    });

    it(`${form.kind}: entered at any end it lies where that end is`, () => {
      const shape = shapeOf(form);
      for (const from of Object.keys(shape.ends).filter(isEnd)) {
        for (const to of endsFrom(shape, from)) {
          const { model, faults } = layTrack(
            track([line('one', [straight(50), through('W', from, to), straight(50)])], {
              turnouts: [turnout('W', form)],
            }),
          );
          expect(faults).toEqual([]);
          const [own] = model.turnouts;
          if (own === undefined) throw new Error('no turnout');
          const entered = endStance(own.shape, from, own.place);
          expect(Math.hypot(entered.x - 50, entered.y)).toBeLessThan(1e-9);
          const [one] = model.lines;
          expect(one?.length).toBeCloseTo(100 + wayLength(routeBetween(own.shape, from, to) ?? []), 9);
        }
      }
    });
  }
});

describe('shapes by plane geometry', () => {
  it('frog number 6: the branch leaves at 9.5273 degrees and the frog lies 6 gauges beyond the corner', () => {
    const { ends, frogPoint } = shapeOf({ kind: 'frog', number: 6, hand: 'left' });
    const branch = ends.branch ?? { x: 0, y: 0, heading: 0 };
    expect((branch.heading * 180) / Math.PI).toBeCloseTo(9.5273, 4);
    const corner = branch.x - branch.y / Math.tan(branch.heading);
    expect((frogPoint ?? 0) - corner).toBeCloseTo(54, 9);
    // at the frog's point the two middles are a gauge apart, square to half the frog's angle
    const along = (frogPoint ?? 0) - corner;
    expect(2 * along * Math.sin(branch.heading / 2)).toBeCloseTo(2 * 54 * Math.sin(Math.atan(1 / 12)), 9);
  });

  it('template: straight 124, 15 degrees on 470', () => {
    const { ends } = shapeOf({
      kind: 'template',
      straight: 124,
      angle: radians(15),
      radius: 470,
      hand: 'right',
      lead: 0,
      branch: null,
    });
    expect(ends.straight).toEqual({ x: 124, y: 0, heading: 0 });
    expect(ends.branch?.x).toBeCloseTo(470 * Math.sin(radians(15)), 9);
    expect(ends.branch?.y).toBeCloseTo(-470 * (1 - Math.cos(radians(15))), 9);
  });

  it('template without a radius: tangents of half the straight, and said so', () => {
    const shape = shapeOf({
      kind: 'template',
      straight: 124,
      angle: radians(15),
      radius: null,
      hand: 'left',
      lead: 0,
      branch: null,
    });
    expect(shape.ends.branch?.x).toBeCloseTo(62 + 62 * Math.cos(radians(15)), 9);
    expect(shape.assumed).toContain('radius');
  });

  it('crossing: ways of one length that meet in their middles', () => {
    const { ends } = shapeOf({ kind: 'crossing', straight: 120, angle: radians(30), hand: 'left' });
    const [a, b] = [ends.cross ?? { x: 0, y: 0 }, ends.branch ?? { x: 0, y: 0 }];
    expect([(a.x + b.x) / 2, (a.y + b.y) / 2]).toEqual([60, 0]);
    expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeCloseTo(120, 9);
  });

  it('slip: one has three ways, both have four; a crossing has two', () => {
    const ways = (form: TurnoutForm) => shapeOf(form).routes.length;
    const slip = { kind: 'slip', straight: 160, angle: radians(15), hand: 'right' } as const;
    expect([
      ways({ ...slip, slips: 'one' }),
      ways({ ...slip, slips: 'both' }),
      ways({ kind: 'crossing', straight: 160, angle: 0.3, hand: 'left' }),
    ]).toEqual([3, 4, 2]);
  });
});

describe('what is assumed of a turnout is said', () => {
  const told = (form: TurnoutForm) =>
    layTrack(
      track([line('one', [through('W', 'points', 'straight')])], { turnouts: [turnout('W', form)] }),
    ).findings.map(({ rule, level }) => [rule, level]);
  it('lengths of a number outside RP-12.7, and nothing for one inside', () => {
    expect(told({ kind: 'frog', number: 8, hand: 'left' })).toEqual([['turnout-assumed', 'note']]);
    expect(told({ kind: 'frog', number: 6, hand: 'left' })).toEqual([]);
  });
  it('figures of nothing are faults', () => {
    const { faults } = layTrack(
      track([line('one', [through('W', 'points', 'straight')])], {
        turnouts: [turnout('W', { kind: 'frog', number: 0, hand: 'left' })],
      }),
    );
    expect(faults.map(({ rule, at }) => [rule, at])).toEqual([['length-impossible', 'track.turnouts.W.frog']]);
  });

  it('a template whose branch has no room is a fault that says how much it needs', () => {
    const told = (more: object) =>
      layTrack(
        track([line('one', [through('W', 'points', 'straight')])], {
          turnouts: [
            turnout('W', {
              kind: 'template',
              straight: 124,
              angle: radians(15),
              radius: 470,
              hand: 'left',
              lead: 0,
              branch: null,
              ...more,
            }),
          ],
        }),
      ).faults.map(({ rule, at, what }) => [rule, at, what]);
    expect(told({ branch: 100 })).toEqual([
      [
        'template-impossible',
        'track.turnouts.W.branch',
        'the branch is 100 mm (3.937 in) long, and its lead and arc alone are 123.046 mm (4.844 in)',
      ],
    ]);
    expect(told({ radius: null, lead: 62 }).map(([rule, at]) => [rule, at])).toEqual([
      ['template-impossible', 'track.turnouts.W.lead'],
    ]);
    expect(told({ angle: radians(120) }).map(([rule, at]) => [rule, at])).toEqual([
      ['angle-impossible', 'track.turnouts.W.angle'],
    ]);
    expect(told({ branch: 124 })).toEqual([]);
  });
});
