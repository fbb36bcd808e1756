import { describe, expect, it } from 'vitest';
import {
  knownThickness,
  readingAllowance,
  readingFaults,
  thicknessFindings,
} from '../../../src/core/stock/thickness-check.ts';
import { PLY_18 } from '../benchwork/example.ts';

describe('knownThickness', () => {
  it('takes the mean for lengths and the thickest for slots', () => {
    expect(knownThickness(PLY_18, [17.6, 17.7, 17.8])).toMatchObject({
      mean: 17.7,
      thickest: 17.8,
      measured: true,
      nominal: 18,
    });
  });

  it('takes the listed mean while there is no reading', () => {
    expect(knownThickness(PLY_18, [])).toMatchObject({
      mean: 17.7,
      thickest: 17.7,
      measured: false,
      low: 17.1,
      high: 18.1,
    });
  });

  it('never lets the mean pass the thickest', () => {
    const known = knownThickness(PLY_18, [17.7, 17.7, 17.7]);
    expect(known.mean).toBe(17.7);
    expect(known.thickest).toBe(17.7);
  });
});

describe('readings', () => {
  it('allows 1 mm or 8 % from nominal, whichever is more', () => {
    expect([readingAllowance(9), readingAllowance(18)]).toEqual([1, 1.44]);
  });

  it('refuses 25 mm for an 18 mm sheet where it was written, and one bad reading among good ones', () => {
    const faults = readingFaults(PLY_18, [
      { value: 17.7, at: 'log.0' },
      { value: 25, at: 'benchwork.materials.frame.measured' },
    ]);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ rule: 'thickness-of-another-sheet', at: 'benchwork.materials.frame.measured' });
    expect(faults[0]?.what).toBe(
      "25 mm (0.984 in) can't be the thickness of birch-ply-18, which is sold as 18 mm (0.709 in)",
    );
  });

  it('refuses what is no thickness at all', () => {
    expect(
      readingFaults(
        PLY_18,
        [0, -18, Number.NaN, Number.POSITIVE_INFINITY].map((value) => ({ value, at: 'x' })),
      ),
    ).toHaveLength(4);
  });

  it('accepts the edge of the allowance', () => {
    expect(
      readingFaults(PLY_18, [
        { value: 19.4, at: 'x' },
        { value: 16.6, at: 'x' },
      ]),
    ).toEqual([]);
  });
});

describe('findings', () => {
  it('care above and below the listed range, with the limit that was passed', () => {
    expect(thicknessFindings(knownThickness(PLY_18, [18.3]), 'frame')).toMatchObject([
      { level: 'care', figure: 18.3, limit: 18.1, where: 'frame' },
    ]);
    expect(thicknessFindings(knownThickness(PLY_18, [17]), 'frame')).toMatchObject([
      { level: 'care', figure: 17, limit: 17.1 },
    ]);
  });

  it('nothing to say about a sheet measured within its range; a note when it was not', () => {
    // a sheet of exactly its lowest thickness, printed with three decimals of an inch, is in its range
    const { low } = knownThickness(PLY_18, []);
    expect(thicknessFindings(knownThickness(PLY_18, [low - 0.01]), 'frame')).toEqual([]);
    expect(thicknessFindings(knownThickness(PLY_18, [low - 0.05]), 'frame')).toHaveLength(1);
    expect(thicknessFindings(knownThickness(PLY_18, [17.7]), 'frame')).toEqual([]);
    expect(thicknessFindings(knownThickness(PLY_18, []), 'frame')).toMatchObject([
      { level: 'note', rule: 'thickness-not-measured' },
    ]);
  });
});
