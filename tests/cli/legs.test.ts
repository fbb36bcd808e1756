import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { freshFolder, spoil, testDesk } from './desk.ts';

type Exported = {
  parts: { id: string; role: string; quantity: number; from?: string }[];
  sheets: { parts: { part: string }[] }[];
  assembly: { bench: string; knots: unknown[]; apart: unknown }[];
  machining: { part: string; operations: { kind: string }[] }[];
  hardware: { item: string; quantity: number; where: string }[];
  envelopes: { id: string; kind: string }[];
  findings: { level: string; rule: string }[];
};

/** The demo table on other legs, exported. */
async function exported(legs: string) {
  const desk = testDesk();
  spoil(desk, 'notebooks/bittern-basin/benchwork.md', [/^ {4}legs: .*$/m, `    legs: ${legs}`]);
  const out = freshFolder();
  const code = await run(desk, ['export', 'bittern-basin', '--out', out]);
  if (code !== 0) throw new Error(desk.warned());
  const json: Exported = JSON.parse(readFileSync(join(out, 'notebook.json'), 'utf8'));
  return { json, drawings: readdirSync(out, { recursive: true }).map(String) };
}

describe.each([
  [
    'thicker posts',
    '{ form: post, material: frame, layers: 5, casters: { stock: caster-75, mount: plate } }',
    'leg-layer',
    20,
  ],
  [
    'angle legs',
    '{ form: angle, material: frame, width: 110 mm, casters: { stock: caster-75, mount: plate } }',
    'leg-half',
    8,
  ],
  [
    'trestles',
    '{ form: trestle, material: frame, width: 90 mm, feet: { stock: foot-m8, travel: 20 mm } }',
    'leg-upright',
    4,
  ],
])('the demo table on %s', (_, legs, role, count) => {
  test('is computed, drawn, assembled and cut without a halt', async () => {
    const { json, drawings } = await exported(legs);
    expect(json.findings.filter(({ level }) => level === 'halt')).toEqual([]);
    const made = json.parts.filter((part) => part.role === role);
    expect(made.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(count);
    for (const { id } of made) expect(drawings.some((name) => name.includes(id) && name.endsWith('.svg'))).toBe(true);
    expect(JSON.stringify(json.assembly)).toContain('"knots":[]');
    const cut = new Set(json.sheets.flatMap((sheet) => sheet.parts.map(({ part }) => part)));
    expect(json.parts.filter(({ id, from }) => from === undefined && !cut.has(id)).map(({ id }) => id)).toEqual([]);
    expect(json.parts.filter(({ from }) => from !== undefined).map(({ id }) => [id, cut.has(id)])).toEqual([
      ['drawer.front-2.face', false],
    ]);
    expect(json.hardware.filter(({ item }) => item.startsWith('slide')).map(({ quantity }) => quantity)).toEqual([
      1, 1,
    ]);
    expect(json.envelopes.filter(({ kind }) => kind === 'drawer').map(({ id }) => id)).toEqual([
      'drawer.front-2.pulled-out',
      'drawer.front-3.pulled-out',
    ]);
  });
});
