import { describe, expect, it } from 'vitest';
import { layTrack } from '../../../src/core/track/lay.ts';
import { endStance, turnoutShape } from '../../../src/core/track/turnout-shape.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { curve, from, line, straight, through, track, turnout } from './example.ts';

const rules = (input: ReturnType<typeof track>) => layTrack(input).findings.map(({ rule }) => rule);
const open = (input: ReturnType<typeof track>) => layTrack(input).findings.find(({ rule }) => rule === 'line-open');

describe('twelve curves of 30 degrees', () => {
  const circle = (times: number) =>
    track([line('ring', [curve('left', 457.2, 30, { times })], { ends: 'ring.start' })]);

  it('close', () => {
    expect(rules(circle(12))).not.toContain('line-open');
  });

  it('leave, with one missing, a gap of its chord and a kink of 30 degrees', () => {
    const told = open(circle(11));
    // chord of 30 degrees on 18 in: 2 R sin 15 = 236.66 mm
    expect(told?.figure).toBeCloseTo(2 * 457.2 * Math.sin(Math.PI / 12), 6);
    expect(spoken(told?.what ?? [], String)).toContain('a kink of 30°');
    expect(spoken(told?.mend ?? [], String)).toContain('instead of 30°');
  });
});

describe('smallest change', () => {
  const ring = (length: number) =>
    track([
      line('ring', [straight(length), curve('left', 300, 180), straight(500), curve('left', 300, 180)], {
        ends: 'ring.start',
      }),
    ]);

  it('is one straight where one is too long, and closes the line when written', () => {
    const told = open(ring(512));
    expect(told?.figure).toBeCloseTo(12, 9);
    const mend = spoken(told?.mend ?? [], (mm) => `${Math.round(mm * 1e6) / 1e6}`);
    expect([
      "make the straight of piece 1 500 instead of 512, which is exact when you write 'to close' for it",
      "make the straight of piece 3 512 instead of 500, which is exact when you write 'to close' for it",
    ]).toContain(mend);
    expect(rules(ring(500))).not.toContain('line-open');
  });

  it('takes two values where one cannot', () => {
    const skewed = track([
      line(
        'ring',
        [
          straight(512),
          curve('left', 300, 90),
          straight(207),
          curve('left', 300, 90),
          straight(500),
          curve('left', 300, 90),
          straight(200),
          curve('left', 300, 90),
        ],
        { ends: 'ring.start' },
      ),
    ]);
    const told = open(skewed);
    expect(told?.figure).toBeCloseTo(Math.hypot(12, 7), 9);
    expect(spoken(told?.mend ?? [], String).split(' and ')).toHaveLength(2);
  });

  it('says what would have to be less than nothing', () => {
    const tight = track([
      line(
        'ring',
        [straight(300), curve('left', 300, 180), straight(400), straight('to close'), curve('left', 300, 180)],
        { ends: 'ring.start' },
      ),
    ]);
    const told = open(tight);
    expect(spoken(told?.what ?? [], (mm) => `${Math.round(mm * 1e6) / 1e6}`)).toContain(
      'the straight of piece 4 would have to be -100',
    );
    expect(told?.figure).toBeCloseTo(100, 9);
  });
});

describe('unknowns that nothing determines', () => {
  it('two straights one behind the other: their sum is known', () => {
    const { faults } = layTrack(
      track([
        line(
          'ring',
          [straight(600), curve('left', 300, 180), straight('to close'), straight('to close'), curve('left', 300, 180)],
          { ends: 'ring.start' },
        ),
      ]),
    );
    expect(faults.map(({ rule, at }) => [rule, at])).toEqual([['undetermined', 'track.lines.ring.lay.2.straight']]);
    expect(faults[0]?.what).toContain('together they come to 600 mm');
  });

  it('four unknowns: there are three conditions', () => {
    const { faults } = layTrack(
      track([
        line(
          'ring',
          [straight('to close'), curve('left', 'to close', 120), straight('to close'), curve('left', 'to close', 240)],
          { ends: 'ring.start' },
        ),
      ]),
    );
    expect(faults.map(({ rule }) => rule)).toEqual(['undetermined']);
  });

  it('a line that ends open determines nothing', () => {
    const { faults } = layTrack(track([line('spur', [straight('to close')], { ends: 'buffer' })]));
    expect(faults.map(({ rule, at }) => [rule, at])).toEqual([['nothing-to-close', 'track.lines.spur.lay.0.straight']]);
  });
});

describe('bad values', () => {
  const faults = (...pieces: Parameters<typeof line>[1][number][]) => layTrack(track([line('one', pieces)])).faults;

  it('no length, no radius, no turn', () => {
    expect(faults(straight(0)).map(({ rule }) => rule)).toEqual(['length-impossible']);
    expect(faults(straight(-3)).map(({ rule }) => rule)).toEqual(['length-impossible']);
    expect(faults(curve('left', 0, 30)).map(({ rule }) => rule)).toEqual(['length-impossible']);
    expect(faults(curve('left', 300, 0)).map(({ rule }) => rule)).toEqual(['turn-impossible']);
    expect(faults(straight(100, { times: 2.5 })).map(({ rule }) => rule)).toEqual(['times-impossible']);
  });

  it('an easement longer than its curve: the longest that fits, and that one fits', () => {
    const [told] = faults(curve('left', 380, 30, { easement: 250 }));
    expect(told?.rule).toBe('easement-too-long');
    expect(told?.mend).toContain('at most 198.9 mm');
    expect(faults(curve('left', 380, 30, { easement: 198.9 }))).toEqual([]);
  });

  it('a way its turnout does not have, and a line that waits for nothing', () => {
    const w = turnout('W1', { kind: 'frog', number: 6, hand: 'left' });
    const wrong = track([line('one', [through('W1', 'branch', 'straight')])], { turnouts: [w] });
    expect(layTrack(wrong).faults.map(({ rule, mend }) => [rule, mend])).toEqual([
      ['no-way-through', 'from branch it goes to points'],
    ]);
    const waits = track([line('one', [straight(100)], { from: { kind: 'end', name: 'W1.branch' } })], {
      turnouts: [w],
    });
    expect(layTrack(waits).faults.map(({ rule }) => rule)).toEqual(['line-waits']);
  });

  it('lays the lines it can when another has a fault of closing', () => {
    const { model, faults: told } = layTrack(
      track([
        line('good', [straight(100)]),
        line('loose', [straight('to close'), straight('to close')], { ends: 'good.start', from: from(-500, 0) }),
      ]),
    );
    expect(told.map(({ rule }) => rule)).toEqual(['undetermined']);
    expect(model.lines.map(({ id }) => id)).toContain('good');
  });
});

describe('a loop that comes back to its own turnout', () => {
  const frog = (2 * Math.atan(1 / 12) * 180) / Math.PI;
  const pieces = [
    straight(200),
    through('W1', 'points', 'straight'),
    straight('to close'),
    curve('left', 'to close', 220),
    curve('right', 300, 40 - frog),
  ];
  const loop = track([line('loop', pieces, { ends: 'W1.branch' })], {
    turnouts: [turnout('W1', { kind: 'frog', number: 6, hand: 'left' })],
  });

  it("is closed in the turnout's own coordinates", () => {
    const { model, findings, faults } = layTrack(loop);
    expect(faults).toEqual([]);
    expect(findings.map(({ rule }) => rule)).not.toContain('line-open');
    const [own] = model.lines;
    const [w] = model.turnouts;
    const end = endStance(
      w?.shape ?? turnoutShape(turnout('W1', { kind: 'frog', number: 6, hand: 'left' }), 9),
      'branch',
      w?.place ?? { x: 0, y: 0, heading: 0 },
    );
    expect(Math.hypot((own?.end.x ?? 0) - end.x, (own?.end.y ?? 0) - end.y)).toBeLessThan(1e-6);
    expect(Math.cos((own?.end.heading ?? 0) - end.heading)).toBeCloseTo(-1, 12);
    expect(own?.unknowns.every(({ value }) => value > 0)).toBe(true);
  });
});

describe('two lines through one crossing', () => {
  const crossing = turnout('X1', { kind: 'crossing', straight: 60, angle: Math.PI / 6, hand: 'left' });
  const first = line('first', [straight(200), through('X1', 'points', 'straight'), straight(200)]);
  // the second way meets the first in its middle, 230 along, at 30 degrees
  const start = (off: number) => from(230 - 130 * Math.cos(Math.PI / 6), -130 * Math.sin(Math.PI / 6) + off, 30);

  it('meet where the second arrives', () => {
    const second = line('second', [straight('to close'), through('X1', 'cross', 'branch'), straight(100)], {
      from: start(0),
    });
    const { model, findings, faults } = layTrack(track([first, second], { turnouts: [crossing] }));
    expect(faults).toEqual([]);
    expect(model.lines[1]?.unknowns[0]?.value).toBeCloseTo(100, 9);
    expect(findings.map(({ rule }) => rule)).toEqual([]);
  });

  it('are told apart by the gap where it does not', () => {
    const second = line('second', [straight(100), through('X1', 'cross', 'branch'), straight(100)], { from: start(5) });
    const { findings } = layTrack(track([first, second], { turnouts: [crossing] }));
    expect(findings.find(({ rule }) => rule === 'line-open')?.figure).toBeCloseTo(5, 9);
  });
});
