import { describe, expect, test } from 'vitest';
import { groupNames, spelledOut } from '../../../src/core/log/groups.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { model } from '../benchwork/example.ts';
import { fittedTable } from '../benchwork/fitted.ts';
import { entry, rules, state } from './entries.ts';

const BUILT = model(fittedTable());
const fitted = (...entries: Parameters<typeof state>[0]) => state(entries, { parts: BUILT.parts, steps: [] });
const madeOf = (log: ReturnType<typeof state>) => log.parts.filter(({ made }) => made).map(({ instance }) => instance);

/** A drawer of the fitted table: two sides, front, back, bottom, face and pull. */
const DRAWER = ['back', 'bottom', 'face', 'front', 'pull', 'side-left', 'side-right'].map(
  (one) => `drawer.front-2.${one}`,
);

describe('a drawer or a leg in an entry', () => {
  test('stands for each of its pieces, and for no other', () => {
    const log = fitted(entry('2026-06-01-box', { made: ['drawer.front-2'] }));
    expect(madeOf(log).sort()).toEqual(DRAWER);
    expect(log.counts.find(({ id }) => id === 'drawer.front-2.face')).toMatchObject({ asked: 2, made: 1, left: 1 });
    expect(rules(log)).toEqual([]);
    expect(log.gone).toEqual({});
  });

  test('a leg is four layers and two pads; all legs are four times that', () => {
    expect(madeOf(fitted(entry('2026-06-01-leg', { made: ['leg.front-left'] })))).toHaveLength(6);
    expect(madeOf(fitted(entry('2026-06-01-legs', { made: ['leg'] })))).toHaveLength(24);
  });

  test('is put in its place and taken out of it as one', () => {
    const made = entry('2026-06-01-a', { made: ['leg.back-right'] });
    const placed = entry('2026-06-02-a', { placed: ['leg.back-right'] });
    const apart = entry('2026-06-03-a', { apart: ['leg.back-right'] });
    const states = (log: ReturnType<typeof state>) => [
      ...new Set(log.parts.filter(({ instance }) => instance.startsWith('leg.back-right')).map((one) => one.state)),
    ];
    expect(states(fitted(made, placed))).toEqual(['in place']);
    expect(states(fitted(made, placed, apart))).toEqual(['apart']);
  });

  test('named beside one of its pieces counts that piece once; made on another day, it is a spare', () => {
    const log = fitted(entry('2026-06-01-a', { made: ['drawer.front-2.face', 'drawer.front-2'] }));
    expect(madeOf(log).sort()).toEqual(DRAWER);
    expect(rules(log)).toEqual([]);
    const twice = fitted(
      entry('2026-06-01-a', { made: ['drawer'] }),
      entry('2026-06-02-a', { made: ['drawer.front-2.face'] }),
    );
    expect(rules(twice)).toEqual(['made-twice']);
  });

  test('says the same as its pieces one by one, whichever group it is', () => {
    const instances = BUILT.parts.flatMap(({ places }) => places.map(({ id }) => id));
    const groups = groupNames(instances);
    expect(groups.length).toBeGreaterThan(15);
    for (const group of groups) {
      const pieces = instances.filter((id) => id.startsWith(`${group}.`));
      const [one, each] = [[group], pieces].map((made) => fitted(entry('2026-06-01-a', { made })));
      expect(one).toEqual(each);
    }
  });

  test('that the plan does not have is a note with those it has; a slip of the pen is a fault', () => {
    const log = fitted(entry('2026-06-01-a', { made: ['drawer.front-9'] }));
    const [note] = log.findings;
    expect(note).toMatchObject({ rule: 'part-gone', where: 'drawer.front-9' });
    expect(spoken(note?.mend ?? [], String)).toContain('There are drawer.front-2, drawer.front-3.');
    expect(fitted(entry('2026-06-01-a', { made: ['drawr.front-2'] })).faults).toMatchObject([
      { at: 'log.2026-06-01-a.made.0', mend: expect.stringContaining("did you mean 'drawer.front-2'?") },
    ]);
  });

  test('is not mended as a whole: the fault names its pieces', () => {
    const fix = [{ part: 'drawer.front-2', at: '10 mm', what: 'split', mend: 'glue', leaves: 'half' }];
    const { faults } = fitted(entry('2026-06-01-a', { fix }));
    expect(faults).toMatchObject([{ rule: 'log-name', at: 'log.2026-06-01-a.fix.0.part' }]);
    expect(faults[0]?.mend).toContain('drawer.front-2.side-left');
  });
});

describe('names of groups', () => {
  test('are what pieces begin with, up to a dot', () => {
    expect(groupNames(['drawer.front-2.face', 'drawer.front-2.pull', 'deck.1', 'bar'])).toEqual([
      'drawer',
      'drawer.front-2',
      'deck',
    ]);
    // drawer.front-2 is not the beginning of drawer.front-20
    expect(spelledOut(['drawer.front-2'], ['drawer.front-20.face'])).toEqual(['drawer.front-2']);
  });
});
