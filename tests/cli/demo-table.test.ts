import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { freshFolder, spoil, testDesk } from './desk.ts';

type Feature = {
  kind: string;
  for?: string;
  depth?: number;
  patch?: { x0: number; x1: number; y0: number; y1: number };
};
type Part = { id: string; role: string; length: number; width: number; features: Feature[] };
type Exported = {
  parts: Part[];
  benches: { length: number; width: number; sideUnderside: number; strutUnderside: number }[];
  findings: { rule: string; level: string; where: string; what: string }[];
};

const thousandth = (value: number) => Math.round(value * 1000) / 1000;

/** bittern-basin as it is exported from its chapter alone, before anything was measured in the log. */
async function exported(measured: string): Promise<{ code: number; told: string; json: Exported }> {
  const desk = testDesk();
  const log = join(desk.content, 'notebooks', 'bittern-basin', 'log');
  for (const name of readdirSync(log)) {
    if (/^measured:/m.test(readFileSync(join(log, name), 'utf8'))) rmSync(join(log, name));
  }
  spoil(desk, 'notebooks/bittern-basin/benchwork.md', [/measured: [\d.]+ mm/, `measured: ${measured} `]);
  const out = freshFolder();
  const code = await run(desk, ['export', 'bittern-basin', '--out', out]);
  const json =
    code === 0
      ? JSON.parse(readFileSync(join(out, 'notebook.json'), 'utf8'))
      : { parts: [], benches: [], findings: [] };
  return { code, told: desk.warned(), json };
}

function figures({ parts, benches: [bench] }: Exported) {
  const lengthsOf = (id: string) => [
    ...new Set(parts.filter((part) => part.id.startsWith(id)).map(({ length }) => length)),
  ];
  const features = parts.filter(({ role }) => role === 'side').flatMap((part) => part.features);
  const depths = features.filter(({ kind }) => /dado|rabbet/.test(kind)).map(({ depth }) => depth);
  const slots = parts
    .filter(({ role }) => role === 'strut')
    .flatMap((part) => part.features)
    // what the land asks for is no slot of a lap
    .filter((feature) => feature.for === undefined || feature.for.startsWith('strut.'))
    .flatMap(({ kind, patch }) => (kind === 'notch' && patch !== undefined ? [patch] : []));
  return {
    frame: [bench?.length, bench?.width],
    sides: lengthsOf('side.'),
    ends: lengthsOf('end.'),
    across: lengthsOf('strut.across'),
    along: lengthsOf('strut.along'),
    dados: [...new Set(depths)],
    slotWidths: [...new Set(slots.map(({ x0, x1 }) => thousandth(x1 - x0)))],
    slotDepths: [...new Set(slots.map(({ y0, y1 }) => thousandth(y1 - y0)))],
    strutsHang: bench === undefined ? null : thousandth(bench.strutUnderside - bench.sideUnderside),
  };
}

/** Worked by hand: dado = 17.7 / 3 rounded to 0.1; end = 1100 - 2 x (17.7 - 5.9); slot = 17.7 + 0.3; lap = 135 / 2 + 0.4. */
test('with 17.7 mm sheets the table comes out as worked by hand', async () => {
  expect(figures((await exported('17.7 mm')).json)).toEqual({
    frame: [1600, 1100],
    sides: [1600],
    ends: [1076.4],
    across: [1076.4],
    along: [1576.4],
    dados: [5.9],
    slotWidths: [18],
    slotDepths: [67.9],
    strutsHang: 35,
  });
});

test('thinner sheets make shallower dados and longer ends; the outside stays', async () => {
  expect(figures((await exported('17.5 mm')).json)).toMatchObject({
    frame: [1600, 1100],
    ends: [1076.6],
    dados: [5.8],
  });
});

test('18.3 mm is outside the listed range of an 18 mm sheet: a care, wider slots, the same outside', async () => {
  const { json } = await exported('18.3 mm');
  expect(figures(json)).toMatchObject({ frame: [1600, 1100], slotWidths: [18.6], dados: [6.1] });
  expect(json.findings.filter(({ level, what }) => level === 'care' && what.includes('18.3 mm'))).not.toEqual([]);
});

test('25 mm for an 18 mm sheet is a mistake, told where it stands', async () => {
  const { code, told } = await exported('25 mm');
  expect(code).toBe(1);
  expect(told).toMatch(/^notebooks\/bittern-basin\/benchwork\.md:11:\d+ {2}.*25/);
});
