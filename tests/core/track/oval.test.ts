import { describe, expect, it } from 'vitest';
import { enlargeRadius } from '../../../src/core/track/enlarge.ts';
import { layTrack } from '../../../src/core/track/lay.ts';
import { distanceOf } from '../../../src/core/track/line.ts';
import { heightAt, slopeAt } from '../../../src/core/track/profile.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { oval } from './example.ts';

const words = (findings: ReturnType<typeof layTrack>['findings']) =>
  findings.map(
    ({ rule, level, where, what, mend }) =>
      `${level} ${rule} ${where}: ${spoken(what, String)} | ${spoken(mend, String)}`,
  );

describe('the demo oval', () => {
  const { model, findings, faults } = layTrack(oval());
  const [main, siding] = model.lines;

  it('finds the straight and the second radius that close it', () => {
    expect(faults).toEqual([]);
    const found = Object.fromEntries((main?.unknowns ?? []).map(({ what, value }) => [what, value]));
    expect(found.radius).toBeCloseTo(380, 6);
    // the back straight is as long as the front one: 360, the turnout and what closes
    const turnout = model.turnouts[0];
    expect((found.straight ?? 0) + 360 + ((turnout?.leaves ?? 0) - (turnout?.enters ?? 0))).toBeCloseTo(626, 6);
  });

  it('reaches from 59.0 to 1535.0 and from 150 to 911.8', () => {
    const { x0, x1, y0, y1 } = main?.extents ?? { x0: 0, x1: 0, y0: 0, y1: 0 };
    expect([x0, x1, y0, y1].map((value) => Math.round(value * 10) / 10)).toEqual([59, 1535, 150, 911.8]);
  });

  it('meets itself in place, heading, height and slope', () => {
    expect(Math.hypot((main?.end.x ?? 0) - 484, (main?.end.y ?? 0) - 150)).toBeLessThan(1e-6);
    expect((main?.end.heading ?? 0) - 2 * Math.PI).toBeCloseTo(0, 9);
    if (main === undefined) throw new Error('no main line');
    expect([
      heightAt(main.profile, 0),
      heightAt(main.profile, main.length),
      slopeAt(main.profile, main.length),
    ]).toEqual([0, 0, 0]);
    expect(heightAt(main.profile, 2000)).toBe(18);
    const told = findings.map(({ rule }) => rule);
    for (const rule of [
      'line-open',
      'height-step',
      'slope-kink',
      'lines-cross',
      'levels-close',
      'leaves-deck',
      'motor-clash',
    ])
      expect(told).not.toContain(rule);
  });

  it('starts the siding at the turnout, in place, heading and height', () => {
    const turnout = model.turnouts[0];
    expect(siding?.from).toBe('W1.branch');
    expect(siding?.start.y).toBeGreaterThan(911.8);
    // along the back straight (180 degrees), turned right by 2 atan(1 / 2N)
    expect(Math.cos((siding?.start.heading ?? 0) - (Math.PI - 2 * Math.atan(1 / 12)))).toBeCloseTo(1, 12);
    expect(siding?.profile.breaks[0]?.height).toBeCloseTo(18, 9);
    expect(turnout?.line).toBe('main');
  });

  it('keeps named joints and places along the line', () => {
    expect(main === undefined ? null : distanceOf(main, { past: 'basin-east', by: 40 })).toBe(666);
    expect(main === undefined ? 0 : distanceOf(main, { past: 'basin-west', by: 40 })).toBeNull();
    expect(main === undefined ? 0 : distanceOf(main, { at: 4000 })).toBeNull();
  });

  it('says what its steepest place pulls like, and which vehicle wants more radius', () => {
    const steep = findings.find(({ rule }) => rule === 'grade-steep');
    // 2 % and 17.19 / R (in) % on 380 mm
    expect(steep?.figure).toBeCloseTo(2 + 17.189 / (380 / 25.4), 2);
    const radius = findings.find(({ rule }) => rule === 'radius-small');
    expect([radius?.level, radius?.limit]).toEqual(['care', 498]);
    expect(radius?.figure).toBeCloseTo(380, 6);
    expect(findings.filter(({ level }) => level === 'halt')).toEqual([]);
  });

  it('says everything it assumed', () => {
    expect(words(findings).filter((line) => line.startsWith('note'))).toMatchInlineSnapshot(`
      [
        "note track-assumed track: assumed: lengths of flexible track of 914.4, 3.2 from roadbed to rail top, a deck of 6 under lines that cross over others | write them under flex and rules in track.md",
      ]
    `);
  });

  it("asks for the motor's room under the deck and a slot over the points", () => {
    const [room] = model.envelopes;
    expect([room?.kind, room?.of]).toEqual(['motor', 'W1']);
    expect((room?.max[2] ?? 0) - (room?.min[2] ?? 0)).toBeCloseTo(45, 9);
    expect(room?.max[2]).toBeCloseTo(700 - 9.2, 9);
    expect((room?.max[0] ?? 0) - (room?.min[0] ?? 0)).toBeCloseTo(40, 6);
    const [slot] = model.requests;
    expect([slot?.by, slot?.kind, slot?.part, slot?.at[2]]).toEqual(['W1', 'slot', 'deck.1', 700]);
  });
});

describe('the demo oval with its radius 60 mm larger', () => {
  const change = enlargeRadius(oval(), { line: 'main', piece: 1 }, 60);

  it('finds the second radius anew, and says how much longer everything is', () => {
    const main = change?.lines.find(({ id }) => id === 'main');
    expect(change?.closes).toBe(true);
    expect(main?.unknowns.after.find(({ what }) => what === 'radius')?.value).toBeCloseTo(440, 6);
    expect((main?.length.after ?? 0) - (main?.length.before ?? 0)).toBeCloseTo(2 * Math.PI * 60, 6);
    expect(main?.extents.after.y1).toBeCloseTo(150 + 2 * (440 + 90 ** 2 / 24 / 440), 2);
  });

  it('leaves the deck at both ends, and says the largest radius that stays', () => {
    // roadbed 25 wide: at the left x = 484 - k - R - 12.5 must be 0 or more, k = 44.98; at the right 1100 + k + R + 12.5 <= 1603
    const k = 45 - 90 ** 3 / 240 / 427 ** 2;
    expect(change?.leaves.map(({ line }) => line)).toEqual(['main', 'main']);
    expect(change?.leaves.map(({ point: [x] }) => Math.round(x))).toEqual([1595, -1]);
    expect(change?.leaves[1]?.beyond).toBeCloseTo(-(484 - k - 440 - 12.5), 1);
    expect(change?.largest).toBe(Math.floor((484 - k - 12.5) * 10) / 10);
  });

  it('is told as a halt with that radius when it is written', () => {
    const { findings } = layTrack(oval({ radius: 440 }));
    const told = findings.filter(({ rule }) => rule === 'leaves-deck');
    expect(told.map(({ level }) => level)).toEqual(['halt', 'halt']);
    expect(told.map(({ mend }) => spoken(mend, String))).toEqual([
      'the largest radius of piece 2 that stays on the deck is 426.5',
      'the largest radius of piece 2 that stays on the deck is 426.5',
    ]);
  });
});

describe('a motor over a strut', () => {
  // points at 1110 - before; the throw bar 15.775 beyond; strut.across-2 stands 791.15 to 808.85, its flange strip 770 to 830
  const before = 1110 - 815;
  const { findings } = layTrack(oval({ before }));
  const clash = findings.find(({ rule }) => rule === 'motor-clash');

  it('halts, names what it stands in and says the least move', () => {
    expect(clash?.level).toBe('halt');
    expect(spoken(clash?.what ?? [], String)).toContain('strut.across-2');
  });

  it('is cleared by that move, and not by less', () => {
    const shift = clash?.figure ?? 0;
    expect(shift).toBeGreaterThan(1);
    const way = spoken(clash?.mend ?? [], String).includes(' on,') ? 1 : -1;
    const rules = (move: number) => layTrack(oval({ before: before + way * move })).findings.map(({ rule }) => rule);
    expect(rules(shift + 1e-3)).not.toContain('motor-clash');
    expect(rules(shift - 1e-3)).toContain('motor-clash');
  });
});
