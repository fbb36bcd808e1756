import { describe, expect, it } from 'vitest';
import { drillFindings } from '../../../src/core/benchwork/hardware/drills.ts';
import { compute } from '../../../src/core/notebook.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { changedPlan } from '../wiring/changed-demo.ts';
import { model } from './example.ts';
import { fittedTable } from './fitted.ts';

const IN = 25.4;
const built = model(fittedTable());

function told(drills: readonly number[]) {
  return drillFindings(built, drills).map(({ rule, level, figure, limit, what, mend }) => {
    expect(rule).toBe('drill-not-in-hand');
    return [level, figure, limit, spoken([...what, ': ', ...mend], (mm) => mm.toFixed(2))] as const;
  });
}

describe('drills in hand against the holes that are asked for', () => {
  // the table of screw holes (American Wood Council): number 6 and 8 for 3.5 and 4 mm screws; ISO 273 for M8; inserts of M6 in 8
  const all = [(5 * IN) / 64, (3 * IN) / 32, (11 * IN) / 64, 8, 8.4];

  it('says nothing where nobody names drills, and nothing where all are there', () => {
    expect(told([])).toEqual([]);
    expect(told(all)).toEqual([]);
  });

  it('tells each drill that is missing once, with what it is for', () => {
    for (const gone of all) {
      const rest = all.filter((one) => one !== gone);
      const found = told(rest);
      expect(found.map(([, figure]) => figure)).toEqual([expect.closeTo(gone, 9)]);
    }
  });

  it('names the nearest that serves: a pilot a little thinner, a clearance hole a little wider', () => {
    expect(told([2, 2.5, 4.5, 8, 8.5])).toEqual([
      [
        'note',
        (3 * IN) / 32,
        2.5,
        'pilots of screws want a drill of 2.38, which is not among yours: yours of 2.50 serves',
      ],
      [
        'note',
        (11 * IN) / 64,
        4.5,
        'clearance holes of screws want a drill of 4.37, which is not among yours: yours of 4.50 serves',
      ],
      [
        'note',
        8.4,
        8.5,
        'holes for bolts and wires want a drill of 8.40, which is not among yours: yours of 8.50 serves',
      ],
    ]);
  });

  it('is a care where none serves: an insert turns in a hole that is too wide', () => {
    const found = told([2, 2.4, 4.4, 8.4]);
    expect(found).toEqual([
      [
        'care',
        8,
        null,
        'inserts want a drill of 8.00, which is not among yours: get one of 7.80 to 8.20, and write it under tools: drills',
      ],
    ]);
  });
});

describe('drills on the cover of a notebook', () => {
  const withDrills = (drills: string) =>
    compute(
      changedPlan({
        file: 'notebook',
        from: 'clamps: { 600 mm: 8 }',
        to: `clamps: { 600 mm: 8 }\n  drills: [${drills}]`,
      }),
    );

  it('are compared with what the whole plan asks for, the holes of the wires too', () => {
    const book = withDrills('2 mm, 2.5 mm, 4.5 mm, 8 mm, 8.5 mm');
    const found = book.ok ? book.value.findings.filter(({ rule }) => rule === 'drill-not-in-hand') : [];
    const wires = book.ok ? (book.value.wiring?.holes ?? []).map(({ diameter }) => diameter) : [];
    expect(wires.length).toBeGreaterThan(0);
    const cares = found.filter(({ level }) => level === 'care').map(({ figure }) => figure);
    expect(new Set(cares)).toEqual(new Set(wires));
    expect(found.filter(({ level }) => level === 'note')).toHaveLength(3);
  });

  it('have a size', () => {
    const book = withDrills('2 mm, 0 mm');
    expect(book.ok ? [] : book.faults.map(({ rule }) => rule)).toEqual(['size-not-positive']);
  });
});
