import { describe, expect, test } from 'vitest';
import { compute, type Notebook } from '../../src/core/notebook.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';

const SHIPPED = new URL('../../content', import.meta.url).pathname;
const CASES = new URL('./fittings/content', import.meta.url).pathname;
const { plans } = readContent(await loadWithShipped(CASES, SHIPPED));

function bookOf(slug: string): Notebook {
  const plan = plans.find((one) => one.slug === slug);
  const result = plan === undefined ? null : compute(plan);
  if (result?.ok !== true) throw new Error(`no notebook ${slug}`);
  return result.value;
}

describe.each(['inch-angles', 'inch-trestles'])('%s', (slug) => {
  const notebook = bookOf(slug);
  const legs = notebook.parts.filter(({ role }) => role.startsWith('leg'));

  test('goes together, legs and drawers with it, and nothing is halted', () => {
    expect(notebook.findings.filter(({ level }) => level !== 'note')).toEqual([]);
    const [assembly] = notebook.assembly;
    expect(assembly?.chosen).not.toBeNull();
    const moved = assembly?.poses.find(({ pose }) => pose === assembly.chosen)?.order.flatMap(({ parts }) => parts);
    const ids = legs.flatMap(({ places }) => places.map(({ id }) => id));
    expect(ids.length).toBeGreaterThan(11);
    expect(moved).toEqual(expect.arrayContaining(ids));
  });

  test('is cut: every piece of a leg lies on a sheet', () => {
    const lying = notebook.sheets.flatMap(({ parts }) => parts.map(({ instance }) => instance));
    for (const { places } of legs) for (const { id } of places) expect(lying).toContain(id);
  });

  test('counts nothing in millimetres that is sold by the inch', () => {
    expect(notebook.hardware.length).toBeGreaterThan(10);
    expect(notebook.hardware.filter(({ item }) => /(?:^|-)m\d|\dx\d/.test(item))).toEqual([]);
  });
});

test('a tapered half is tapered last, after all that is measured from the edge it loses', () => {
  const { machining, parts } = bookOf('inch-angles');
  const halves = parts.filter(({ role }) => role === 'leg-half');
  expect(halves.length).toBeGreaterThan(0);
  for (const half of halves) {
    const own = machining.find(({ part }) => part === half.id)?.operations ?? [];
    const feature = half.features.find(({ kind }) => kind === 'taper')?.id;
    expect(feature).toBeDefined();
    expect(JSON.stringify(own.at(-1))).toContain(feature);
  }
});
