import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { problemsOf } from './problems-of.ts';

const HERE = new URL('.', import.meta.url).pathname;
const names = readdirSync(HERE, { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? [entry.name] : []));

describe('content in, problems out', () => {
  test('there are cases', () => {
    expect(names.length).toBeGreaterThan(4);
  });

  test.each(names.sort())('%s', async (name) => {
    const told = await problemsOf(join(HERE, name, 'content'));
    const expected = join(HERE, name, 'expected.txt');
    // UPDATE_CASES=1 writes what was told, to be read before it is committed
    if (process.env.UPDATE_CASES === '1') writeFileSync(expected, told);
    expect(told).toBe(readFileSync(expected, 'utf8'));
  });
});
