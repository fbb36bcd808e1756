import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { hiddenSpaces } from '../../src/core/log/hidden.ts';
import type { LogRecord } from '../../src/core/log/record.ts';
import { monthsOf } from '../../src/site/calendar.ts';
import { fixesOfStep } from '../../src/site/fix-flags.ts';
import { siftNames, siftsOf } from '../../src/site/log-kinds.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { placesOf, whereabouts } from '../../src/site/places.ts';
import { hourRows, moneyRows } from '../../src/site/work-words.ts';
import { entry, records } from '../core/log/entries.ts';
import { MODEL, planned } from '../core/steps/demo.ts';
import { notebook } from './fixture.ts';

const log = records(
  entry('2026-02-28-cut', { made: ['side.front'], minutes: '60', people: '2', spent: '12.50 EUR' }),
  entry('2026-02-28-split', {
    fix: [{ part: 'side.front', at: '400 mm', from: 'left', what: 'split', mend: 'glue', leaves: 'half' }],
  }),
  entry('2026-03-01-wall', { hidden: [{ id: 'strut.across-1'.replace('.', '-'), access: 'from below' }] }),
);

function bookOf(more: Partial<Book['notebook']> = {}): Book {
  const { parts, benches, envelopes } = MODEL;
  return { notebook: { ...notebook, parts, benches, envelopes, log, ...more }, prose: [], photos: '' };
}

describe('the calendar', () => {
  const months = monthsOf(log);
  test('has every day of the months something was written in, in weeks from Monday', () => {
    expect(months.map(({ title }) => title)).toEqual(['February 2026', 'March 2026']);
    for (const { id, weeks } of months) {
      const days = weeks.flat().filter((day) => day !== null);
      // The reference is ECMAScript's own calendar.
      const length = new Date(Date.UTC(Number(id.slice(0, 4)), Number(id.slice(5)), 0)).getUTCDate();
      expect(days.map(({ day }) => day)).toEqual(Array.from({ length }, (_, i) => i + 1));
      weeks.forEach((week) => {
        week.forEach((day, column) => {
          if (day !== null) expect((new Date(`${day.date}T00:00:00Z`).getUTCDay() + 6) % 7).toBe(column);
        });
      });
    }
  });
  test('keeps two entries of one day', () => {
    const day = months[0]?.weeks.flat().find((one) => one?.day === 28);
    expect(day?.entries.map(({ id }) => id)).toEqual(['2026-02-28-cut', '2026-02-28-split']);
  });
});

describe('the sifts', () => {
  const css = readFileSync('src/site/style/log.css', 'utf8');
  const every: readonly LogRecord['kinds'][number][] = [
    ...(['work', 'measurement', 'change', 'fix', 'laid', 'trial', 'decision', 'closing'] as const),
    ...(['upkeep', 'purchase', 'acceptance', 'photo', 'words'] as const),
  ];
  test('count what they leave, and each has its rule in the style sheet', () => {
    expect(siftsOf(log).map(({ count, id }) => `${id} ${count}`)).toEqual([
      'only-work 1',
      'only-fix 1',
      'only-closing 1',
      'only-purchase 1',
      'only-benchwork 3',
    ]);
    const first = log[0];
    if (first === undefined) throw new Error('no entry');
    const names = siftNames({ ...first, kinds: every }).split(' ');
    for (const name of [...names, 'is-track', 'is-wiring', 'is-scenery'])
      expect(css).toContain(`#${name.replace('is-', 'only-')}:target ~ .log > li:not(.${name})`);
  });
});

describe('places', () => {
  const fixes = [
    {
      part: 'side.front',
      at: 400,
      from: 'left',
      what: 'split',
      cause: null,
      mend: 'glue',
      leaves: 'half',
      date: '2026-02-28',
      entry: 'x',
      stands: true,
    },
  ] as const;
  const hidden = hiddenSpaces(
    records(entry('2026-03-01-x', { hidden: [{ id: 'bay-x', access: 'from below' }] })),
    [],
    [],
  );
  const book = bookOf({
    state: { ...notebook.state, fixes, hidden: [...hidden, { ...hidden[0], id: 'strut.across-1' } as never] },
  });
  const places = placesOf(book);

  test('are the clear cells of the grid, and tile the inside of the frame', () => {
    expect(places.map(({ bay }) => bay.id)).toHaveLength(8);
    const t = 17.7;
    const inside = (1600 - 2 * t - 3 * t) * (1100 - 2 * t - t);
    const cells = places.reduce((sum, { bay }) => sum + (bay.x[1] - bay.x[0]) * (bay.y[1] - bay.y[0]), 0);
    expect(cells).toBeCloseTo(inside, 0);
    expect(places[0]).toMatchObject({ name: 'Bay 1-1', where: '1 of 4 from the left, at the front' });
  });

  test('have the boards round them, and a fix only where it is within reach', () => {
    expect(places[0]?.walls).toContain('side.front');
    expect(places[0]?.walls).not.toContain('end.right');
    const flagged = places.filter((place) => place.fixes.length > 0).map(({ bay }) => bay.row);
    expect(flagged.length).toBeGreaterThan(0);
    expect(new Set(flagged)).toEqual(new Set([1]));
  });

  test('hold what is hidden there; what has no place is in none', () => {
    expect(whereabouts(book, 'bay-x')).toBeNull();
    const homes = places.flatMap(({ hidden: here }) => here.map(({ id }) => id));
    expect(homes).toEqual(['strut.across-1']);
  });
});

test('a step is flagged by the fixes on what it makes, not by pieces that are lost', () => {
  const step = { ...(planned([]).steps[0] ?? notebook.steps[0]), makes: ['side.front'] } as never;
  const fix = {
    part: 'side.front',
    at: 1,
    from: null,
    what: 'x',
    cause: null,
    mend: 'y',
    date: 'd',
    entry: 'e',
    stands: true,
  };
  const withFix = (leaves: 'half' | 'nothing') => bookOf({ state: { ...notebook.state, fixes: [{ ...fix, leaves }] } });
  expect(fixesOfStep(withFix('half'), step)).toContain('#fix-1');
  expect(fixesOfStep(withFix('nothing'), step)).toBeNull();
});

test('hours and money say what is known and no more', () => {
  const rows = Object.fromEntries([...hourRows(bookOf()), ...moneyRows(bookOf())]);
  expect(rows['In the end, at this pace']).toContain('not known');
  expect(rows.Spent).toBe('12.50\u00A0EUR');
  expect(rows['Sheets still to buy']).toContain('none');
});
