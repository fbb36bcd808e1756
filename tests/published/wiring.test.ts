import { describe, expect, it } from 'vitest';
import { network, loopResistance } from '../../src/core/wiring/circuit.ts';
import { gaugeArea, longestRun, ohmPerMetre, voltageDrop, warmResistance } from '../../src/core/wiring/copper.ts';
import { ledResistor, preferredAbove } from '../../src/core/wiring/led.ts';
import { fuseRange, isClass2, mostLoop, trips } from '../../src/core/wiring/protection.ts';
import { railOhmPerMetre } from '../../src/core/wiring/rail-metal.ts';
import { circleLength, leastCircle, reversingNeeds } from '../../src/core/wiring/reversing-length.ts';
import { cabinetTop, drawerPitch, handRoom } from '../../src/core/wiring/under-deck.ts';
import published from './wiring.json' with { type: 'json' };

const FOOT = 304.8;
const KILOFOOT = 304.8;

function gaugeOhm(gauge: number): number {
  return ohmPerMetre(gaugeArea(gauge));
}

function tabledOhm(gauge: number): number {
  return (published.gauges.find((one) => one.gauge === gauge)?.ohm ?? 0) / KILOFOOT;
}

describe('American gauges', () => {
  for (const { gauge, area, ohm } of published.gauges) {
    it(`AWG ${gauge} has its area and resistance`, () => {
      if (area !== undefined) expect(Math.abs(gaugeArea(gauge) - area)).toBeLessThanOrEqual(0.005);
      expect(Math.abs(gaugeOhm(gauge) * KILOFOOT - ohm) / ohm).toBeLessThan(0.0025);
    });
  }
});

describe('the longest run for 5 % of 15 V', () => {
  const { volts, share, amps, rows } = published.lengths;
  for (const { gauge, feet } of rows) {
    it(`AWG ${gauge}`, () => {
      feet.forEach((wanted, i) => {
        const run = longestRun({ drop: volts * share, ohmPerMetre: tabledOhm(gauge), amps: amps[i] ?? 1 }) / FOOT;
        expect(Math.abs(run - wanted)).toBeLessThanOrEqual(0.5);
      });
    });
  }
});

describe('voltage drops', () => {
  for (const { what, feet, metres, ohmPer1000ft, area, resistivity, amps, volts, within } of published.drops) {
    it(what, () => {
      const oneWay = feet === undefined ? (metres ?? 0) * 1000 : feet * FOOT;
      const r = ohmPer1000ft === undefined ? ohmPerMetre(area ?? 1, resistivity) : ohmPer1000ft / KILOFOOT;
      expect(Math.abs(voltageDrop({ oneWay, ohmPerMetre: r, amps }) - volts)).toBeLessThanOrEqual(within);
    });
  }

  for (const { gauge, feet, amps, volts } of published.longBus) {
    it(`AWG ${gauge}, ${feet} ft from the controller, ${amps} A`, () => {
      const drop = voltageDrop({ oneWay: feet * FOOT, ohmPerMetre: gaugeOhm(gauge), amps });
      expect(Math.abs(drop - volts)).toBeLessThanOrEqual(0.001);
    });
  }

  it('a rail', () => {
    const { code, feet, amps, volts } = published.rail;
    const drop = voltageDrop({ oneWay: feet * FOOT, ohmPerMetre: railOhmPerMetre(code), amps });
    expect(Math.abs(drop - volts)).toBeLessThanOrEqual(0.005);
  });

  it('warm copper resists more', () => {
    expect(warmResistance(1, 80)).toBeCloseTo(1 + 60 * 0.00393, 9);
    expect(warmResistance(2.5, 20)).toBe(2.5);
  });
});

describe('a short', () => {
  const { volts, rows } = published.trip;
  for (const { tripsAt, ohm } of rows) {
    it(`trips ${tripsAt} A at 15 V through at most ${ohm} ohm`, () => {
      const most = mostLoop({ volts, tripsAt });
      expect(Math.abs(most - ohm)).toBeLessThanOrEqual(0.005);
      expect(trips({ volts, tripsAt, loop: most * 0.999 })).toBe(true);
      expect(trips({ volts, tripsAt, loop: most * 1.001 })).toBe(false);
    });
  }

  it('sees a loop of bus, feeder and rail', () => {
    const { bus, feeder, rail, ohm } = published.loop;
    const both = (feet: number, r: number) => (2 * feet * FOOT * r) / 1000;
    const net = network({
      source: 'supply',
      branches: [
        { id: 'bus', from: 'supply', to: 'tap', ohm: both(bus.feet, gaugeOhm(bus.gauge)) },
        { id: 'tail', from: 'tap', to: 'joint', ohm: both(feeder.feet, gaugeOhm(feeder.gauge)) },
        { id: 'rail', from: 'joint', to: 'coin', ohm: both(rail.feet, railOhmPerMetre(rail.code)) },
      ],
    });
    expect(Math.abs((loopResistance(net, 'coin') ?? 0) - ohm)).toBeLessThanOrEqual(0.0005);
  });
});

describe('fuses and supplies', () => {
  it('a fuse carries its load and protects its wire', () => {
    expect(fuseRange(4, 5.9)).toEqual({ least: 5, most: 5.9 });
    expect(fuseRange(5, 5.9)).toBeNull();
  });

  it('class 2 is 30 V and 100 VA', () => {
    expect([isClass2(15, 5), isClass2(20, 5), isClass2(20, 5.1), isClass2(31, 1)]).toEqual([true, true, false, false]);
  });
});

describe('light-emitting diodes', () => {
  it('one red on 12 V at 10 mA takes 1 kilohm, 100 mW', () => {
    const resistor = ledResistor({ supply: 12, forward: 2, count: 1, amps: 0.01 });
    expect(resistor?.exact).toBeCloseTo(1000, 9);
    expect(resistor?.bought).toBe(1000);
    expect(resistor?.watts).toBeCloseTo(0.1, 9);
  });

  it('buys the next preferred value up, and refuses what cannot light', () => {
    expect([preferredAbove(1001), preferredAbove(91.5), preferredAbove(0.47), preferredAbove(920)]).toEqual([1100, 100, 0.47, 1000]);
    expect(ledResistor({ supply: 5, forward: 3.2, count: 2, amps: 0.01 })).toBeNull();
    expect(ledResistor({ supply: 5, forward: 2, count: 1, amps: 0 })).toBeNull();
  });
});

describe('a train of 4 m and loops in a garden', () => {
  const { train, margin, circles, leastRadius, leastWithMargin } = published.reversing;
  for (const { radius, length, enough } of circles) {
    it(`a full circle of ${radius} mm ${enough ? 'holds it' : 'fails even if all of it is isolated'}`, () => {
      expect(Math.abs(circleLength(radius) - length)).toBeLessThanOrEqual(5);
      expect(circleLength(radius) >= reversingNeeds(train, 1)).toBe(enough);
      expect(radius >= leastCircle(reversingNeeds(train, 1))).toBe(enough);
    });
  }

  it('the least radius, bare and with a tenth to spare', () => {
    expect(Math.abs(leastCircle(reversingNeeds(train, 1)) - leastRadius)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(leastCircle(reversingNeeds(train, margin)) - leastWithMargin)).toBeLessThanOrEqual(0.5);
    expect(reversingNeeds(train)).toBeCloseTo(4400, 9);
  });
});

describe('room under a deck', () => {
  it('a cabinet stops where the wires hang', () => {
    const { space, wires, panels, drawers, top, pitch } = published.underDeck.cabinet;
    expect(cabinetTop(space, wires)).toBe(top);
    expect(drawerPitch(top, { panels, drawers })).toBe(pitch);
  });

  it('a hand has two inches over a cabinet', () => {
    const { track, cabinet, deck, gear, room } = published.underDeck.hand;
    expect(handRoom({ track, below: cabinet, deck, gear })).toBe(room);
  });
});
