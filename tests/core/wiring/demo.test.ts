import { describe, expect, it } from 'vitest';
import { fromWorld, standing, within } from '../../../src/core/geometry/pose.ts';
import { compute } from '../../../src/core/notebook.ts';
import type { Plan } from '../../../src/core/plan.ts';
import { spaceLength } from '../../../src/core/wiring/wire-list.ts';
import { loadWithShipped } from '../../../src/reading/disk.ts';
import { readContent } from '../../../src/reading/read.ts';

const files = await loadWithShipped('content', 'content');
const content = readContent(files);
const plan = content.plans.find(({ slug }) => slug === 'bittern-basin');
if (plan === undefined) throw new Error('no demo notebook');

function computed(one: Plan) {
  const answer = compute(one);
  if (!answer.ok || answer.value.wiring === null) throw new Error('the demo notebook does not compute');
  return { book: answer.value, wiring: answer.value.wiring };
}

const { book, wiring } = computed(plan);

describe('bittern-basin', () => {
  it('is routed without a clash, every feeder reached, and trips everywhere', () => {
    const rules = book.findings.filter(({ chapter }) => chapter === 'wiring').filter(({ level }) => level === 'halt');
    expect(rules).toEqual([]);
    expect(wiring.districts.every(({ trips }) => trips)).toBe(true);
  });

  it('has each hole in the drawing of the part it goes through, at the bus', () => {
    expect(wiring.holes.length).toBeGreaterThan(3);
    for (const { part, at, diameter } of wiring.holes) {
      const owner = book.parts.find(({ places }) => places.some(({ id }) => id === part));
      const place = owner?.places.find(({ id }) => id === part);
      const bench = book.benches.find(({ id }) => id === owner?.bench);
      if (owner === undefined || place === undefined || bench === undefined) throw new Error(`no ${part}`);
      const pose = within(standing([bench.place.x, bench.place.y], bench.place.turn), place.pose);
      const [x, y] = fromWorld(pose, at);
      const holes = owner.features.filter((one) => one.kind === 'hole' && one.for === 'bus');
      const mine = holes.filter((one) => one.kind === 'hole' && Math.hypot(one.at[0] - x, one.at[1] - y) < 1e-6);
      expect(mine).toMatchObject([{ diameter, depth: 'through' }]);
    }
  });

  it('every hole lies on the bus, and the bus goes through nothing else', () => {
    const path = wiring.bus?.path ?? [];
    for (const { at } of wiring.holes) {
      const off = path.slice(1).map(([x, y], i) => {
        const [px = 0, py = 0] = path[i] ?? [];
        const square = (x - px) ** 2 + (y - py) ** 2;
        const share =
          square === 0 ? 0 : Math.min(1, Math.max(0, ((at[0] - px) * (x - px) + (at[1] - py) * (y - py)) / square));
        return Math.hypot(px + (x - px) * share - at[0], py + (y - py) * share - at[1]);
      });
      expect(Math.min(...off)).toBeLessThan(1e-6);
    }
  });

  it('keeps above its drawers and below its deck', () => {
    const tops = book.envelopes.filter(({ kind }) => kind === 'drawer').map(({ max }) => max[2]);
    const deck = book.benches[0]?.sideTop ?? 0;
    expect(tops.length).toBeGreaterThan(0);
    expect(wiring.bus?.z).toBeGreaterThan(Math.max(...tops) + 4);
    expect(wiring.bus?.z).toBeLessThan(deck - 4);
  });

  it('lists each wire as its drawn path and slack', () => {
    for (const { path, drawn, slack, length } of wiring.wires) {
      expect(drawn).toBeCloseTo(spaceLength(path), 9);
      expect(length).toBeCloseTo(drawn + slack, 9);
    }
  });

  it('routes anew when a drawer moves to another bay', () => {
    const moved = files.map((file) => {
      if (file.path !== 'notebooks/bittern-basin/benchwork.md') return file;
      const text = new TextDecoder()
        .decode(file.bytes)
        .replace('side: front, bays: [2, 3]', 'side: front, bays: [2, 4]');
      return { ...file, bytes: new TextEncoder().encode(text) };
    });
    const again = readContent(moved).plans.find(({ slug }) => slug === 'bittern-basin');
    if (again === undefined) throw new Error('no demo notebook');
    const other = computed(again);
    expect(other.book.envelopes).not.toEqual(book.envelopes);
    expect(other.wiring.findings.filter(({ rule }) => rule === 'bus-clash')).toEqual([]);
  });
});
