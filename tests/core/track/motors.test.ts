import { describe, expect, it } from 'vitest';
import type { Envelope } from '../../../src/core/stock/part.ts';
import type { Ground } from '../../../src/core/track/input.ts';
import { layTrack } from '../../../src/core/track/lay.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { from, line, straight, tableGround, through, track, turnout } from './example.ts';

const MOTOR = { along: 40, across: 20, below: 45 };
const ground = tableGround();

/** Straight, turnout, straight along y; the throw bar 15.775 beyond the points. */
function yard(
  x: number,
  y: number,
  more: { readonly heading?: number; readonly before?: number; readonly ground?: Ground; readonly below?: number } = {},
) {
  const { heading = 0, before = 200 } = more;
  const turned = (heading * Math.PI) / 180;
  const start = from(x - before * Math.cos(turned), y - before * Math.sin(turned), heading);
  const motor = { ...MOTOR, below: more.below ?? MOTOR.below };
  return track(
    [line('main', [straight(before), through('W1', 'points', 'straight'), straight(300)], { from: start })],
    {
      turnouts: [turnout('W1', { kind: 'frog', number: 6, hand: 'left' }, { motor })],
      ground: more.ground ?? ground,
    },
  );
}

const clash = (input: ReturnType<typeof yard>, rule = 'motor-clash') =>
  layTrack(input).findings.find((one) => one.rule === rule);
const words = (finding: ReturnType<typeof clash>, key: 'what' | 'mend') =>
  spoken(finding?.[key] ?? [], (mm) => `${Math.round(mm * 10) / 10}`);

describe('room for a motor', () => {
  it('free between struts', () => {
    expect(clash(yard(500, 300))).toBeUndefined();
  });

  it('over a strut: the least move that frees it', () => {
    // strut.across-2 is 17.7 thick about 800, its laps reach no further; the motor is 40 long about the throw bar
    const throwBar = 802;
    const told = clash(yard(throwBar - 15.775, 300));
    expect(words(told, 'what')).toContain('strut.across-2');
    expect(told?.figure).toBeCloseTo(800 + 17.7 / 2 - (throwBar - 20), 1);
    expect(words(told, 'mend')).toContain('on, the way one enters at the points');
  });

  it('a deep motor reaches the flange strip, which is wider than the strut', () => {
    const throwBar = 845;
    expect(clash(yard(throwBar - 15.775, 300))).toBeUndefined();
    const told = clash(yard(throwBar - 15.775, 300, { below: 150 }));
    expect(words(told, 'what')).toContain('flange');
    // the strip is 60 wide about 800: 830 less the motor's near end
    expect(told?.figure).toBeCloseTo(830 - (throwBar - 20), 1);
  });

  it('a drawer that is pulled through, in bench coordinates', () => {
    const drawer: Envelope = {
      id: 'drawer.front-2',
      of: 'drawer.front-2',
      kind: 'drawer',
      min: [420, 100, 600],
      max: [780, 500, 689],
    };
    const told = clash(yard(500, 300, { ground: { ...ground, envelopes: [drawer] } }));
    expect(words(told, 'what')).toBe('the motor of W1 stands in drawer.front-2');
    const shelf: Envelope = { ...drawer, kind: 'shelf' };
    expect(clash(yard(500, 300, { ground: { ...ground, envelopes: [shelf] } }))).toBeUndefined();
    expect(clash(yard(500, 300, { ground: { ...ground, envelopes: [shelf] } }), 'motor-in-shelf')?.level).toBe('care');
  });

  it('says when the straights are too short for the move', () => {
    const short = yard(800 - 15.775 - 2, 300, { before: 5 });
    const told = clash(short);
    // back is nearer, but only 5 mm of straight lie there: on is told instead
    expect(words(told, 'mend')).toContain('on, the way one enters');
    const none = track([line('main', [through('W1', 'points', 'straight')], { from: from(800 - 15.775 - 2, 300) })], {
      turnouts: [turnout('W1', { kind: 'frog', number: 6, hand: 'left' }, { motor: MOTOR })],
      ground,
    });
    expect(words(clash(none), 'mend')).toContain('so the line has to change');
  });

  it('stands turned with its turnout, and its slot keeps its shape', () => {
    const { model } = layTrack(yard(500, 300, { heading: 30 }));
    const [slot] = model.requests;
    expect(slot?.kind).toBe('cut-out');
    const [a, b, c] = slot?.outline ?? [];
    if (a === undefined || b === undefined || c === undefined) throw new Error('no outline');
    expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(6.3, 9);
    expect(Math.hypot(c[0] - b[0], c[1] - b[1])).toBeCloseTo(9, 9);
    expect(Math.atan2(b[1] - a[1], b[0] - a[0])).toBeCloseTo(Math.PI / 6, 9);
    const upright = layTrack(yard(500, 300, { heading: 90 })).model.requests[0];
    expect([upright?.kind, upright?.size.map((size) => Math.round(size * 1e9) / 1e9)]).toEqual(['slot', [9, 6.3]]);
  });
});
