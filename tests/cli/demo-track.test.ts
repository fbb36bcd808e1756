import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { freshFolder, spoil, testDesk } from './desk.ts';

type Stance = { x: number; y: number; heading: number };
type Element = { kind: string; start: Stance; end: Stance; radiusAtStart: number | null };
type Found = { piece: number; what: string; value: number };
type Line = {
  id: string;
  length: number;
  extents: Record<string, number>;
  unknowns: Found[];
  elements: Element[];
  heights: { at: number; height: number }[];
};
type Exported = {
  track: {
    lines: Line[];
    turnouts: { id: string; ends: Record<string, Stance> }[];
    radii: { line: string; piece: number; radius: number; largest: number | null; lines: Line[] }[];
  };
  wiring: {
    gaps: { line: string; at: number; why: string }[];
    reversing: { line: string; from: number; to: number; length: number }[];
    feeders: { line: string; at: number }[];
  };
  findings: { rule: string; level: string; where: string; mend: string }[];
};

/** bittern-basin as it is exported, with one place of its track chapter changed. */
async function exported(...change: readonly (readonly [string, string])[]): Promise<Exported> {
  const desk = testDesk();
  for (const one of change) spoil(desk, 'notebooks/bittern-basin/track.md', one);
  const out = freshFolder();
  expect(await run(desk, ['export', 'bittern-basin', '--out', out])).toBe(0);
  return JSON.parse(readFileSync(join(out, 'notebook.json'), 'utf8'));
}

let shipped: Promise<Exported> | undefined;
/** The demo as it is, computed once. */
const asShipped = () => {
  shipped ??= exported();
  return shipped;
};

const lineOf = ({ track }: Exported, id: string): Line => {
  const found = track.lines.find((line) => line.id === id);
  if (found === undefined) throw new Error(`no line ${id}`);
  return found;
};
const halts = ({ findings }: Exported) => findings.filter(({ level }) => level === 'halt').map(({ rule }) => rule);

test('main closes with the straight and the radius that were left to it, over the whole deck', async () => {
  const demo = await asShipped();
  const main = lineOf(demo, 'main');
  expect(main.unknowns.map(({ what, value }) => [what, value])).toEqual([
    ['straight', 151.167],
    ['radius', 380],
  ]);
  expect(main.extents).toEqual({ x0: 59.021, x1: 1534.979, y0: 150, y1: 911.775 });
  expect(main.heights.map(({ height }) => height)).toEqual([0, 0, 18, 18, 0]);
  expect(halts(demo)).toEqual([]);
});

test('the loop comes back to its own turnout, in place and heading, with three found values', async () => {
  const demo = await asShipped();
  const loop = lineOf(demo, 'loop');
  expect(loop.unknowns.map(({ what }) => what)).toEqual(['through', 'through', 'straight']);
  const end = loop.elements[loop.elements.length - 1]?.end;
  const meets = demo.track.turnouts.find(({ id }) => id === 'W3')?.ends.right;
  expect(end?.x).toBeCloseTo(meets?.x ?? 0, 3);
  expect(end?.y).toBeCloseTo(meets?.y ?? 0, 3);
  // it arrives against the way one leaves there, after turning right by a half turn and more
  const turn = ((meets?.heading ?? 0) + Math.PI - (end?.heading ?? 0)) / (2 * Math.PI);
  expect(turn).toBeCloseTo(Math.round(turn), 6);
  // both turnouts' branches and the two found turns come to a half turn, full turns aside: the train faces the other way
  const [left, right] = loop.unknowns.map(({ value }) => value);
  expect(((18 + 18) * Math.PI) / 180 + (left ?? 0) - (right ?? 0)).toBeCloseTo(-Math.PI, 5);
});

test('the loop is a reversing section: both ends cut, feeders between, longer than what conducts', async () => {
  const demo = await asShipped();
  const { gaps, reversing, feeders } = demo.wiring;
  const [section] = reversing;
  expect(reversing.map(({ line }) => line)).toEqual(['loop']);
  expect(gaps.filter(({ why }) => why === 'reversing').map(({ line, at }) => [line, at])).toEqual([
    ['loop', section?.from],
    ['loop', section?.to],
  ]);
  expect(section?.to).toBe(lineOf(demo, 'loop').length);
  expect(section?.length).toBeGreaterThan(1.1 * 90);
  const within = feeders.filter(({ line, at }) => line === 'loop' && at > (section?.from ?? 0));
  expect(within.length).toBeGreaterThan(1);
  const told = demo.findings.filter(({ rule }) => rule.startsWith('reversing')).map(({ rule, level }) => [rule, level]);
  expect(told).toEqual([['reversing-section', 'note']]);
});

test('60 mm more leave the deck at both ends; the largest that is told stays', async () => {
  const demo = await asShipped();
  const large = await exported(['radius: 380 mm', 'radius: 440 mm']);
  expect(lineOf(large, 'main').unknowns.map(({ value }) => value)).toEqual([151.167, 440]);
  expect(halts(large).filter((rule) => rule === 'leaves-deck')).toHaveLength(2);
  const told = demo.track.radii.find(({ line }) => line === 'main');
  expect([told?.radius, told?.largest]).toEqual([380, 426.5]);
  const found = told?.lines.find(({ id }) => id === 'main')?.unknowns;
  const most = await exported(['radius: 380 mm', 'radius: 426.5 mm']);
  expect(halts(most)).not.toContain('leaves-deck');
  expect(lineOf(most, 'main').unknowns).toEqual(found);
});
