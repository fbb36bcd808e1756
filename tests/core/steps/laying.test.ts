import { describe, expect, test } from 'vitest';
import { type LayWork, layDrafts } from '../../../src/core/steps/generated/laying.ts';
import { planSteps } from '../../../src/core/steps/plan.ts';
import type { Step } from '../../../src/core/steps/step.ts';
import { spoken } from '../../../src/core/units/say.ts';

const work: LayWork = {
  marks: [{ line: 'main', points: 12, first: 'main.t1', last: 'main.c2' }],
  slots: [{ by: 'W1', part: 'deck.1', size: [6.3, 9] }],
  raised: [
    {
      line: 'main',
      stations: [
        { at: 150, height: 3 },
        { at: 300, height: 6 },
      ],
    },
  ],
  roadbed: { stock: 'cork-3', width: 25, length: 2400 },
  turnouts: [{ id: 'W1', line: 'main', at: 400 }],
  flex: [
    { line: 'main', from: 0, length: 400, slip: 0 },
    { line: 'main', from: 520, length: 1800, slip: 28.3 },
  ],
  sections: [],
  pins: 17,
  trains: ['short-wagon'],
  before: ['benchwork.table-trim'],
};

const planned = (track: LayWork, own: readonly string[] = []) =>
  planSteps({
    ...{ parts: [], joints: [], frames: [], fasteners: [], hardware: [], stock: [], scope: {}, track },
    chapters: [{ chapter: 'track', steps: own.map((id) => ({ id, do: id })) }],
  }).steps;

const ids = (steps: readonly Step[]) => steps.map(({ id }) => id);
const words = (steps: readonly Step[], id: string) =>
  (steps.find((step) => step.id === `track.${id}`)?.lines ?? []).map((one) => spoken(one, String)).join('\n');

describe('the laying of the track', () => {
  const steps = planned(work);

  test('goes from the pencil line up to the train', () => {
    expect(ids(steps)).toEqual(
      ['draw-lines', 'cut-slots', 'raise-lines', 'glue-roadbed', 'lay-turnouts', 'lay-track', 'try-track'].map(
        (id) => `track.${id}`,
      ),
    );
    expect(steps.every(({ generated }) => generated)).toBe(true);
  });

  test('says places, heights and lengths as computed', () => {
    expect(words(steps, 'draw-lines')).toContain('main: 12 points, main.t1 to main.c2.');
    expect(words(steps, 'cut-slots')).toContain('W1: 6.3 by 9, in deck.1.');
    expect(words(steps, 'raise-lines')).toContain('main: 3 at 150; 6 at 300.');
    expect(words(steps, 'lay-track')).toContain('main from 0 to 400: 400.');
    expect(words(steps, 'lay-track')).toContain('main from 520 to 2320: 1800; one rail comes out 28.3 longer');
  });

  test('leaves out what the track does not have', () => {
    const flat = planned({ ...work, raised: [], roadbed: null, slots: [], turnouts: [] });
    expect(ids(flat)).toEqual(['track.draw-lines', 'track.lay-track', 'track.try-track']);
    expect(layDrafts({ ...work, marks: [], raised: [], roadbed: null, slots: [], turnouts: [], flex: [] })).toEqual([]);
  });

  test("takes an author's step of the same name for its own, with the figures", () => {
    const own = planned(work, ['lay-track']);
    expect(own.find(({ id }) => id === 'track.lay-track')?.generated).toBe(false);
    expect(words(own, 'lay-track')).toContain('one rail comes out 28.3 longer');
    expect(ids(own).indexOf('track.lay-track')).toBeGreaterThan(ids(own).indexOf('track.lay-turnouts'));
  });
});
