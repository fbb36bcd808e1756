import { describe, expect, test } from 'vitest';
import { weakenings } from '../../../src/core/log/fixes.ts';
import { leftToCut } from '../../../src/core/log/left.ts';
import { MODEL, planned } from '../steps/demo.ts';
import { entry, records, rules, state } from './entries.ts';

const SIDES = ['side.front', 'side.back'];

function stateOf(log: ReturnType<typeof state>, instance: string): string | undefined {
  return log.parts.find((part) => part.instance === instance)?.state;
}

describe('a part', () => {
  test('is to make until an entry made it', () => {
    const log = state([entry('2026-01-24-strips', { made: SIDES })]);
    expect(stateOf(log, 'side.front')).toBe('made');
    expect(stateOf(log, 'end.left')).toBe('to make');
    expect(log.counts.find((count) => count.id === 'side.front')).toEqual({
      id: 'side.front',
      asked: 2,
      made: 2,
      left: 0,
      spare: 0,
    });
  });

  test('is measured, mended, lost and replaced, put in place and taken apart', () => {
    const made = entry('2026-01-24-strips', { made: ['side.front'] });
    const measured = entry('2026-01-25-a', { measured: [{ what: 'side.front.length', readings: ['1600 mm'] }] });
    const fix = (leaves: string) => [{ part: 'side.front', at: '310 mm', what: 'split', mend: 'glue', leaves }];
    const mended = entry('2026-01-26-a', { fix: fix('half') });
    const lost = entry('2026-01-27-a', { fix: fix('nothing') });
    const again = entry('2026-01-28-a', { made: ['side.front'] });
    const placed = entry('2026-01-29-a', { placed: ['side.front'] });
    const apart = entry('2026-01-30-a', { apart: ['side.front'] });
    const story = [made, measured, mended, lost, again, placed, apart];
    const states = story.map((_, i) => stateOf(state(story.slice(0, i + 1)), 'side.front'));
    expect(states).toEqual(['made', 'measured', 'mended', 'to make', 'replaced', 'in place', 'apart']);
    expect(rules(state(story))).not.toContain('made-twice');
  });

  test('stands in its place when the step that puts it there is done', () => {
    const log = state([
      entry('2026-01-24-strips', { made: SIDES }),
      entry('2026-02-24-glue', { done: ['table-glue'] }),
    ]);
    expect(stateOf(log, 'side.front')).toBe('in place');
    expect(stateOf(log, 'end.left')).toBe('to make');
    expect(rules(log)).toContain('not-yet-made');
    expect(rules(log)).toContain('done-not-made');
  });

  test('made twice without a loss is told, and counts as a spare', () => {
    const log = state([entry('2026-01-24-a', { made: SIDES }), entry('2026-01-25-b', { made: ['side.front'] })]);
    expect(log.counts.find((count) => count.id === 'side.front')).toMatchObject({ made: 2, left: 0, spare: 1 });
    expect(log.findings).toMatchObject([{ rule: 'made-twice', where: 'side.front', figure: 3, limit: 2 }]);
  });

  test('whose spare is there when it breaks is replaced by it', () => {
    const fix = [{ part: 'side.front', at: '1 mm', what: 'fell', mend: 'none', leaves: 'nothing' }];
    const twice = [entry('2026-01-24-a', { made: ['side.front'] }), entry('2026-01-25-b', { made: ['side.front'] })];
    const log = state([...twice, entry('2026-01-26-c', { fix })]);
    expect(stateOf(log, 'side.front')).toBe('replaced');
    expect(rules(log)).not.toContain('made-twice');
  });

  test('that is no more is kept with its story, a slip of the pen is a fault', () => {
    const log = state([
      entry('2026-01-24-a', {
        made: ['drawer.front-2', 'strut.across-9'],
        fix: [{ part: 'post.front-left', at: '310 mm', what: 'split', mend: 'glue', leaves: 'half' }],
      }),
    ]);
    expect(log.faults).toEqual([]);
    expect(rules(log)).toEqual(['part-gone', 'part-gone', 'part-gone']);
    expect(Object.keys(log.gone).sort()).toEqual(['drawer.front-2', 'post.front-left', 'strut.across-9']);
    expect(log.fixes).toMatchObject([{ part: 'post.front-left', at: 310, stands: false }]);
    const lost = { part: 'side.front', at: '310 mm', what: 'fell', mend: 'made again', leaves: 'nothing' };
    const mended = { ...lost, what: 'split', mend: 'glue', leaves: 'half' };
    const both = state([entry('2026-01-24-a', { made: ['side.front'], fix: [lost, mended] })]);
    expect(both.fixes.map(({ stands }) => stands)).toEqual([false, true]);
    const slip = state([entry('2026-01-24-a', { made: ['side.front', 'side.bakc'], done: ['crosscutt'] })]);
    expect(slip.faults).toMatchObject([
      { rule: 'log-name', at: 'log.2026-01-24-a.done.0', what: "'crosscutt' is no step of this notebook" },
      { rule: 'log-name', at: 'log.2026-01-24-a.made.1', mend: expect.stringContaining("'side.back'") },
    ]);
  });

  test('keeps its story under a new name', () => {
    const log = state([
      entry('2026-01-24-a', { made: ['rail.front'] }),
      entry('2026-02-24-b', { renamed: { 'rail.front': 'side.old' } }),
      entry('2026-03-24-c', { renamed: { 'side.old': 'side.front' } }),
    ]);
    expect(stateOf(log, 'side.front')).toBe('made');
    expect(log.gone).toEqual({});
  });
});

describe('what is left', () => {
  test('is the cut list without what is made', () => {
    const log = state([entry('2026-01-24-a', { made: ['strut.across-2', 'deck.1'] })]);
    const struts = log.leftToMake.find((left) => left.part === 'strut.across-1');
    expect(struts).toMatchObject({
      quantity: 2,
      instances: ['strut.across-1', 'strut.across-3'],
      length: 1076.4,
      width: 135,
    });
    expect(log.leftToMake.map((left) => left.part)).not.toContain('deck.1');
    expect(leftToCut(log.leftToMake, 'birch-ply-18').find((part) => part.id === 'strut.across-1')?.quantity).toBe(2);
    expect(leftToCut(log.leftToMake, 'birch-ply-9').map((part) => part.id)).toEqual(['deck.2']);
  });

  test('of the steps: done, ready, waiting and for what, by place', () => {
    const steps = planned([{ id: 'casters', do: 'Bolt the casters on', where: 'outdoors' }], {
      wiring: [{ id: 'feeders', do: 'Solder', after: ['benchwork.table-deck'] }],
    }).steps;
    const log = state([entry('2026-01-24-a', { done: ['rip'] })], { steps });
    const of = (id: string) => log.steps.find((step) => step.id === id);
    expect(of('benchwork.rip')).toMatchObject({ state: 'done', date: '2026-01-24', entry: '2026-01-24-a' });
    expect(of('benchwork.crosscut')?.state).toBe('ready');
    expect(of('wiring.feeders')).toMatchObject({ state: 'waiting', waitsFor: ['benchwork.table-deck'] });
    expect(log.next.outdoors).toEqual(['benchwork.casters']);
    expect(log.next.workshop).toContain('benchwork.crosscut');
    expect(log.progress).toMatchObject({ done: 1, of: steps.length });
    expect(log.progress.chapters.find((one) => one.chapter === 'wiring')).toEqual({
      chapter: 'wiring',
      done: 0,
      of: 1,
    });
  });

  test('a step done before one it waits for is told', () => {
    const { steps } = planned([
      { id: 'a', do: 'A' },
      { id: 'b', do: 'B', after: ['a'] },
    ]);
    expect(rules(state([entry('2026-01-24-x', { done: ['b'] })], { steps }))).toEqual(['done-out-of-order']);
    const both = [entry('2026-01-24-x', { done: ['b'] }), entry('2026-01-23-y', { done: ['a'] })];
    expect(rules(state(both, { steps }))).toEqual([]);
  });
});

describe('hours and money', () => {
  const steps = planned([
    { id: 'a', do: 'A', minutes: 60 },
    { id: 'b', do: 'B', minutes: 90 },
    { id: 'c', do: 'C' },
  ]).steps.filter((step) => !step.generated);

  test('are added up, and the rest is foreseen at the pace so far', () => {
    const log = state([entry('2026-01-24-x', { done: ['a'], people: '2', minutes: '90' })], { steps });
    expect(log.hours).toMatchObject({
      minutes: 90,
      hand: 180,
      untimed: 0,
      estimate: { all: 150, done: 60, left: 90, withoutTime: 1 },
    });
    // 60 minutes planned took 90, so 90 planned will take 135
    expect(log.hours.forecast).toBe(90 + 135);
    expect(state([entry('2026-01-24-x', { minutes: '90' })], { steps }).hours.forecast).toBeNull();
  });

  // Field case: 13.69 + 9 x 2.96 + 3.70 + 2.00 + 2.00 = 48.03
  test('of a published shopping table add up to the cent', () => {
    const sums = ['13.69', '3.70', '2.00', '2.00', ...Array.from({ length: 9 }, () => '2.96')];
    const bought = sums.map((sum, i) => entry(`2026-01-${10 + i}-x`, { spent: `${sum} USD` }));
    const log = state(bought, { budget: { value: 48.03, currency: 'USD' }, toBuy: { value: 0, currency: 'USD' } });
    expect(log.money.spent).toEqual([{ value: 48.03, currency: 'USD' }]);
    expect(log.money.left).toEqual({ value: 0, currency: 'USD' });
    expect(rules(log)).toEqual([]);
  });

  test('of two currencies are kept apart, and a passed budget is told', () => {
    const log = state(
      [entry('2026-01-24-x', { spent: '60 EUR' }), entry('2026-01-25-x', { spent: '10 GBP', chapter: 'wiring' })],
      { budget: { value: 100, currency: 'EUR' }, toBuy: { value: 50, currency: 'EUR' } },
    );
    expect(log.money.spent).toEqual([
      { value: 60, currency: 'EUR' },
      { value: 10, currency: 'GBP' },
    ]);
    expect(log.money.chapters.wiring).toEqual([{ value: 10, currency: 'GBP' }]);
    expect(log.money.forecast).toEqual({ value: 110, currency: 'EUR' });
    expect(log.findings).toMatchObject([{ rule: 'over-budget', figure: 110, limit: 100 }]);
  });
});

// Field case: eight years after the scenery went on, nobody knows whether the tunnel's wall comes off.
describe('a hidden space', () => {
  const { steps } = planned([{ id: 'paint', do: 'Paint' }], {
    scenery: [{ id: 'wall', do: 'Close the tunnel', closes: 'tunnel-wall', after: ['benchwork.paint'] }],
  });
  const painted = entry('2026-01-24-x', { done: ['paint'] });
  const hidden = (more: object) => ({ hidden: [{ id: 'tunnel-wall', access: 'lifts off from behind', ...more }] });
  const full = hidden({ photo: 'wall.jpg', test: '20 runs' });

  test('is asked for before its cover goes on', () => {
    expect(rules(state([], { steps }))).toEqual([]);
    expect(state([painted], { steps }).findings).toMatchObject([
      { rule: 'closing-gate', level: 'note', where: 'tunnel-wall', figure: 3 },
    ]);
    expect(rules(state([painted, entry('2026-01-25-y', full)], { steps }))).toEqual([]);
  });

  test('closed without a record is told', () => {
    const closed = entry('2026-02-01-z', { chapter: 'scenery', done: ['wall'] });
    const log = state([painted, closed, entry('2026-02-02-y', hidden({ photo: 'wall.jpg' }))], { steps });
    expect(log.findings).toMatchObject([{ rule: 'closed-without-record', level: 'care', figure: 1 }]);
    expect(log.hidden).toMatchObject([
      { id: 'tunnel-wall', closedBy: ['scenery.wall'], closed: '2026-02-01', missing: ['test'] },
    ]);
  });

  test('closed before what closes it is made is told with the day and the labels', () => {
    const closing = planned([], {
      scenery: [
        { id: 'frame', do: 'Stand the wall', fits: ['side.front'] },
        { id: 'wall', do: 'Close the tunnel', closes: 'tunnel-wall', fits: ['side.back'], after: ['frame'] },
      ],
    });
    const story = [
      entry('2026-01-25-y', { ...full, made: ['side.front'] }),
      entry('2026-02-01-z', { chapter: 'scenery', done: ['frame', 'wall'] }),
    ];
    const early = state(story, { steps: closing.steps }).findings.find(({ rule }) => rule === 'closed-before-made');
    expect(early).toMatchObject({ level: 'care', where: 'scenery.wall', figure: 1 });
    const label = MODEL.parts.flatMap(({ places }) => places).find(({ id }) => id === 'side.back')?.label;
    expect(early?.what.join('')).toContain(`on 2026-02-01, but the log does not have ${label} as made`);
    const whole = [...story, entry('2026-01-24-x', { made: ['side.back'] })];
    expect(rules(state(whole, { steps: closing.steps }))).not.toContain('closed-before-made');
  });

  test('answers how it is reached', () => {
    const [space] = state([painted, entry('2026-01-25-y', full)], { steps }).hidden;
    expect(space).toMatchObject({
      access: 'lifts off from behind',
      photo: 'wall.jpg',
      test: '20 runs',
      entries: ['2026-01-25-y'],
    });
  });
});

describe('decisions, sessions and upkeep', () => {
  test('are listed', () => {
    const log = state([
      entry('2026-01-24-x', {
        decided: [{ what: 'radius 380', 'rather-than': '350', because: 'the coaches' }],
        trial: [
          { line: 'main', at: '100 mm', off: '2', of: '10' },
          { line: 'main', past: 'basin-east', by: '60 mm', off: '1', of: '10', vehicle: 'bogie-coach-n' },
        ],
      }),
    ]);
    expect(log.decisions).toMatchObject([{ what: 'radius 380', ratherThan: '350', date: '2026-01-24' }]);
    expect(log.sessions).toEqual([{ entry: '2026-01-24-x', date: '2026-01-24', off: 3, of: 20 }]);
  });

  const bolts = entry('2026-01-31-x', { upkeep: [{ what: 'caster bolts', 'again-in': '1 month' }] });

  test('fall due by the latest entry; without a today nothing is late', () => {
    expect(state([bolts]).upkeep).toMatchObject([{ due: '2026-02-28', days: null, state: 'unknown' }]);
    const late = state([bolts], { today: '2026-03-02' });
    expect(late.upkeep).toMatchObject([{ days: -2, state: 'due' }]);
    expect(late.findings).toMatchObject([{ rule: 'upkeep-due', figure: 2 }]);
    const again = entry('2026-03-01-y', { upkeep: [{ what: 'caster bolts', 'again-in': '12 months' }] });
    expect(state([again, bolts], { today: '2026-03-02' }).upkeep).toMatchObject([
      { due: '2027-03-01', state: 'later' },
    ]);
  });

  test('entries of tomorrow are told when today is known', () => {
    const log = [entry('2026-03-03-x', {})];
    expect(rules(state(log, { today: '2026-03-03' }))).toEqual([]);
    expect(rules(state(log, { today: '2026-03-02' }))).toEqual(['entry-in-future']);
    expect(rules(state(log))).toEqual([]);
  });
});

test('a fix weakens its part until the part is made anew', () => {
  const fix = [{ part: 'side.front', at: '310 mm', from: 'left', what: 'split', mend: 'glue', leaves: 'half' }];
  const { fixes } = state([entry('2026-01-24-x', { made: SIDES, fix })]);
  expect(weakenings(fixes, new Map())).toEqual([{ place: 'side.front', at: 310, kind: 'half' }]);
  expect(weakenings(fixes, new Map([['side.front', '2026-02-01']]))).toEqual([]);
});

test('two entries of one day are both read, and five megabytes of words do no harm', () => {
  const what = 'x'.repeat(5_000_000);
  const log = records(
    entry('2026-01-24-b', { made: ['side.back'] }),
    entry('2026-01-24-a', { made: ['side.front'], decided: [{ what }] }),
  );
  expect(log.map((record) => record.id)).toEqual(['2026-01-24-a', '2026-01-24-b']);
  expect(log[0]?.decided[0]?.what).toHaveLength(5_000_000);
  expect(MODEL.parts.length).toBeGreaterThan(0);
});
