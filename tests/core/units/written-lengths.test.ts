import { describe, expect, it } from 'vitest';
import { readGauge, wireDiameter } from '../../../src/core/units/gauge.ts';
import { readGloss } from '../../../src/core/units/gloss.ts';
import { readNominal } from '../../../src/core/units/nominal.ts';
import { readRange } from '../../../src/core/units/range.ts';
import { roundTo } from '../../../src/core/units/round.ts';
import { showFeetInches, showInches } from '../../../src/core/units/show.ts';
import { readSizes } from '../../../src/core/units/sizes.ts';
import { readThicknessName } from '../../../src/core/units/thickness-name.ts';
import sizes from '../../published/unit-sizes.json' with { type: 'json' };
import written from '../../published/written-lengths.json' with { type: 'json' };
import { fault, value } from './read.ts';

describe('lengths as people write them (figures from public threads)', () => {
  it.each(written.single)('reads $written as $inches in', ({ written: text, inches }) => {
    expect(value(text)).toBeCloseTo(inches * 25.4, 9);
  });

  it.each(written.asked)('asks about $written', ({ written: text, inches }) => {
    const { what, mend } = fault(text);
    for (const inch of inches) {
      expect(what).toContain(`${roundTo(inch, 0.001)} in)`);
      expect(what).toContain(`(${roundTo(inch * 25.4, 0.01)} mm`);
    }
    expect(mend.split('`').length).toBeGreaterThan(4);
  });

  it.each(written.sizes)('reads the sizes $written', (row) => {
    const found = readSizes(row.written) ?? [];
    expect(found.map(({ mm }) => mm / 25.4)).toEqual(row.inches.map((inch) => expect.closeTo(inch, 9)));
    expect(found.map(({ axis }) => axis)).toEqual(row.axes ?? row.inches.map(() => null));
    expect(fault(row.written).rule).toBe('several-lengths');
    for (const inch of row.inches) expect(fault(row.written).what).toContain(`${inch} in)`);
  });

  it.each(written.ranges)('reads the range $written', ({ written: text, inches, axis }) => {
    const found = readRange(text);
    expect([found?.from, found?.to]).toEqual(inches.map((inch) => expect.closeTo(inch * 25.4, 9)));
    expect(found?.axis).toBe(axis);
    expect(fault(text).rule).toBe('range');
  });

  it.each(written.nominal)(
    'reads the nominal size $written (PS 20 dressed sizes)',
    ({ written: text, dressed, length }) => {
      const found = readNominal(text);
      const planed = found?.sizes.map((one) =>
        one.dressed === null ? null : [one.dressed.thickness, one.dressed.width],
      );
      expect(planed).toEqual(dressed.map((pair) => pair?.map((inch) => expect.closeTo(inch * 25.4, 9)) ?? null));
      expect(found?.length).toEqual(length === null ? null : expect.closeTo(length * 25.4, 9));
      expect(fault(text).rule).toBe('nominal-size');
    },
  );

  it.each(written.thicknesses)('reads the thickness name $written', ({ written: text, mm }) => {
    expect(readThicknessName(text)).toEqual({ nominal: mm, material: 'ply' });
    expect(fault(text).rule).toBe('thickness-name');
  });

  it.each(written.glosses)('reads $written and its gloss', ({ written: text, ...lengths }) => {
    expect(readGloss(text)).toMatchObject(lengths);
    expect(fault(text).what).toContain(`${lengths.apart} mm`);
  });

  it.each(written.gauges)('tells what $written counts', ({ written: text, of, number }) => {
    expect(readGauge(text)).toEqual({ of, number });
    expect(fault(text).rule).toBe('number-mark');
  });

  it('finds no shop notation in plain lengths', () => {
    for (const text of ['7-1/2"', '7 1/2 in', '7\' 2 3/8"', '18 mm', 'side - strut']) {
      const found = [
        readSizes(text),
        readRange(text),
        readNominal(text),
        readThicknessName(text),
        readGloss(text),
        readGauge(text),
      ];
      expect(found).toEqual([null, null, null, null, null, null]);
    }
  });
});

describe('feet as decimals lose sixteenths (field case O-18, public threads; addresses in the published file)', () => {
  const sixteenth = 25.4 / 16;
  const lost = (digits: number) =>
    Array.from({ length: 192 }, (_, k) => k).filter((k) => {
      const back = roundTo(value(`${(k / 192).toFixed(digits)} ft`), sixteenth);
      return Math.abs(back - k * sixteenth) > 1e-6;
    }).length;

  it('92 of the 192 sixteenths in a foot do not survive two decimals, all survive three', () => {
    expect(lost(2)).toBe(92);
    expect(lost(3)).toBe(0);
  });

  it('keeps the examples exact and shows where the spreadsheet went wrong', () => {
    expect(value('5\'-6 3/4"')).toBe(1695.45);
    expect(value('5.5625 ft')).toBe(1695.45);
    expect(showInches(value('5.56 ft'), 16, Number.POSITIVE_INFINITY)).toBe('66 3/4');
    expect(showInches(value('5.56 ft'), 32, Number.POSITIVE_INFINITY)).toBe('66 23/32');
    expect(showInches(value('12\'-5 1/8"'), 16)).toBe('149 1/8');
    expect(showInches(value('12.43 ft'), 16)).toBe('149 3/16-');
    expect(showFeetInches(value('88.28125 in'), 32)).toBe('7\' 4 9/32"');
  });
});

describe('sizes of units', () => {
  it.each(sizes.sizes)('$written', ({ written: text, dimension, value: published, within }) => {
    if (
      dimension !== 'length' &&
      dimension !== 'mass' &&
      dimension !== 'stress' &&
      dimension !== 'density' &&
      dimension !== 'volume' &&
      dimension !== 'angle'
    ) {
      throw new Error(dimension);
    }
    expect(Math.abs(value(text, dimension) - published)).toBeLessThanOrEqual(within);
  });

  it.each(sizes.wires.rows)('wire of gauge $gauge', ({ gauge, inches, within }) => {
    expect(Math.abs(wireDiameter(gauge) / 25.4 - inches)).toBeLessThanOrEqual(within);
  });
});
