import { describe, expect, it } from 'vitest';
import { fromWorld, standing, within } from '../../../src/core/geometry/pose.ts';
import { compute } from '../../../src/core/notebook.ts';
import type { Plan } from '../../../src/core/plan.ts';
import { HOLE_FROM_CUT } from '../../../src/core/stock/cut-limits.ts';
import { woodBetween } from '../../../src/core/stock/near-cuts.ts';
import { spaceLength } from '../../../src/core/wiring/wire.ts';
import { loadWithShipped } from '../../../src/reading/disk.ts';
import { readContent } from '../../../src/reading/read.ts';
import { type Change, changedPlan } from './changed-demo.ts';

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

type Computed = ReturnType<typeof computed>;

function wiringOf(): Computed {
  return { book, wiring };
}

/** The notebook with pieces of its chapters' text changed, read and computed anew. */
function changed(...changes: readonly Change[]): Computed {
  return computed(changedPlan(...changes));
}

type Corner = readonly [number, number, number];

/** Whether a path square to the axes goes into a box. */
function touching(path: readonly Corner[], { max, min }: { readonly max: Corner; readonly min: Corner }): boolean {
  return path.slice(1).some((to, i) => {
    const from = path[i] ?? to;
    return ([0, 1, 2] as const).every(
      (axis) => Math.max(from[axis], to[axis]) > min[axis] && Math.min(from[axis], to[axis]) < max[axis],
    );
  });
}

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

  it('each hole keeps wood to every other cut of its final part, the basin among them', () => {
    const wood = (one: Computed) =>
      one.book.parts.flatMap(({ blank, features }) =>
        features.flatMap((feature) =>
          feature.kind === 'hole' && feature.for === 'bus'
            ? features.flatMap((other) => (other === feature ? [] : (woodBetween(blank, feature, other) ?? [])))
            : [],
        ),
      );
    expect(book.parts.some(({ features }) => features.some((one) => one.kind === 'notch' && one.for === 'basin'))).toBe(
      true,
    );
    expect(Math.min(...wood(wiringOf()))).toBeGreaterThanOrEqual(HOLE_FROM_CUT - 1e-6);
    // planted fault: a bus led by hand under the basin's notch
    const led = changed({ file: 'wiring', from: 'route: auto', to: 'route: [[120 mm, 225 mm], [900 mm, 225 mm]]' });
    expect(led.wiring.findings.filter(({ rule }) => rule === 'bus-clash').map(({ where }) => where)).toContain(
      'strut.across-2',
    );
  });

  it('every hole lies on the bus, and the bus goes through nothing else', () => {
    const limbs = [wiring.bus?.path ?? [], ...(wiring.bus?.branches ?? [])];
    const straights = limbs.flatMap((path) => path.slice(1).map((to, i) => [path[i] ?? to, to] as const));
    for (const { at } of wiring.holes) {
      const off = straights.map(([[px, py], [x, y]]) => {
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

  it('tells for each bay the spaces that reach into it, and no boards', () => {
    const ids = new Set(book.parts.flatMap(({ places }) => places.map(({ id }) => id)));
    const told = wiring.places.flatMap(({ below }) => below.map(({ id }) => id));
    expect(told).toContain('drawer.front-2.pulled-out');
    expect(told.filter((id) => ids.has(id))).toEqual([]);
  });

  it('lists each wire as its drawn path and slack', () => {
    for (const { path, drawn, slack, length } of wiring.wires) {
      expect(drawn).toBeCloseTo(spaceLength(path), 9);
      expect(length).toBeCloseTo(drawn + slack, 9);
    }
  });

  it('routes anew when a drawer moves to another bay', () => {
    const bare: Change = {
      file: 'benchwork',
      from: 'shelves: { side: back, bays: [2, 3], material: deck }',
      to: '',
    };
    // short ones: the bus goes round them instead of over them
    const bays = (to: string): Change => ({
      file: 'benchwork',
      from: 'side: front, bays: [2, 3], slides: { length: 450 mm }',
      to: `side: front, bays: ${to}, slides: { length: 250 mm }`,
    });
    const routes = ['[2]', '[3]'].map((to) => changed(bare, bays(to)));
    const [left, right] = routes.map((one) => one.wiring.bus?.path);
    expect(left).not.toEqual(right);
    for (const { book: own, wiring: laid } of routes) {
      expect(laid.findings.filter(({ rule }) => rule === 'bus-clash' || rule === 'feeder-unreached')).toEqual([]);
      const drawers = own.envelopes.filter(({ kind }) => kind === 'drawer');
      expect(drawers).toHaveLength(1);
      for (const path of [laid.bus?.path ?? [], ...(laid.bus?.branches ?? [])])
        for (const { max, min } of drawers) expect(touching(path, { max, min })).toBe(false);
      for (const { drawn, path } of laid.wires) expect(drawn).toBeCloseTo(spaceLength(path), 9);
    }
  });

  it('with a bus too thin gets a care with the size that mends it, and with that size none', () => {
    const low = (one: Computed) =>
      one.wiring.findings.filter(({ rule }) => rule === 'volts-low' || rule === 'wire-thin-for-trip');
    const strict: Change = { file: 'wiring', from: 'feeders: {', to: 'may-lose: 2 %\nfeeders: {' };
    const thin = changed(strict, { file: 'wiring', from: 'bus: { stock: wire-2.5', to: 'bus: { stock: wire-awg-24' });
    expect(low(wiringOf())).toEqual([]);
    const [first] = low(thin);
    expect(first).toMatchObject({ level: 'care' });
    expect(first?.what.join('')).toContain('of 15 V');
    const size = /^Take (\S+) /.exec(first?.mend.join('') ?? '')?.[1];
    if (size === undefined) throw new Error('no size is named');
    const mended = changed(strict, { file: 'wiring', from: 'bus: { stock: wire-2.5', to: `bus: { stock: ${size}` });
    expect(low(mended).filter(({ where }) => where === first?.where)).toEqual([]);
  });

  it('whose rails let too little through a short is a halt that names the line, and mends by a lower trip', () => {
    const rusty = changed({ file: 'wiring', from: 'feeders: {', to: 'rails: { ohm-per-metre: 12 ohm }\nfeeders: {' });
    const halts = rusty.book.findings.filter(({ rule }) => rule === 'short-does-not-trip');
    expect(halts[0]).toMatchObject({ level: 'halt', where: 'quay' });
    expect(halts[0]?.what.join('')).toContain('A short on main at ');
    expect(halts[0]?.mend.join('')).toMatch(/let quay trip at \d/);
  });

  it('without a supply, overloaded, or with districts joined is a halt that names the place', () => {
    const halts = (change: Change) =>
      changed(change)
        .wiring.findings.filter(({ level }) => level === 'halt')
        .map(({ rule, where }) => `${rule} ${where}`);
    expect(halts({ file: 'wiring', from: 'volts: 15 V', to: 'volts: 0 V' })).toContain('supply-missing supply');
    expect(halts({ file: 'wiring', from: 'amps: 0.12 A', to: 'amps: 4 A' })).toContain('overload rest');
    const joined = halts({ file: 'wiring', from: 'feeders: {', to: 'gaps: []\nfeeders: {' });
    expect(joined).toContain('districts-joined siding');
  });
});
