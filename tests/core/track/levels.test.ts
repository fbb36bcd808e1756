import { describe, expect, it } from 'vitest';
import { layTrack } from '../../../src/core/track/lay.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { curve, from, height, line, straight, through, track, turnout } from './example.ts';

const told = (input: ReturnType<typeof track>, rule: string) =>
  layTrack(input).findings.filter((one) => one.rule === rule);
const say = (findings: ReturnType<typeof told>, what: 'what' | 'mend' = 'what') =>
  findings.map((one) => spoken(one[what], (mm) => `${Math.round(mm * 100) / 100}`));

describe('lines that meet in plan', () => {
  const over = (level: number) =>
    track([
      line('low', [straight(600)], { from: from(0, 0) }),
      line('high', [straight(600)], { from: from(300, -300, 90, level) }),
    ]);

  it('at one height: halt, with the place and the height that would do', () => {
    const [one] = told(over(0), 'lines-cross');
    expect([one?.level, one?.figure]).toEqual(['halt', 0]);
    // N without wire: 33 (NEM 102, HL4) + deck 6 + track 3.2
    expect(one?.limit).toBeCloseTo(42.2, 9);
    expect(say(one === undefined ? [] : [one])[0]).toContain('(x 300, y 0)');
  });

  it('a little higher: by how much more; high enough: nothing', () => {
    const [one] = told(over(30), 'levels-close');
    expect(one?.figure).toBeCloseTo(30, 9);
    expect(say(one === undefined ? [] : [one], 'mend')).toEqual(['raise the upper line by 12.2 more']);
    expect(told(over(42.2), 'levels-close')).toEqual([]);
  });

  it('a line that comes upon itself is told once, with both distances', () => {
    const loop = track([line('knot', [straight(700), curve('left', 200, 270), straight(500)])]);
    const crossings = told(loop, 'lines-cross');
    expect(crossings).toHaveLength(1);
    // straight on along x to 700, round 270 degrees, back down across y = 0 at x = 500
    expect(say(crossings)[0]).toContain(`at 500 and ${Math.round((700 + 200 * 1.5 * Math.PI + 200) * 100) / 100}`);
  });

  it('lines that run close side by side through each other are one meeting', () => {
    const beside = track([line('a', [straight(600)]), line('b', [straight(600)], { from: from(0, 4) })]);
    expect(told(beside, 'lines-cross')).toHaveLength(1);
    const apart = track([line('a', [straight(600)]), line('b', [straight(600)], { from: from(0, 25) })]);
    expect(layTrack(apart).findings).toEqual([]);
  });

  it('a crossing laid as a turnout is no clash', () => {
    const x = turnout('X1', { kind: 'crossing', straight: 60, angle: Math.PI / 2, hand: 'left' });
    const crossed = track(
      [
        line('a', [straight(200), through('X1', 'points', 'straight'), straight(200)]),
        line('b', [straight(270), through('X1', 'cross', 'branch'), straight(200)], { from: from(230, -300, 90) }),
      ],
      { turnouts: [x] },
    );
    expect(layTrack(crossed)).toMatchObject({ faults: [], findings: [] });
  });
});

describe('heights', () => {
  it('that do not meet: the step, and the height to write', () => {
    const ring = track([
      line('ring', [curve('left', 600, 360, { times: 1 })], {
        heights: [height(500, 0), height(2000, 15), height(3000, 0.4)],
        ends: 'ring.start',
      }),
    ]);
    const [step] = told(ring, 'height-step');
    expect([step?.level, step?.figure]).toEqual(['halt', 0.4]);
    expect(say(step === undefined ? [] : [step], 'mend')).toEqual(['let the last height of ring be 0']);
  });

  it('slopes that do not meet: a line that leaves a climbing turnout level', () => {
    const climbing = track(
      [
        line('main', [straight(500), through('W1', 'points', 'straight'), straight(500)], {
          heights: [height(0, 0), height(1000, 20)],
        }),
        line('spur', [straight(300)], { from: { kind: 'end', name: 'W1.branch' } }),
      ],
      {
        turnouts: [
          turnout('W1', {
            kind: 'template',
            straight: 124,
            angle: Math.PI / 12,
            radius: 470,
            hand: 'left',
            lead: 0,
            branch: null,
          }),
        ],
      },
    );
    const { model, findings } = layTrack(climbing);
    const kink = findings.find(({ rule }) => rule === 'slope-kink');
    expect(kink?.level).toBe('halt');
    expect(kink?.figure).toBeCloseTo(2 * Math.cos(Math.PI / 12), 6);
    // the branch ends 470 sin 15 along the straight, at that share of the turnout's climb
    const spur = model.lines[1];
    expect(spur?.profile.breaks[0]?.height).toBeCloseTo((500 + 470 * Math.sin(Math.PI / 12)) * 0.02, 9);
  });

  it('a climb too short for its vertical curves: the run it takes, and the most that fits', () => {
    const short = track([line('up', [straight(2000)], { heights: [height(500, 0), height(1000, 20)] })], {
      rules: { curvePerPercent: 200, grade: 0.05, radius: 'car-lengths', upperDeck: 6, wire: false },
    });
    const [first] = told(short, 'vertical-curve-short');
    // 4 % needs 800 mm of curve at each break, and 500 lie between them
    expect(first?.figure).toBeCloseTo(500, 9);
    expect(first?.limit).toBeCloseTo(800, 9);
    expect(say(first === undefined ? [] : [first], 'mend')[0]).toContain(
      'a climb of 20 at 4 % with its curves takes 1300',
    );
  });

  it('a turnout in a vertical curve', () => {
    const w = turnout('W1', { kind: 'frog', number: 6, hand: 'left' });
    const bent = (at: number) =>
      track(
        [
          line('main', [straight(500), through('W1', 'points', 'straight'), straight(900)], {
            heights: [height(at, 0), height(1400, 10)],
          }),
        ],
        { turnouts: [w] },
      );
    expect(told(bent(550), 'turnout-in-vertical-curve').map(({ where }) => where)).toEqual(['W1']);
    expect(told(bent(750), 'turnout-in-vertical-curve')).toEqual([]);
  });

  it('a height beyond the end of its line, and one written twice for the start', () => {
    const beyond = track([line('main', [straight(900)], { heights: [height(500, 0), height(1000, 5)] })]);
    const [one] = told(beyond, 'height-beyond-end');
    expect([one?.level, one?.figure, one?.limit]).toEqual(['halt', 1000, 900]);
    const twice = layTrack(track([line('main', [straight(900)], { heights: [height(0, 4), height(600, 5)] })]));
    expect(twice.faults.map(({ rule }) => rule)).toEqual(['height-twice']);
  });

  it('a break before the one before it is a fault', () => {
    const { faults } = layTrack(track([line('main', [straight(900)], { heights: [height(500, 0), height(300, 5)] })]));
    expect(faults.map(({ rule, at }) => [rule, at])).toEqual([['heights-order', 'height.at']]);
  });
});

describe('a helix', () => {
  const helix = (rise: number) =>
    track([line('helix', [curve('left', 400, 1080)], { heights: [height(0, 0), height(6 * Math.PI * 400, rise)] })], {
      rules: { curvePerPercent: 1, grade: 0.05, radius: 'car-lengths', upperDeck: 6, wire: false },
    });

  it('whose turns clear each other', () => {
    expect(told(helix(3 * 43), 'helix-turns-close')).toEqual([]);
    expect(told(helix(3 * 43), 'levels-close')).toEqual([]);
  });

  it('whose turns do not: the rise, and the grade that would do', () => {
    const [one] = told(helix(3 * 30), 'helix-turns-close');
    expect(one?.figure).toBeCloseTo(30, 1);
    // 42.2 in a turn of 2 pi 400: 1.68 %
    expect(say(one === undefined ? [] : [one], 'mend')[0]).toContain('climb 1.68 %');
  });
});

describe('turnouts over each other', () => {
  const w = (id: string) => turnout(id, { kind: 'frog', number: 6, hand: 'left' });
  const two = (y: number) =>
    track(
      [
        line('a', [through('W1', 'points', 'straight')]),
        line('b', [through('W2', 'points', 'straight')], { from: from(60, y) }),
      ],
      { turnouts: [w('W1'), w('W2')] },
    );

  it('halt, with how far apart they have to be', () => {
    const [one] = told(two(3), 'turnouts-overlap');
    expect([one?.level, one?.where]).toEqual(['halt', 'W1']);
    expect(told(two(60), 'turnouts-overlap')).toEqual([]);
  });

  it('joined end to end they are no clash', () => {
    const ladder = track([line('a', [through('W1', 'points', 'straight'), through('W2', 'points', 'straight')])], {
      turnouts: [w('W1'), w('W2')],
    });
    expect(told(ladder, 'turnouts-overlap')).toEqual([]);
  });
});
