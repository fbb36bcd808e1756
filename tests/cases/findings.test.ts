import { cpSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { testDesk } from '../cli/desk.ts';

const HERE = new URL('.', import.meta.url).pathname;
const FOUND = 'expected-findings.txt';
const names = readdirSync(HERE).filter((name) => existsSync(join(HERE, name, FOUND)));

/** What the check says of a case's content, and how it ends; the shipped stock stays beside it. */
async function checked(name: string) {
  const desk = testDesk();
  rmSync(join(desk.content, 'notebooks'), { recursive: true });
  cpSync(join(HERE, name, 'content'), desk.content, { recursive: true });
  const code = await run(desk, ['check']);
  return { code, told: desk.said() + desk.warned() };
}

describe('content in, findings out', () => {
  test('there are cases', () => {
    expect(names).toContain('fittings');
  });

  test.each(names.sort())('%s', async (name) => {
    const { code, told } = await checked(name);
    expect(code).toBe(1);
    const expected = join(HERE, name, FOUND);
    // UPDATE_CASES=1 writes what was told, to be read before it is committed
    if (process.env.UPDATE_CASES === '1') writeFileSync(expected, told);
    expect(told).toBe(readFileSync(expected, 'utf8'));
  });
});
