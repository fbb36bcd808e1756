import { expect, test } from 'vitest';
import { area, bounds, circle, rectangle } from '../../../src/core/geometry/polygon.ts';
import { regionArea } from '../../../src/core/scenery/clip.ts';
import type { Path } from '../../../src/core/scenery/land.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { partOutline } from '../../../src/core/stock/outline.ts';
import { around, bare, cloth, foam, hill, pond } from './table.ts';

const rules = (model: { readonly findings: readonly { readonly rule: string }[] }) =>
  model.findings.map(({ rule }) => rule);

test('a hill is cut from layers whose templates are its largest outlines', () => {
  const model = sceneryModel({ ...bare, forms: [hill] }, around);
  expect(model.layers).toHaveLength(4);
  model.layers.forEach(({ template, carveTo, from, to }) => {
    // a paraboloid: r^2 = R^2 (1 - h / H)
    const at = (h: number) => Math.PI * hill.footRadius ** 2 * (1 - h / hill.height);
    expect(regionArea(template) / at(from)).toBeCloseTo(1, 2);
    expect(regionArea(carveTo)).toBeCloseTo(to >= hill.height ? 0 : at(to), -2.5);
  });
  const cylinder = Math.PI * hill.footRadius ** 2 * hill.height;
  expect(model.volumes.left / (cylinder / 2)).toBeCloseTo(1, 3);
  expect(model.volumes.cut / (cylinder * (1 + 0.75 + 0.5 + 0.25) * 0.25)).toBeCloseTo(1, 2);
  expect(model.volumes.carved).toBeCloseTo(model.volumes.cut - model.volumes.left, 6);
});

test('raised by 30 mm, all of the hill follows', () => {
  const land = {
    ...bare,
    forms: [hill],
    zones: [{ id: 'green', at: '', outline: circle(hill.top, 140, 96), of: [cloth], trees: 100 }],
  };
  const low = sceneryModel(land, around);
  const high = sceneryModel({ ...land, forms: [{ ...hill, height: 130 }] }, around);
  expect(high.layers.length).toBe(low.layers.length + 2);
  expect(high.volumes.left / low.volumes.left).toBeCloseTo(1.3, 2);
  expect(high.highest).toBe(130);
  const mass = ({ masses }: typeof low) =>
    masses.reduce((sum, { outline, perSquareMetre }) => sum + area({ outline, holes: [] }) * 1e-6 * perSquareMetre, 0);
  expect(mass(high)).toBeGreaterThan(mass(low));
  expect(high.quantities.find(({ stock }) => stock === 'cloth')?.need).toBeGreaterThan(
    low.quantities.find(({ stock }) => stock === 'cloth')?.need ?? 0,
  );
});

test("the masses of the layers add up to the foam's own volume", () => {
  const model = sceneryModel({ ...bare, forms: [hill] }, around);
  const mass = model.masses.reduce(
    (sum, { outline, perSquareMetre }) => sum + area({ outline, holes: [] }) * 1e-6 * perSquareMetre,
    0,
  );
  expect(mass).toBeCloseTo(model.volumes.left * 1e-9 * foam.density, 9);
});

test('a layer larger than any sheet is joined from pieces that fit one, and says so', () => {
  const model = sceneryModel({ ...bare, forms: [{ ...hill, footRadius: 280 }] }, around);
  const [bottom, second] = model.layers;
  expect(bottom?.pieces.length).toBeGreaterThan(1);
  expect(rules(model)).toContain('layer-over-sheet');
  for (const part of model.parts.filter(({ role }) => role === 'layer')) {
    const [long, short] = [
      Math.max(part.blank.length, part.blank.width),
      Math.min(part.blank.length, part.blank.width),
    ];
    expect(long).toBeLessThanOrEqual(500 + 1e-6);
    expect(short).toBeLessThanOrEqual(300 + 1e-6);
  }
  const cut = model.parts
    .filter(({ id }) => id.startsWith('layer.1'))
    .reduce((sum, part) => sum + area(partOutline(part)), 0);
  expect(cut / (bottom?.area ?? 1)).toBeCloseTo(1, 4);
  expect(bottom?.joints.map(([a]) => a)).not.toEqual(second?.joints.map(([a]) => a));
});

test('a hollow hill keeps its wall and weighs less', () => {
  const solid = sceneryModel({ ...bare, forms: [hill] }, around);
  const hollow = sceneryModel({ ...bare, forms: [hill], hollow: 30 }, around);
  expect(hollow.volumes.left).toBeLessThan(solid.volumes.left);
  expect(hollow.layers[0]?.template[0]?.holes).toHaveLength(1);
  expect(hollow.layers.at(-1)?.template[0]?.holes).toHaveLength(0);
});

test('ground cut off at an edge asks for a board, and gets one whose top follows it', () => {
  const forms = [{ ...hill, top: [500, 520] as const }];
  const open = sceneryModel({ ...bare, forms }, around);
  expect(open.findings.find(({ rule }) => rule === 'hill-past-edge')).toMatchObject({ where: 'down', level: 'care' });
  const boards = [
    {
      id: 'back',
      at: '',
      bench: 'table',
      edge: 'back' as const,
      stock: { ...foam, id: 'ply-9', thickness: { ...foam.thickness, listed: 9 } },
    },
  ];
  const held = sceneryModel({ ...bare, forms, boards }, around);
  expect(rules(held)).not.toContain('hill-past-edge');
  const board = held.parts.find(({ role }) => role === 'profile-board');
  // the dome at its edge: H (1 - 80^2 / 140^2)
  expect(board?.blank.width).toBeCloseTo(100 * (1 - (80 / 140) ** 2), 1);
  for (const { template } of held.layers) {
    const { high } = bounds(template.flatMap(({ outline }) => outline));
    expect(high[1]).toBeLessThanOrEqual(600 + 1e-6);
  }
  const strip = rectangle([480, 592], [520, 599]);
  const under = held.layers[0]?.template.some(({ outline }) =>
    outline.some(([x, y]) => x > 480 && x < 520 && y > (strip[0]?.[1] ?? 0)),
  );
  expect(under).toBe(false);
  expect(rules(sceneryModel({ ...bare, boards }, around))).toContain('board-needless');
});

test('water cuts the deck and notches the strut under it; moved as told, it cuts the deck alone', () => {
  const model = sceneryModel({ ...bare, water: [pond] }, around);
  expect(model.requests.map(({ part, kind }) => `${kind} ${part}`)).toEqual(['notch strut.across-1', 'cut-out deck.1']);
  // 6 + 10 + 3 under the deck's top, of which the deck takes 9; 100 long with 3 mm walls and 1 mm play each end
  expect(model.requests[0]).toMatchObject({ size: [108, 10], limit: 15, at: [333, 150, 691] });
  const clear = model.water[0]?.clear;
  const move = clear?.move ?? [0, 0];
  const moved = { ...pond, outline: pond.outline.map(([x, y]) => [x + move[0], y + move[1]] as const) };
  const after = sceneryModel({ ...bare, water: [moved] }, around);
  expect(after.requests.map(({ kind }) => kind)).toEqual(['cut-out']);
  expect(rules(after)).not.toContain('water-cuts-frame');
  const small = clear?.smaller;
  expect(small).not.toBeNull();
  const cut = sceneryModel(
    { ...bare, water: [{ ...pond, outline: rectangle(small?.low ?? [0, 0], small?.high ?? [0, 0]) }] },
    around,
  );
  expect(cut.requests.map(({ kind }) => kind)).toEqual(['cut-out']);
});

test('a drawer under a water is a halt, and water off the deck another', () => {
  const envelopes = [
    { id: 'drawer.front-1', of: 'drawer.front-1', kind: 'drawer', min: [200, 20, 600], max: [450, 300, 690] },
  ] as const;
  const wet = sceneryModel({ ...bare, water: [pond] }, { ...around, envelopes });
  expect(wet.findings.find(({ rule }) => rule === 'water-blocked')).toMatchObject({ level: 'halt', figure: 9 });
  const away = { ...pond, outline: pond.outline.map(([x, y]) => [x + 2000, y] as const) };
  expect(rules(sceneryModel({ ...bare, water: [away] }, around))).toEqual(['water-off-deck']);
  const over = { ...pond, outline: pond.outline.map(([x, y]) => [x - 300, y] as const) };
  expect(rules(sceneryModel({ ...bare, water: [over] }, around))).toContain('water-over-edge');
});

test('pours keep their limit, wait a day each, and a thick one is told', () => {
  const [water] = sceneryModel({ ...bare, water: [pond] }, around).water;
  expect(water?.pours).toEqual({ count: 4, each: 2.5, wait: 4 * 24 * 60 });
  expect(water?.volume).toBeCloseTo(150 * 100 * 10, 9);
  expect(water?.mixed).toBeCloseTo(1.1 * 150 * 100 * 10, 6);
  const thick = sceneryModel({ ...bare, water: [{ ...pond, pour: 10 }] }, around);
  expect(thick.findings.find(({ rule }) => rule === 'pour-hot')).toMatchObject({ figure: 10, limit: 6.35 });
});

const line: Path = {
  ...{ id: 'main', half: 19, slope: 2 / 3, free: [] },
  points: [
    { at: 0, x: 0, y: 300, z: 10 },
    { at: 1000, x: 1000, y: 300, z: 10 },
  ],
};

test('a hill over a line is told as a tunnel to write, and a tunnel too low for its train as a halt', () => {
  const cut = sceneryModel({ ...bare, forms: [hill] }, { ...around, lines: [line] });
  expect(cut.findings.find(({ rule }) => rule === 'hill-over-line')).toMatchObject({
    where: 'main',
    level: 'care',
    figure: 90,
  });
  const bored = (from: number, to: number) => {
    const free = [[from, to]] as const;
    const tunnels = [{ id: 'bore', line: 'main', from, to, at: '' }];
    return sceneryModel({ ...bare, forms: [hill], tunnels }, { ...around, lines: [{ ...line, free }] });
  };
  expect(rules(bored(450, 550))).not.toContain('hill-through-train');
  expect(bored(380, 550).findings.find(({ rule }) => rule === 'hill-through-train')).toMatchObject({
    level: 'halt',
    where: 'bore',
  });
});

test('a spot on a line, a top out of reach and unnamed foam are told', () => {
  const spots = [{ x: 300, y: 305, height: 60, at: '' }];
  expect(rules(sceneryModel({ ...bare, spots }, { ...around, lines: [line] }))).toContain('spot-on-line');
  expect(rules(sceneryModel({ ...bare, forms: [hill] }, { ...around, reach: 250 }))).toContain('hill-out-of-reach');
  const unnamed = sceneryModel({ ...bare, foam: null, forms: [hill] }, around);
  expect(rules(unnamed)).toContain('foam-unnamed');
  expect(unnamed.layers).toEqual([]);
});

test('a turned bench carries the land as the straight one does', () => {
  const turn = Math.PI / 2;
  const place = { x: 600, y: 0, turn };
  const turned = sceneryModel(
    { ...bare, forms: [{ ...hill, top: [300, 500] }] },
    { ...around, benches: around.benches.map((one) => ({ ...one, place })) },
  );
  const straight = sceneryModel({ ...bare, forms: [hill] }, around);
  expect(turned.volumes.left / straight.volumes.left).toBeCloseTo(1, 6);
  const origin = (model: typeof straight) => model.parts[0]?.places[0]?.pose.origin;
  for (const axis of [0, 1, 2] as const) expect(origin(turned)?.[axis]).toBeCloseTo(origin(straight)?.[axis] ?? 0, 0);
});
