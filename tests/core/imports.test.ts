import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { importFaults, importsOf, type Sources, table } from './imports.ts';

const files = globSync('src/**/*.{ts,mjs,astro,mdx}').map((file) => file.replaceAll('\\', '/'));
const sources: Sources = Object.fromEntries(files.sort().map((file) => [file, readFileSync(file, 'utf8')]));

test('every import in src follows the table, without a cycle', () => {
  expect(files.length).toBeGreaterThan(20);
  expect(importFaults(sources)).toEqual([]);
});

test('import lines of every form are read, comments are not', () => {
  const text = [
    "import { a } from './a.ts';",
    "import type {\n  B,\n} from './b.ts';",
    "export * from './c.ts';",
    "export { d } from './d.ts';",
    "import './e.css';",
    "const f = await import('./f.ts');",
    "// import './no.ts';",
    "/* from './no.ts' */",
  ].join('\n');
  expect(importsOf(text)).toEqual(['./a.ts', './b.ts', './c.ts', './d.ts', './e.css', './f.ts']);
});

const planted: readonly (readonly [string, string, string])[] = [
  ['src/core/units/x.ts', "import { a } from '../finding.ts';", 'src/core/units/x.ts imports src/core/finding.ts'],
  ['src/core/geometry/x.ts', "import { a } from '../stock/part.ts';", 'src/core/stock/part.ts'],
  ['src/core/cutting/x.ts', "import { a } from '../steps/step.ts';", 'src/core/steps/step.ts'],
  ['src/core/benchwork/x.ts', "import { a } from '../steps/schema.ts';", 'src/core/steps/schema.ts'],
  ['src/core/track/x.ts', "import type { Plan } from '../plan.ts';", 'src/core/plan.ts'],
  ['src/core/log/x.ts', "import { compute } from '../notebook.ts';", 'src/core/notebook.ts'],
  ['src/core/notebook.ts', "import { a } from '../reading/read.ts';", 'src/reading/read.ts'],
  ['src/drawing/x.ts', "import { a } from '../writing/csv.ts';", 'src/writing/csv.ts'],
  ['src/cli/x.ts', "import { a } from '../site/lengths.ts';", 'src/site/lengths.ts'],
  ['src/site/pages/x.astro', "---\nimport { a } from '../../cli/check.ts';\n---", 'src/cli/check.ts'],
  ['src/core/units/x.ts', "import { z } from 'zod';", 'zod'],
  ['src/core/strength/x.ts', "import { readFileSync } from 'node:fs';", 'node:fs'],
  ['src/core/strength/x.ts', "import lodash from 'lodash';", 'lodash'],
  ['src/core/cutting/x.ts', "import { union } from 'clipper2-ts';", 'clipper2-ts'],
  ['src/reading/read.ts', "const fs = await import('node:fs');", 'node:fs'],
  ['src/core/units/x.ts', 'export default function x() {}', 'default export'],
  ['src/core/units/x.ts', 'export { x as default };', 'default export'],
  ['src/kitchen/x.ts', '', 'stands in no room'],
];

test.each(planted)('%s with %j is told', (file, text, told) => {
  const faults = importFaults({ [file]: text });
  expect(faults).toHaveLength(1);
  expect(faults[0]).toContain(told);
});

test('a cycle is told with its files', () => {
  const cyclic = {
    'src/core/units/a.ts': "import { b } from './b.ts';",
    'src/core/units/b.ts': "import { c } from './c.ts';",
    'src/core/units/c.ts': "import { a } from './a.ts';",
  };
  const told = 'cycle: src/core/units/a.ts -> src/core/units/b.ts -> src/core/units/c.ts -> src/core/units/a.ts';
  expect(importFaults(cyclic)).toEqual([told]);
  const page = { 'src/site/a.astro': "import { b } from './b.ts';", 'src/site/b.ts': "import A from './a.astro';" };
  expect(importFaults(page)).toEqual(['cycle: src/site/a.astro -> src/site/b.ts -> src/site/a.astro']);
});

test('what the table allows passes', () => {
  const allowed = {
    'src/core/benchwork/schema.ts': "import { z } from 'zod';\nimport { steps } from '../steps/schema.ts';",
    'src/core/wiring/x.ts': "import { a } from '../track/line.ts';",
    'src/core/notebook.ts': "import type { Plan } from './plan.ts';",
    'src/cli/check.ts': "import { a } from '../reading/read.ts';\nimport { join } from 'node:path';",
    'src/site/Words.astro': "import Steps from './Steps.astro';",
    'src/site/Steps.astro': "import Words from './Words.astro';",
    'src/reading/disk.ts': "import { readdir } from 'node:fs/promises';",
  };
  expect(importFaults(allowed)).toEqual([]);
});

test('the guide prints a row for every room of the table', () => {
  const guide = readFileSync('DEVELOPERS.md', 'utf8');
  const missing = Object.keys(table).filter((room) => room !== 'core/head' && !guide.includes(`\`${room}`));
  expect(missing).toEqual([]);
});
