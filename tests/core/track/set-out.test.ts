import { describe, expect, it } from 'vitest';
import { layTrack } from '../../../src/core/track/lay.ts';
import { ballastPerMetre, cutFlex } from '../../../src/core/track/supplies.ts';
import { curve, from, line, NO_GROUND, oval, straight, tableGround, track } from './example.ts';

describe('setting out', () => {
  const { model } = layTrack(oval());
  const row = (id: string) => model.setOut.find((one) => one.id === id);

  it('gives arc centres from the left and front edges, with both diagonals', () => {
    const centre = row('main.c1');
    // 1110 + k and 150 + R + shift, k = L / 2 - L^3 / 240 R^2, shift = L^2 / 24 R
    expect(centre?.x).toBeCloseTo(1110 + 45 - 90 ** 3 / 240 / 380 ** 2, 3);
    expect(centre?.y).toBeCloseTo(150 + 380 + 90 ** 2 / 24 / 380, 3);
    expect(centre?.radius).toBeCloseTo(380, 9);
    const [left, right] = centre?.diagonals ?? [0, 0];
    expect(left).toBeCloseTo(Math.hypot(centre?.x ?? 0, centre?.y ?? 0), 9);
    expect(right).toBeCloseTo(Math.hypot(1600 - (centre?.x ?? 0), centre?.y ?? 0), 9);
  });

  it('every tangent point lies on its arc about that centre', () => {
    const centre = row('main.c1');
    for (const id of ['main.t3', 'main.t4']) {
      const point = row(id);
      expect(Math.hypot((point?.x ?? 0) - (centre?.x ?? 0), (point?.y ?? 0) - (centre?.y ?? 0))).toBeCloseTo(380, 6);
    }
  });

  it('offsets an easement every 50 mm and at its end, from its straight side', () => {
    const offsets = model.setOut.filter(({ id }) => id.startsWith('main.e1-'));
    expect(offsets.map(({ at }) => at)).toEqual([676, 716]);
    // Y = s^3 / 6RL - s^7 / 336 R^3 L^3
    const y = (s: number) => s ** 3 / (6 * 380 * 90) - s ** 7 / (336 * 380 ** 3 * 90 ** 3);
    expect(offsets[0]?.offset).toBeCloseTo(y(50), 6);
    expect(offsets[1]?.offset).toBeCloseTo(y(90), 4);
    // the easement that leaves the curve is counted from its own straight
    const out = model.setOut.filter(({ id }) => id.startsWith('main.e2-'));
    expect(out.map(({ along }) => Math.round(along ?? 0))).toEqual([50, 90]);
    expect(out[0]?.offset).toBeCloseTo(y(50), 6);
  });

  it("gives a turnout's ends and the point of its frog", () => {
    expect(row('W1.points')).toMatchObject({ kind: 'turnout', line: 'main' });
    expect(row('W1.points')?.x).toBeCloseTo(750, 6);
    expect((row('W1.points')?.x ?? 0) - (row('W1.frog')?.x ?? 0)).toBeCloseTo(54 + 54 - 0.375 * 25.4, 6);
  });

  it('knows centres that lie off the deck', () => {
    const wide = layTrack(
      track([line('main', [curve('left', 1500, 20)], { from: from(300, 100) })], { ground: tableGround() }),
    );
    expect(wide.model.setOut.find(({ kind }) => kind === 'centre')).toMatchObject({ onDeck: false, x: 300, y: 1600 });
  });

  it('counts from the edges of a bench that stands turned', () => {
    const ground = tableGround();
    const turned = {
      ...ground,
      benches: ground.benches.map((bench) => ({ ...bench, place: { x: 2000, y: 500, turn: Math.PI / 2 } })),
    };
    const { model: other } = layTrack(
      track([line('main', [straight(300)], { from: from(1900, 600, 90) })], { ground: turned }),
    );
    const start = other.setOut.find(({ id }) => id === 'main.t1');
    expect([start?.x, start?.y].map((value) => Math.round((value ?? 0) * 1e6) / 1e6)).toEqual([100, 100]);
  });

  it('without benches counts in notebook coordinates', () => {
    const { model: bare } = layTrack(
      track([line('main', [straight(300)], { from: from(40, 60) })], { ground: NO_GROUND }),
    );
    expect(bare.setOut[0]).toMatchObject({ x: 40, y: 60, bench: null, diagonals: null, onDeck: false });
  });
});

describe('what to buy', () => {
  it('flexible track by stretches between turnouts, whole lengths first', () => {
    const { supplies } = layTrack(oval()).model;
    expect(supplies.stretches.map(({ line: of }) => of)).toEqual(['main', 'main', 'siding']);
    const turnout = layTrack(oval()).model.turnouts[0];
    const laid = supplies.stretches.reduce((sum, { length }) => sum + length, 0);
    expect(laid + (turnout?.leaves ?? 0) - (turnout?.enters ?? 0)).toBeCloseTo(3819.6104 + 200, 3);
    // each half turn lets the outer rail run ahead by gauge x pi
    expect(supplies.stretches[0]?.slip).toBeCloseTo(9 * Math.PI, 9);
    expect([supplies.yards.length, supplies.proved]).toEqual([5, true]);
    for (const { cuts, left } of supplies.yards)
      expect(cuts.reduce((sum, { length }) => sum + length, left)).toBeCloseTo(914.4, 6);
    expect(supplies.roadbed).toMatchObject({ stock: 'cork-3', strips: 5, sheets: 1 });
  });

  it('turns to both hands cancel what one rail runs ahead', () => {
    const bends = [curve('left', 300, 60), straight(100), curve('right', 400, 50)];
    const [stretch] = layTrack(track([line('s', bends)])).model.supplies.stretches;
    expect(stretch?.slip).toBeCloseTo((9 * 10 * Math.PI) / 180, 9);
  });

  it('four stretches of 500 from lengths of 914.4 take four, and no fewer can do though the sum would fit three', () => {
    const stretches = [1, 2, 3, 4].map((i) => ({ line: `l${i}`, from: 0, length: 500, slip: 0 }));
    expect(cutFlex(stretches, 914.4)).toHaveLength(4);
  });

  it('ready-made pieces by kind, and no flexible track for them', () => {
    const { supplies } = layTrack(
      track([line('ring', [curve('left', 457.2, 30, { times: 12 })], { ends: 'ring.start' })]),
    ).model;
    expect(supplies.stretches).toEqual([]);
    expect(supplies.sections).toEqual([
      { kind: 'curve', length: null, radius: 457.2, through: Math.PI / 6, count: 12 },
    ]);
  });

  it('nothing for lines that are built later', () => {
    const { supplies } = layTrack(track([line('later', [straight(800)], { phase: 'later' })])).model;
    expect([supplies.yards.length, supplies.pins, supplies.ballast]).toEqual([0, 0, 0]);
  });

  it('ballast by gauge', () => {
    expect([ballastPerMetre(9), ballastPerMetre(16.5), ballastPerMetre(32)]).toEqual([40, 90, 270]);
    expect(ballastPerMetre(12)).toBeGreaterThan(40);
  });
});
