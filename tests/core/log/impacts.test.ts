import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { compute, type Notebook } from '../../../src/core/notebook.ts';
import type { Plan } from '../../../src/core/plan.ts';
import { changeImpacts } from '../../../src/core/stages/impacts.ts';
import { leftWork } from '../../../src/core/stages/left-work.ts';
import { readLog } from '../../../src/core/stages/log.ts';
import { rewound } from '../../../src/core/stages/rewound.ts';
import { loadContent } from '../../../src/reading/disk.ts';
import { readContent } from '../../../src/reading/read.ts';

const CONTENT = new URL('../../../content', import.meta.url).pathname;
const HEAD = '---\ndate: DAY\nchapter: benchwork\n';

/** Bittern Basin with another log, and its chapter's values as told. */
async function bookWith(
  log: Readonly<Record<string, string>>,
  [before, after]: readonly [string, string] = ['', ''],
): Promise<{ readonly plan: Plan; readonly notebook: Notebook }> {
  const folder = join(tmpdir(), `fettlebook-impact-${process.pid}-${Object.keys(log).join('').length}-${after.length}`);
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  cpSync(CONTENT, folder, { recursive: true });
  const book = join(folder, 'notebooks', 'bittern-basin');
  rmSync(join(book, 'log'), { recursive: true });
  cpSync(join(CONTENT, 'notebooks', 'window-shelf', 'log'), join(book, 'log'), { recursive: true });
  rmSync(join(book, 'log', '2026-05-02-started.md'));
  for (const [name, text] of Object.entries(log))
    writeFileSync(join(book, 'log', `${name}.md`), `${HEAD.replace('DAY', name.slice(0, 10))}${text}\n---\n\nx\n`);
  const chapter = join(book, 'benchwork.md');
  writeFileSync(chapter, readFileSync(chapter, 'utf8').replace(before, after));
  const plan = readContent(await loadContent(folder)).plans.find(({ slug }) => slug === 'bittern-basin');
  if (plan === undefined) throw new Error('the notebook does not read');
  const result = compute(plan);
  if (!result.ok) throw new Error(result.faults.map(({ what }) => what).join('\n'));
  return { plan, notebook: result.value };
}

const WIDER = {
  '2026-01-02-cut': 'made: [end.left, strut.along-1]',
  '2026-01-03-wider': 'change: [ { set: dimensions.width, was: 1050 mm, to: 1100 mm } ]',
  '2026-01-04-cut': 'made: [end.right]',
};

describe('the impact of a change', () => {
  test('is the plan after it against the plan before it, with what was cut by then', async () => {
    const { plan, notebook } = await bookWith(WIDER);
    const [found, ...more] = changeImpacts(plan, notebook.steps);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ entry: '2026-01-03-wider', told: null });
    const ends = found?.impact?.changed.find(({ instances }) => instances.includes('end.left'));
    // Between the sides' rabbets, an end is as much longer as the table is wider: 1100 - 1050.
    const length = ends?.differences.find(({ what }) => what === 'length');
    expect(Number(length?.after) - Number(length?.before)).toBeCloseTo(50, 6);
    // Cut before the change; end.right was cut after it, strut.along-1 runs the other way.
    expect(found?.impact?.changed.flatMap(({ alreadyMade }) => alreadyMade)).toEqual(['end.left']);
    expect(found?.impact?.changed.some(({ instances }) => instances.includes('side.front'))).toBe(false);
  });

  test('counts the inputs of that date on both sides: a sheet measured later is not known yet', async () => {
    const measured = 'measured: [ { what: deck.thickness, readings: [9.1 mm], with: caliper } ]';
    const { plan } = await bookWith({ ...WIDER, '2026-01-05-deck': measured });
    const records = readLog(plan).records;
    expect(rewound(plan, records, 2).plan.log.map(({ id }) => id)).toEqual(['2026-01-02-cut', '2026-01-03-wider']);
  });

  test('of a plan that no longer computes is told and stops nothing', async () => {
    const { plan, notebook } = await bookWith({
      '2026-01-02-odd': 'change: [ { set: dimensions.width, was: 40 mm, to: 1050 mm } ]',
      '2026-01-03-wider': 'change: [ { set: dimensions.width, was: 1050 mm, to: 1100 mm } ]',
    });
    const [odd, wider] = changeImpacts(plan, notebook.steps);
    expect(odd).toMatchObject({ impact: null, told: expect.stringContaining('no longer computes') });
    expect(wider?.impact?.changed.length).toBeGreaterThan(3);
  });

  test('of a block that was added is what came with it; of one taken out, what can be told', async () => {
    const { plan, notebook } = await bookWith({
      '2026-01-02-shelves': 'change: [ { add: benches.table.shelves, block: { side: back } } ]',
      '2026-01-03-rail': 'change: [ { remove: benches.rail, block: { id: rail } } ]',
    });
    const [shelves, rail] = changeImpacts(plan, notebook.steps);
    expect(shelves?.impact?.added.filter((id) => id.startsWith('shelf.'))).toHaveLength(6);
    expect(rail).toMatchObject({ told: expect.stringContaining('benchwork.benches.rail') });
  });
});

describe('what is left to make', () => {
  test('stands on the sheets that were begun, or is laid out once: nothing twice, nothing lost', async () => {
    const { plan, notebook } = await bookWith({
      '2026-01-02-cut': 'made: [side.front, side.back, end.left, drawer.front-2.front]',
      '2026-01-03-lost': 'fix: [ { part: end.left, at: 1 mm, what: split, mend: none, leaves: nothing } ]',
    });
    const { parts, sheets, offcuts, state } = notebook;
    const cut = new Set(state.parts.filter(({ pieces }) => pieces > 0).map(({ instance }) => instance));
    const work = leftWork(plan, { parts, sheets, offcuts, left: state.leftToMake, cut });
    const still = work.stillOn.flatMap(({ instances }) => instances);
    const anew = work.sheets.flatMap(({ parts: own }) => own.map(({ instance }) => instance));
    const fallsOut = (id: string) =>
      parts.some(({ from, places }) => from !== undefined && places.some((one) => one.id === id));
    const asked = state.leftToMake.flatMap(({ instances }) => instances).filter((id) => !fallsOut(id));
    expect([...still, ...anew].toSorted()).toEqual(asked.toSorted());
    // Its place on the sheet is used: it has to be cut from somewhere else.
    expect(anew).toContain('end.left');
    expect(still).toContain('end.right');
    expect(work.unplaced).toEqual([]);
  });
});
