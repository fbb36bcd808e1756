import { describe, expect, it } from 'vitest';
import { clearHeight, railSeparation } from '../../src/core/track/clearance.ts';
import { curveDrag, degreeOfCurve, effectiveGrade } from '../../src/core/track/curve-grade.ts';
import { easementFigures, easementLength, easementLimit, easementOffset, fresnel, tangentLength } from '../../src/core/track/easement.ts';
import { crossoverStraight, frogAngle, frogLengths, frogNumber, frogPoint } from '../../src/core/track/frog.ts';
import { layTrack } from '../../src/core/track/lay.ts';
import { verticalOffset, verticalRadius, verticalRise, heightAt, profileOf } from '../../src/core/track/profile.ts';
import { helixGrade, helixRise, leastRamp, mostRise, plainRun, rampRun } from '../../src/core/track/ramp.ts';
import { gaugeOf, modelLength, modelSpeed, scaleFigures } from '../../src/core/track/scale.ts';
import { innerReach, outerReach } from '../../src/core/track/reach.ts';
import { moveAlong } from '../../src/core/track/stretch.ts';
import { absoluteRadius, reliableRadius } from '../../src/core/track/trains-limit.ts';
import { spoken } from '../../src/core/units/say.ts';
import { curve, from, line, radians, straight, through, track, train, turnout } from '../core/track/example.ts';
import published from './track.json' with { type: 'json' };

const INCH = 25.4;
const FOOT = 304.8;
const degrees = (angle: number) => (angle * 180) / Math.PI;
const near = (value: number, wanted: number, within: number) => expect(Math.abs(value - wanted), `${value} for ${wanted}`).toBeLessThanOrEqual(within);

describe('scales', () => {
  for (const { scale, gauge, nem, foot } of published.scales) {
    it(`${scale}: gauge ${gauge}, ${foot} mm to the foot`, () => {
      expect([gaugeOf(scale), scaleFigures(scale).nem]).toEqual([gauge, nem]);
      near(modelLength(FOOT, scale), foot, 0.00005);
    });
  }
  it('lengths and speeds of the prototype', () => {
    for (const { feet, scale, mm } of published.lengths) near(modelLength(feet * FOOT, scale), mm, 0.00501);
    for (const { mph, scale, mm } of published.speeds) near(modelSpeed(mph, scale), mm, 0.051);
  });
});

describe('clothoids', () => {
  it('Fresnel integrals to 1e-9, and odd about 0', () => {
    for (const { x, c, s } of published.fresnel) {
      near(fresnel(x).c, c, 1e-9);
      near(fresnel(x).s, s, 1e-9);
      expect(fresnel(-x)).toEqual({ c: -fresnel(x).c, s: -fresnel(x).s });
    }
    expect(fresnel(0)).toEqual({ c: 0, s: 0 });
  });
  for (const { radius, length, degrees: turn, x, y, shift, k } of published.clothoids) {
    it(`R ${radius}, L ${length}`, () => {
      const own = easementFigures({ radius, length });
      near(degrees(own.angle), turn, 0.00005);
      for (const [value, wanted] of [[own.x, x], [own.y, y], [own.shift, shift], [own.k, k]] as const) near(value, wanted, 0.000501);
      // the series, to the terms that are printed
      near(own.x, length - length ** 3 / (40 * radius ** 2) + length ** 5 / (3456 * radius ** 4), 1e-3);
      near(own.y, length ** 2 / (6 * radius) - length ** 4 / (336 * radius ** 3) + length ** 6 / (42240 * radius ** 5), 1e-4);
      near(own.shift, length ** 2 / (24 * radius) - length ** 4 / (2688 * radius ** 3), 2e-3);
    });
  }
  it('points along R 600, L 300', () => {
    const { radius, length, points } = published.along;
    for (const { s, x, y } of points) {
      near(easementOffset({ radius, length }, s).x, x, 0.000501);
      near(easementOffset({ radius, length }, s).y, y, 0.000501);
    }
  });
  it('to 1e-9 against Fresnel integrals of the same curve', () => {
    // x = A sqrt(pi) C(l / (A sqrt(pi))) with A^2 = R L
    for (const { radius, length } of published.clothoids) {
      const size = Math.sqrt(Math.PI * radius * length);
      const { c, s } = fresnel(length / size);
      near(easementFigures({ radius, length }).x / size, c, 1e-9);
      near(easementFigures({ radius, length }).y / size, s, 1e-9);
    }
  });
  it('the road example', () => {
    const { degrees: turn, radius, length, shift, tangent, tangentHalf } = published.road;
    near(easementFigures({ radius, length }).shift, shift, 0.0006);
    near(tangentLength({ radius, length, through: radians(turn) }), tangent, 0.0006);
    near((radius + easementFigures({ radius, length }).shift) * Math.tan(radians(turn) / 2) + length / 2, tangentHalf, 0.0006);
  });
  it('NEM 113: length by shift, the limit, and half in the straight', () => {
    near(easementLength({ radius: 600, shift: 9 }), Math.sqrt(24 * 600 * 9), 1e-12);
    expect(easementLimit(16.5)).toBe(990);
    for (const { radius, length, k } of published.clothoids) near(easementFigures({ radius, length }).k / (length / 2), 1, Math.abs(k / (length / 2) - 1) + 1e-5);
    // the length by shift gives that shift back, within the series' next term
    near(easementFigures({ radius: 600, length: easementLength({ radius: 600, shift: 9 }) }).shift, 9, 0.03);
  });
});

describe('turnouts', () => {
  it('RP-12.7: lead is point rail, closure and toe', () => {
    for (const { number, lead, closure, toe, heel, point } of published.rp127) {
      const own = frogLengths({ number, gauge: 9 });
      for (const [value, wanted] of [[own.lead, lead], [own.closure, closure], [own.toe, toe], [own.heel, heel], [own.pointRail, point]] as const) near(value / INCH, wanted, 0.0005);
    }
  });
  it('frog angles, and numbers back from them', () => {
    for (const { number, degrees: angle } of published.frogs) {
      near(degrees(frogAngle(number)), angle, 0.0000501);
      near(frogNumber(frogAngle(number)), number, 1e-9);
    }
  });
  it('crossover straights; the frog point lies N gauges from the corner', () => {
    const { spacing, gauge, straights } = published.crossover;
    for (const { number, straight: wanted } of straights) near(crossoverStraight({ spacing, number, gauge }), wanted, 0.0006);
    expect(frogPoint({ number: 6, gauge: 9 })).toBe(54);
  });
  it('two turnouts by frog number back to back lie a crossover apart', () => {
    const number = 6;
    const w = (id: string) => turnout(id, { kind: 'frog', number, hand: 'left' });
    const { toe, heel } = frogLengths({ number, gauge: 9 });
    const spacing = 30;
    // from frog point to frog point, less what both turnouts hold beyond their frogs
    const between = crossoverStraight({ spacing, number, gauge: 9 }) - 2 * heel;
    const { model } = layTrack(track([line('over', [through('A', 'points', 'branch'), straight(between), through('B', 'branch', 'points')])], { turnouts: [w('A'), w('B')] }));
    expect(toe).toBeGreaterThan(0);
    expect(model.lines[0]?.end.y).toBeCloseTo(spacing, 6);
    expect(model.lines[0]?.end.heading).toBeCloseTo(0, 12);
  });
});

describe('heights', () => {
  it('helix', () => {
    const { radius, grade, rise, small, run } = published.helix;
    near(helixRise({ radius, grade }), rise, 0.005);
    near(helixGrade({ radius: small.radius, rise: small.rise }), small.grade, 0.000005);
    near(plainRun({ rise: run.rise, grade: run.grade }), run.run, 1e-9);
  });
  it('vertical curve', () => {
    const { length, change, radius, middle, rise } = published.vertical;
    near(verticalRadius({ length, change }), radius, 1e-9);
    near(verticalOffset({ length, change }), middle, 1e-12);
    near(verticalRise({ length, change }), rise, 1e-12);
    // and in a laid profile: level to 2 % at 100, rounded over 12
    const profile = profileOf([{ at: 0, height: 0, curve: null }, { at: 100, height: 0, curve: length }, { at: 200, height: 2, curve: 0 }], { length: 300, perPercent: 1 });
    near(heightAt(profile, 100), middle, 1e-12);
    near(heightAt(profile, 106), rise, 1e-12);
    near(heightAt(profile, 94), 0, 1e-12);
  });
  it('the drag of curves', () => {
    for (const { scale, radius, percent } of published.drag) near(100 * curveDrag(radius * INCH, scale), percent, 0.005);
    for (const { grade, radius, percent } of published.effective) near(100 * effectiveGrade({ grade: grade / 100, radius: radius * INCH, scale: 'HO' }), percent, 0.0051);
  });
  it('degree of curve by chord', () => {
    for (const { feet, degrees: angle } of published.degree) near(degrees(degreeOfCurve(feet * FOOT)), angle, 0.0005);
  });
  it('rail tops of two levels', () => {
    for (const { scale, wire, deck, roadbed, track: rails, separation } of published.levels) {
      const clear = clearHeight(scale, wire === 'wire' ? 'wire' : 'no wire').height;
      near(railSeparation({ clear, deck, roadbed, track: rails }), separation, 1e-9);
    }
  });
  it('a ramp with its transitions: run, least run, most rise', () => {
    const { rise, foot, car, least, within } = published.ramps;
    for (const { grade, run } of foot) near(rampRun({ rise, perPercent: 12, grade }), run, 1e-9);
    for (const { grade, run } of car) near(rampRun({ rise, perPercent: 10, grade }), run, 1e-9);
    near(leastRamp({ rise, perPercent: 12 }).run, least.run, 1e-9);
    near(leastRamp({ rise, perPercent: 12 }).grade, least.grade, 1e-9);
    near(mostRise({ run: within.run, perPercent: 12 }).rise, within.rise, 0.005);
    near(mostRise({ run: within.run, perPercent: 12 }).grade, within.grade, 0.00005);
  });
});

describe('ready-made track', () => {
  it('a curve of 18 in and 30 degrees', () => {
    const { radius, degrees: turn, arc, chord, sagitta } = published.sections;
    const length = radius * radians(turn);
    near(length, arc, 0.005);
    const { x, y } = moveAlong({ length, k0: 1 / radius, k1: 1 / radius }, length);
    near(Math.hypot(x, y), chord, 0.005);
    near(moveAlong({ length, k0: 1 / radius, k1: 1 / radius }, length / 2).y * Math.cos(radians(turn) / 2) - moveAlong({ length, k0: 1 / radius, k1: 1 / radius }, length / 2).x * Math.sin(radians(turn) / 2), -sagitta, 0.005);
  });

  const { radius, degrees: turn, curves, halfCrossing, straight: wanted, gaps, leg } = published.figureEight;
  const eight = (piece: number | 'to close') => {
    const lobe = (hand: 'left' | 'right') => [straight(piece === 'to close' ? piece : piece * INCH), curve(hand, radius * INCH, turn, { times: curves }), straight(piece === 'to close' ? wanted * INCH : piece * INCH)];
    return track([line('eight', [through('X1', 'points', 'straight'), ...lobe('left'), through('X1', 'cross', 'branch'), ...lobe('right')], { ends: 'eight.start' })], {
      turnouts: [turnout('X1', { kind: 'crossing', hand: 'right', straight: 2 * halfCrossing * INCH, angle: radians(30) })],
    });
  };
  for (const { straight: piece, gap } of gaps) {
    it(`the figure eight with straights of ${piece} in leaves ${gap} in, and no kink`, () => {
      const told = layTrack(eight(piece)).findings.filter(({ rule }) => rule === 'line-open');
      near((told[0]?.figure ?? 0) / INCH, gap, 0.005);
      expect(told.map(({ what }) => spoken(what, String)).join(' ')).not.toContain('kink');
      expect(told).toHaveLength(2);
    });
  }
  it('closes with the straight that geometry asks for', () => {
    near(radius / Math.tan(radians(75)), leg, 0.00005);
    const { model, findings } = layTrack(eight('to close'));
    for (const { value } of model.lines[0]?.unknowns ?? []) near(value / INCH, wanted, 0.002);
    expect(model.lines[0]?.unknowns).toHaveLength(2);
    // what is left is what 1.722 lacks of the exact leg
    near(findings.find(({ rule }) => rule === 'line-open')?.figure ?? 0, 0, 0.01);
  });
});

describe('cars that pass on double track in curves', () => {
  for (const { body, centres, width, radius, clear } of published.passing) {
    const foot = 3.5;
    const car = train('car', { scale: 'HO', length: body * foot, body: body * foot, 'bogie-centres': centres * foot, width: width * foot });
    for (const { spacing, left } of clear) {
      it(`bodies of ${body} ft on ${radius} in and ${spacing} in between leave ${left} in`, () => {
        const outer = radius + spacing;
        near(spacing - (outerReach(car, radius * INCH) + innerReach(car, outer * INCH)) / INCH, left, 0.001);
        const told = layTrack(
          track(
            [
              line('inner', [straight(400), curve('left', radius * INCH, 90)]),
              line('outer', [straight(400), curve('left', outer * INCH, 90)], { from: from(0, -spacing * INCH) }),
            ],
            { scale: 'HO', trains: [car] },
          ),
        ).findings.filter(({ rule }) => rule.startsWith('trains-'));
        expect(told.map(({ level }) => level)).toEqual([left < 0 ? 'halt' : 'note']);
        near((told[0]?.figure ?? 0) / INCH, left, 0.001);
      });
    }
  }
});

describe('radius by NEM 111', () => {
  it('multiples of the gauge by vehicle group, H0', () => {
    // bodies of groups A, B and C in H0: 230, 278 and 313 mm (NEM 103)
    const groups = [230, 278, 313].map((body) => train('car', { scale: 'H0', body, length: body + 6, wheelbase: 30 }));
    groups.forEach((car, i) => {
      near(absoluteRadius(car, 'H0').radius, published.radius.absolute[i] ?? 0, 0.5);
      near(reliableRadius(car, 'H0', 'nem-111').radius, published.radius.main[i] ?? 0, 0.5);
    });
  });
  it('rigid wheelbase', () => {
    const engine = train('engine', { scale: 'H0', body: 100, wheelbase: 200 });
    near(absoluteRadius(engine, 'H0').radius / 200, published.radius.wheelbases, 0.0005);
  });
});
