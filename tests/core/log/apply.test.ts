import { describe, expect, test } from 'vitest';
import { textsAfter } from '../../../src/core/log/chain.ts';
import { applied, entry, read, records, values } from './entries.ts';

const readings = (...texts: readonly string[]) => ({
  measured: [{ what: 'frame.thickness', readings: texts, with: 'caliper', within: '0.05 mm' }],
});
const change = (was: string, to: string, set = 'dimensions.width') => ({
  change: [{ set, was, to, because: 'the post' }],
});

describe('measured inputs', () => {
  test('enter with mean and thickest; the latest entry wins, whatever the order of the files', () => {
    const older = entry('2026-01-10-sheets', readings('17.2 mm'));
    const newer = entry('2026-02-10-again', readings('17.6 mm', '17.7 mm', '17.8 mm'));
    for (const list of [
      [older, newer],
      [newer, older],
    ]) {
      const { measured, faults } = applied(list);
      expect(faults).toEqual([]);
      expect(measured['frame.thickness']).toMatchObject({
        date: '2026-02-10',
        texts: ['17.6 mm', '17.7 mm', '17.8 mm'],
        with: 'caliper',
      });
      expect(measured['frame.thickness']?.mean).toBeCloseTo(17.7, 9);
      expect(measured['frame.thickness']?.thickest).toBeCloseTo(17.8, 9);
    }
  });

  test('and a chapter that says otherwise is told both figures', () => {
    const log = [entry('2026-01-10-sheets', readings('17.6 mm', '17.7 mm', '17.8 mm'))];
    expect(applied(log, { own: '17.7 mm' }).faults).toEqual([]);
    const [fault] = applied(log, { own: '17.5 mm' }).faults;
    expect(fault).toMatchObject({ rule: 'measured-twice', at: 'benchwork.materials.frame.measured' });
    expect(fault?.what).toContain('17.5 mm');
    expect(fault?.what).toContain('17.7 mm');
  });

  test('results of parts and benches never enter', () => {
    const log = [entry('2026-01-10-cut', { measured: [{ what: 'side.front.length', readings: ['1598 mm'] }] })];
    expect(applied(log, {}).measured).toEqual({});
  });

  test('readings that exclude each other are told', () => {
    const wide = applied([entry('2026-01-10-sheets', readings('17.7 mm', '19.7 mm'))]);
    expect(wide.findings).toMatchObject([{ rule: 'readings-contradict', where: 'frame.thickness' }]);
    const clash = applied([entry('2026-01-10-a', readings('17.2 mm')), entry('2026-01-10-b', readings('17.8 mm'))]);
    expect(clash.findings).toMatchObject([{ rule: 'readings-contradict' }]);
    expect(clash.measured['frame.thickness']?.mean).toBeCloseTo(17.8, 9);
    expect(
      applied([entry('2026-01-10-a', readings('17.2 mm')), entry('2026-03-10-b', readings('17.8 mm'))]).findings,
    ).toEqual([]);
  });
});

describe('changes', () => {
  test('hold when each was is the to before it and the last to is in the chapter', () => {
    const log = [entry('2026-02-01-a', change('1000 mm', '1050 mm')), entry('2026-03-01-b', change('105 cm', '1.1 m'))];
    expect(applied(log).faults).toEqual([]);
    expect(applied(log).changes.map((one) => [one.date, one.was, one.to])).toEqual([
      ['2026-02-01', 1000, 1050],
      ['2026-03-01', 1050, 1100],
    ]);
  });

  test('that do not join say what you have and what it implies', () => {
    const log = [
      entry('2026-02-01-a', change('1000 mm', '1050 mm')),
      entry('2026-03-01-b', change('1060 mm', '1100 mm')),
    ];
    expect(applied(log).faults).toMatchObject([
      {
        rule: 'change-chain',
        at: 'log.2026-03-01-b.change.0.was',
        what: "you have 'was: 1060 mm', but 2026-02-01-a set benchwork.dimensions.width to 1050 mm",
      },
    ]);
  });

  test('whose last to is not in the chapter are told', () => {
    const log = [entry('2026-02-01-a', change('1000 mm', '1050 mm'))];
    expect(applied(log).faults).toMatchObject([{ rule: 'change-end', at: 'log.2026-02-01-a.change.0.to' }]);
  });

  test('of words are compared as words', () => {
    const deck = (was: string, to: string) => [entry('2026-02-01-a', change(was, to, 'materials.deck'))];
    expect(applied(deck('mdf-9', 'birch-ply-9')).faults).toEqual([]);
    expect(applied(deck('birch-ply-9', 'mdf-9')).faults).toMatchObject([{ rule: 'change-end' }]);
  });

  test('of nothing: a slip of the pen is a fault, a value that is gone is a note', () => {
    expect(applied([entry('2026-02-01-a', change('1 mm', '2 mm', 'dimensions.widht'))]).faults).toMatchObject([
      { rule: 'change-unknown', mend: "did you mean 'benchwork.dimensions.width'?" },
    ]);
    const gone = applied([entry('2026-02-01-a', change('1 mm', '2 mm', 'dimensions.fascia'))]);
    expect(gone.faults).toEqual([]);
    expect(gone.findings).toMatchObject([{ rule: 'change-gone' }]);
  });

  test('that are no value of their kind are faults of the entry', () => {
    const { faults } = read([entry('2026-02-01-a', change('1050 mm', '3 A'))]);
    expect(faults.map((fault) => fault.at)).toEqual(['log.2026-02-01-a.change.0.to']);
  });

  // Field case: 5 ft 6 3/4 in kept as 5.56 ft is 66.72 in, and 12 ft 5 1/8 in kept as 12.43 ft is 149.16 in.
  test('feet with two decimals are not the length they came from', () => {
    const log = (was: string) => [
      entry('2026-02-01-a', change('1 ft', `5' 6 3/4"`)),
      entry('2026-03-01-b', change(was, '1100 mm')),
    ];
    expect(applied(log('66.75 in')).faults).toEqual([]);
    expect(applied(log('5.56 ft')).faults).toMatchObject([{ rule: 'change-chain' }]);
  });

  test('undone from the end give the plan of any day', () => {
    const log = records(
      entry('2026-02-01-a', change('1000 mm', '1050 mm')),
      entry('2026-03-01-b', change('1050 mm', '1100 mm')),
    );
    expect(textsAfter(log, 0)).toEqual({ 'benchwork.dimensions.width': '1000 mm' });
    expect(textsAfter(log, 1)).toEqual({ 'benchwork.dimensions.width': '1050 mm' });
    expect(textsAfter(log, 2)).toEqual({});
  });
});

test('the texts as typed are kept', () => {
  const [record] = records(entry('2026-02-01-a', { ...readings(`0' 0 23/32"`), ...change(`3' 5 3/4"`, '1100 mm') }));
  expect(record?.measured[0]?.texts).toEqual([`0' 0 23/32"`]);
  expect(record?.measured[0]?.mean).toBeCloseTo((23 / 32) * 25.4, 9);
  expect(record?.changes[0]?.wasText).toBe(`3' 5 3/4"`);
  expect(values()['benchwork.dimensions.width']).toMatchObject({ text: '1100 mm' });
});
