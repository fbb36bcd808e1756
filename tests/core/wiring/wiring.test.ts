import { describe, expect, it } from 'vitest';
import { spoken } from '../../../src/core/units/say.ts';
import { approachFindings } from '../../../src/core/wiring/findings/units.ts';
import type { WiringInput } from '../../../src/core/wiring/input.ts';
import { spaceLength } from '../../../src/core/wiring/wire.ts';
import { type WiringModel, wiringModel } from '../../../src/core/wiring/wiring.ts';
import { table, wire } from './tables.ts';

const model = wiringModel(table);

function found(change: Partial<WiringInput>, rule: string) {
  const all = wiringModel({ ...table, ...change }).findings.filter((one) => one.rule === rule);
  return all.map(({ level, where, what, mend, figure, limit }) => ({
    level,
    where,
    figure,
    limit,
    what: spoken(what, mm),
    mend: spoken(mend, mm),
  }));
}

const mm = (length: number) => `${Math.round(length)} mm`;

describe('a table with a loop and a siding', () => {
  it('has no halt and no care', () => {
    expect(model.findings.filter(({ level }) => level !== 'note')).toEqual([]);
  });

  it('feeds each line as often as its length asks', () => {
    // cut off at 500, beyond the frog of W1, and once round to there: 2436 mm in lengths of at most 900
    expect(model.feeders.filter(({ line }) => line === 'main')).toHaveLength(3);
    expect(model.feeders.filter(({ line }) => line === 'siding')).toHaveLength(1);
  });

  it('every wire is as long as its drawn path and its slack, to half a centimetre up', () => {
    for (const { path, drawn, slack, length } of model.wires) {
      expect(drawn).toBeCloseTo(spaceLength(path), 9);
      expect(length).toBeCloseTo(drawn + slack, 9);
      expect(length % 5).toBe(0);
      expect(slack).toBeGreaterThan(0);
    }
  });

  it('labels every wire once, and both wires of a pair alike but for a letter', () => {
    const labels = model.wires.map(({ label }) => label);
    expect(new Set(labels).size).toBe(labels.length);
    const pairs = model.wires.filter(({ label }) => label.endsWith('a'));
    for (const { label, length } of pairs) {
      expect(model.wires.find((one) => one.label === label.replace('a', 'b'))?.length).toBe(length);
    }
  });

  it('gives a live frog a wire of its own', () => {
    const frogs = model.wires.filter(({ kind }) => kind === 'frog');
    expect(frogs.map(({ label, to }) => [label.slice(-1), spoken(to, mm)])).toEqual([
      ['a', 'switch at W1'],
      ['b', 'switch at W1'],
      ['f', 'frog of W1'],
    ]);
    expect(spoken(frogs[0]?.from ?? [], mm)).toMatch(/^pair \d+, the whole layout$/);
    expect(model.smallParts.map(({ name }) => name)).toContain('Changeover switch for a live frog, one pole');
  });

  it('asks a hole of every board that the bus passes, on the board, at the height of the bus', () => {
    expect(model.holes.length).toBeGreaterThan(0);
    expect(model.requests.map(({ part, kind }) => `${kind} ${part}`)).toEqual(
      model.holes.map(({ part }) => `hole ${part}`),
    );
    for (const { part, at } of model.holes) {
      expect(at[2]).toBe(model.bus?.z);
      if (part === 'strut.across') expect(at[0]).toBe(609);
      if (part === 'strut.along') expect(at[1]).toBe(409);
    }
  });

  it('runs through the middle of the struts when nothing is in the way', () => {
    expect(model.bus?.z).toBe(550);
  });

  it('loses less than 5 % and trips at once', () => {
    expect(model.districts).toHaveLength(1);
    const [rest] = model.districts;
    expect(rest?.worst?.volts).toBeGreaterThan(14.25);
    expect(rest?.worst?.volts).toBeLessThan(15);
    expect(rest?.trips).toBe(true);
  });

  it('tests every feeder and every district', () => {
    const ids = model.tests.map(({ id }) => id);
    const cuts = model.gaps.map(({ id }) => `cut.${id}`);
    expect(cuts).toHaveLength(2);
    expect(ids).toEqual([...cuts, ...model.feeders.map(({ id }) => `feeder.${id}`), 'volts.rest', 'coin.rest']);
  });

  it('says what is under each bay', () => {
    expect(model.places.map(({ bay }) => bay)).toEqual(['bay.1-1', 'bay.1-2', 'bay.2-1', 'bay.2-2']);
    expect(model.places.flatMap(({ feeders }) => feeders).toSorted()).toEqual(
      model.feeders.map(({ id }) => id).toSorted(),
    );
    expect(model.places.find(({ turnouts }) => turnouts.includes('W1'))?.bay).toBe('bay.1-1');
  });
});

describe('what is bought for a table', () => {
  const yard = [{ id: 'yard', lines: ['siding'], tripsAt: 1 }];
  const loads = [{ id: 'W1-motor', place: { kind: 'turnout', turnout: 'W1' }, amps: 0.5, kind: 'pulse' }] as const;
  const { smallParts, wires } = wiringModel({ ...table, districts: yard, loads });
  const count = (kind: string) =>
    smallParts.filter((one) => one.kind === kind).reduce((sum, { quantity }) => sum + quantity, 0);

  it('is a supply, a breaker for each district, motors, and a joint for each wire on the bus', () => {
    expect([count('supply'), count('breaker'), count('motor')]).toEqual([1, 1, 1]);
    const joined = wires.filter(({ from }) => /^(pair|T-joint)/.test(spoken(from, mm)));
    expect(count('joint')).toBe(joined.length);
  });
});

describe('a space in the way', () => {
  const drawer = { id: 'drawer', kind: 'drawer', box: { min: [20, 20, 450], max: [590, 390, 560] } } as const;

  it('sends the bus over it, clear of it', () => {
    const over = wiringModel({ ...table, ground: { ...table.ground, spaces: [drawer] } });
    expect(over.findings.filter(({ rule }) => rule === 'bus-clash' || rule === 'feeder-unreached')).toEqual([]);
    expect(over.bus?.z).toBeGreaterThan(560);
  });

  it('moves the route when it moves', () => {
    const motor = { id: 'motor', kind: 'motor', box: { min: [300, 200, 520], max: [420, 300, 600] } } as const;
    const moved = { ...motor, box: { min: [560, 450, 520], max: [590, 550, 600] } } as const;
    const runs = [motor, moved].map((space) => wiringModel({ ...table, ground: { ...table.ground, spaces: [space] } }));
    expect(runs[0]?.bus?.path).not.toEqual(model.bus?.path);
    expect(runs[0]?.bus?.path).not.toEqual(runs[1]?.bus?.path);
    for (const { findings } of runs) expect(findings.filter(({ rule }) => rule === 'bus-clash')).toEqual([]);
  });

  it('that keeps the bus off a feeder makes its tail long, and says by how much', () => {
    const wide = { id: 'drawer', kind: 'drawer', box: { min: [150, 20, 400], max: [590, 390, 595] } } as const;
    const at = found(
      { ground: { ...table.ground, spaces: [wide] }, feeders: { stock: wire('thin-0.5', 0.5, 1), every: 60 } },
      'tail-long',
    );
    expect(at.length).toBeGreaterThan(0);
    for (const { level, figure, limit, mend } of at) {
      expect([level, limit]).toEqual(['care', 300]);
      expect(mend).toContain(mm((figure ?? 0) - 300));
    }
  });

  const full = { id: 'cupboard', kind: 'drawer', box: { min: [600, 0, 400], max: [1218, 818, 600] } } as const;
  const shut = { ...table.ground, spaces: [full] };

  it('that fills bays sends the feeders to clear ones', () => {
    const { feeders, findings } = wiringModel({ ...table, ground: shut });
    expect(feeders.filter(({ down }) => down[0] > 600)).toEqual([]);
    expect(findings.filter(({ level }) => level === 'halt')).toEqual([]);
  });

  it('that shuts a load in is a halt that names it', () => {
    const loads = [{ id: 'lamp', place: { kind: 'place', at: [1000, 300] }, amps: 0.1, kind: 'steady' }] as const;
    expect(found({ loads, ground: shut }, 'feeder-unreached')).toMatchObject([{ level: 'halt', where: 'lamp' }]);
  });
});

describe('a written route', () => {
  const bus = (route: readonly (readonly [number, number])[]) => ({
    bus: { stock: wire('bus-2.5', 2.5, 6), from: [100, 100] as const, route },
  });

  it('through the side of a strut is a clash, square to it is a hole', () => {
    expect(
      found(
        bus([
          [609, 100],
          [609, 300],
        ]),
        'bus-clash',
      ).map(({ where }) => where),
    ).toContain('strut.across');
    expect(
      wiringModel({
        ...table,
        ...bus([
          [1000, 100],
          [1000, 700],
          [300, 700],
        ]),
      }).holes.map(({ part }) => part),
    ).toEqual(['strut.across', 'strut.along', 'strut.across']);
  });

  it('that comes back to its start is a ring, for a digital signal only', () => {
    const ring = bus([
      [1000, 100],
      [1000, 700],
      [100, 700],
      [100, 100],
    ]);
    expect(found(ring, 'bus-ring')).toMatchObject([{ level: 'care', where: 'bus' }]);
    expect(found({ ...ring, supply: { control: 'dc', volts: 12, tripsAt: 2 } }, 'bus-ring')).toEqual([]);
  });

  it('with branches is the very bus that was found, when written as found', () => {
    const auto = wiringModel(table);
    const flat = (path: readonly (readonly [number, number, number])[]) => path.map(([x, y]) => [x, y] as const);
    const [from = [0, 0], ...route] = flat(auto.bus?.path ?? []);
    const branches = (auto.bus?.branches ?? []).map(flat);
    expect(branches.length).toBeGreaterThan(0);
    const stock = wire('bus-2.5', 2.5, 6);
    const told = ({ holes, wires }: WiringModel) => ({
      wires: wires.map(({ label, length, on }) => [label, length, on]),
      holes: holes.map(({ at, diameter, part }) => [part, diameter, ...at.map((mm) => Math.round(mm * 1000))]),
    });
    const as = (those: typeof branches) => wiringModel({ ...table, bus: { stock, from, route, branches: those } });
    expect(told(as(branches))).toEqual(told(auto));
    // planted fault: one branch forgotten
    expect(told(as(branches.slice(1)))).not.toEqual(told(auto));
  });

  it('with a branch that begins beside it is a halt with the place on it, and the branch is left out', () => {
    const beside = { bus: { ...bus([[1000, 100]]).bus, branches: [[[500, 140] as const, [500, 300] as const]] } };
    expect(found(beside, 'branch-off-bus')).toMatchObject([{ level: 'halt', where: 'bus', figure: 40 }]);
    expect(found(beside, 'branch-off-bus')[0]?.mend).toContain('[500 mm, 100 mm]');
    expect(wiringModel({ ...table, ...beside }).bus?.branches).toEqual([]);
    const on = { bus: { ...bus([[1000, 100]]).bus, branches: [[[500, 100] as const, [500, 300] as const]] } };
    expect(found(on, 'branch-off-bus')).toEqual([]);
    expect(wiringModel({ ...table, ...on }).bus?.branches.map((path) => path.map(([x, y]) => [x, y]))).toEqual([
      [
        [500, 100],
        [500, 300],
      ],
    ]);
  });

  it('with a branch that comes back to it is a ring, for a digital signal only', () => {
    const back = [[[500, 100] as const, [500, 300] as const, [800, 300] as const, [800, 100] as const]];
    const ring = { bus: { ...bus([[1000, 100]]).bus, branches: back } };
    expect(found(ring, 'bus-ring')).toMatchObject([{ level: 'care', where: 'bus' }]);
    expect(found({ ...ring, supply: { control: 'dc', volts: 12, tripsAt: 2 } }, 'bus-ring')).toEqual([]);
    const open = { bus: { ...ring.bus, branches: back.map((one) => one.slice(0, -1)) } };
    expect(found(open, 'bus-ring')).toEqual([]);
  });

  it('that passes no feeder is told line by line', () => {
    const short = { ...bus([[300, 100]]) };
    expect(found(short, 'feeder-unreached').map(({ where }) => where)).toContain('main');
  });
});

describe('a load over a board', () => {
  const at = (x: number, y: number) => ({
    loads: [{ id: 'lamp', place: { kind: 'place', at: [x, y] }, amps: 0.1, kind: 'steady' }] as const,
  });

  it('is told with the board and the nearest place beside it, where its wires go down', () => {
    const [told] = found(at(609, 250), 'load-over-board');
    expect(told).toMatchObject({ level: 'care', where: 'lamp' });
    expect(told?.what).toContain('strut.across');
    const lamp = wiringModel({ ...table, ...at(609, 250) }).wires.find(({ id }) => id === 'lamp-a');
    const down = lamp?.path.at(-2);
    expect(told?.mend).toContain(`[${down?.[0]} mm, ${Math.round((down?.[1] ?? 0) * 10) / 10} mm]`);
    expect(Math.abs((down?.[0] ?? 0) - 609)).toBeGreaterThan(9);
  });

  it('planted fault: moved off it, nothing is told', () => {
    expect(found(at(800, 250), 'load-over-board')).toEqual([]);
  });
});

describe('a bridge that lifts', () => {
  const lifts = [{ id: 'draw', line: 'main', from: 100, to: 300 }];
  const water = (x: number) => ({
    ground: {
      ...table.ground,
      spaces: [{ id: 'pond', kind: 'water', box: { min: [x, 0, 0], max: [x + 60, 900, 700] } }] as const,
    },
  });

  it('over nothing but the deck is told, with the nearest way through', () => {
    const place = table.rails.lines[0]?.place(200) ?? [0, 0];
    expect(found({ lifts }, 'lift-over-nothing')).toMatchObject([{ level: 'care', where: 'draw', figure: null }]);
    expect(found({ lifts, ...water(place[0] - 30) }, 'lift-over-nothing')).toEqual([]);
    const off = table.rails.lines[0]?.place(500) ?? [0, 0];
    const [told] = found({ lifts, ...water(off[0] - 30) }, 'lift-over-nothing');
    expect(Math.abs((told?.figure ?? 0) - 500)).toBeLessThan(80);
  });
});

describe('rails without a feeder', () => {
  it('are a halt for each length between cuts, with the place to feed it', () => {
    const unfed = found({ feeders: null }, 'rail-unfed');
    expect(unfed.map(({ level, where }) => `${level} ${where}`)).toEqual(['halt main', 'halt main', 'halt siding']);
    expect(unfed[0]?.mend).toContain('200 mm');
  });
});

describe('bad figures', () => {
  it('a supply that gives nothing is a halt, and nothing else is said of it', () => {
    expect(found({ supply: { control: 'digital', volts: 0, tripsAt: 3 } }, 'supply-missing')).toMatchObject([
      { level: 'halt', where: 'supply', figure: 0 },
    ]);
  });

  it('mains on the rails is a halt', () => {
    expect(found({ supply: { control: 'digital', volts: 230, tripsAt: 3 } }, 'supply-not-extra-low')).toMatchObject([
      { level: 'halt', limit: 50 },
    ]);
    expect(found({ supply: { control: 'digital', volts: 18, tripsAt: 8 } }, 'supply-above-class-2')).toMatchObject([
      { level: 'care', figure: 144 },
    ]);
  });

  it('steady loads beyond the trip current are an overload', () => {
    const loads = [{ id: 'street', place: { kind: 'place', at: [300, 300] }, amps: 4, kind: 'steady' }] as const;
    expect(found({ loads }, 'overload').map(({ where, figure }) => [where, figure])).toEqual([
      ['rest', 4],
      ['supply', 4],
    ]);
  });

  it('a wire without resistance is a halt', () => {
    const magic = { ...wire('magic', 2.5, 6), ohmPerMetre: 0 };
    expect(found({ bus: { stock: magic, from: [100, 100], route: null } }, 'wire-resists-nothing')).toMatchObject([
      { level: 'halt', where: 'magic' },
    ]);
  });

  it('too thin a bus is a care with the size that mends it', () => {
    const thin = found({ bus: { stock: wire('hair', 0.05, 6), from: [100, 100], route: null } }, 'volts-low');
    expect(thin).toMatchObject([{ level: 'care', where: 'rest' }]);
    const size = /Take (\S+) /.exec(thin[0]?.mend ?? '')?.[1];
    const mended = table.wires.find(({ id }) => id === size);
    expect(mended).toBeDefined();
    if (mended !== undefined)
      expect(found({ bus: { stock: mended, from: [100, 100], route: null } }, 'volts-low')).toEqual([]);
    const smaller = table.wires.filter(({ area }) => area > 0.05 && area < (mended?.area ?? 0));
    const wrong = ['volts-low', 'wire-thin-for-trip', 'short-does-not-trip'];
    for (const stock of smaller) {
      const bus = { stock, from: [100, 100] as const, route: null };
      expect(wiringModel({ ...table, bus }).findings.filter(({ rule }) => wrong.includes(rule))).toHaveLength(1);
    }
  });

  it('a short that would not trip is a halt that says where', () => {
    const [finding] = found({ rail: { ohmPerMetre: 12, assumed: false } }, 'short-does-not-trip');
    expect(finding).toMatchObject({ level: 'halt', where: 'rest', limit: 2.5 });
    expect(finding?.figure).toBeGreaterThan(2.5);
    expect(finding?.mend).toContain('trip at');
  });

  it('a wire thinner than what its breaker lets through is a care', () => {
    expect(
      found({ bus: { stock: wire('bus-2.5', 2.5, 2), from: [100, 100], route: null } }, 'wire-thin-for-trip'),
    ).toMatchObject([{ level: 'care', figure: 2, limit: 3 }]);
  });

  it('no wire in stock for what a breaker lets through is mended by a lower trip', () => {
    const strong = { supply: { control: 'digital', volts: 15, tripsAt: 40 } } as const;
    const [told] = found(strong, 'wire-thin-for-trip');
    expect(told?.level).toBe('halt');
    expect(told?.mend).toContain('No wire in stock is thick enough');
    expect(told?.mend).toMatch(/let the whole layout trip at \d+ A/);
  });

  it('a hair behind a breaker that lets more through than it bears is one halt with one mend that cures all', () => {
    const hair = { bus: { stock: wire('hair', 0.05, 0.5), from: [100, 100] as const, route: null } };
    const told = wiringModel({ ...table, ...hair }).findings.filter(({ level }) => level !== 'note');
    expect(told.map(({ rule, level, where }) => [rule, level, where])).toEqual([
      ['wire-thin-for-trip', 'halt', 'rest'],
    ]);
    const mend = spoken(told[0]?.mend ?? [], mm);
    expect(spoken(told[0]?.what ?? [], mm)).toContain('of 15 V');
    const bus = /(\S+) \([^)]*\) for the bus/.exec(mend)?.[1];
    const stock = table.wires.find(({ id }) => id === bus);
    if (stock === undefined) throw new Error(`no wire in: ${mend}`);
    const mended = wiringModel({ ...table, bus: { ...hair.bus, stock } }).findings;
    expect(mended.filter(({ level }) => level !== 'note')).toEqual([]);
  });
});

describe('districts', () => {
  const two = [{ id: 'yard', lines: ['siding'], tripsAt: 1 }];

  it('get cuts where they meet, a breaker and a pair each', () => {
    const parted = wiringModel({ ...table, districts: two });
    expect(parted.gaps.filter(({ why }) => why !== 'frog')).toMatchObject([
      { line: 'siding', at: 0, why: 'district', rails: 'both' },
    ]);
    expect(parted.districts.map(({ id }) => id)).toEqual(['yard', 'rest']);
    const begun = parted.wires.filter(({ kind, from }) => kind === 'bus' && spoken(from, mm) === 'supply');
    expect(begun.map(({ id }) => id)).toEqual(['bus-yard-a', 'bus-yard-b', 'bus-rest-a', 'bus-rest-b']);
  });

  it('joined without a cut are a halt at the place', () => {
    expect(found({ districts: two, gaps: [] }, 'districts-joined')).toMatchObject([
      { level: 'halt', where: 'siding', figure: 0 },
    ]);
    expect(found({ districts: two, gaps: [{ line: 'siding', at: 12 }] }, 'districts-joined')).toEqual([]);
  });

  it('that share a line are a halt', () => {
    expect(
      found({ districts: [...two, { id: 'other', lines: ['siding'], tripsAt: 1 }] }, 'line-in-two-districts'),
    ).toMatchObject([{ level: 'halt', where: 'siding' }]);
  });
});

describe('direct current', () => {
  const dc = { control: 'dc', volts: 12, tripsAt: 2 } as const;

  it('in one block moves every train at once, in two it does not', () => {
    expect(found({ supply: dc }, 'one-block')).toMatchObject([{ level: 'note' }]);
    expect(found({ supply: dc, districts: [{ id: 'yard', lines: ['siding'], tripsAt: 1 }] }, 'one-block')).toEqual([]);
    expect(found({}, 'one-block')).toEqual([]);
  });

  it('has the colours its author has wire of', () => {
    const stock = { ...wire('bus-2.5', 2.5, 6), colours: ['blue', 'white'] as const };
    const own = wiringModel({ ...table, bus: { stock, from: [100, 100], route: null } });
    const [first, second] = own.wires.filter(({ kind }) => kind === 'bus').map(({ colour }) => colour);
    expect([first, second]).toEqual(['blue', 'white']);
    const thin = own.wires.filter(({ kind }) => kind === 'feeder').map(({ colour }) => colour);
    expect(thin.slice(0, 2)).toEqual(['red', 'black']);
  });

  it('has wires in red and black', () => {
    const { wires } = wiringModel({ ...table, supply: dc });
    const [first, second] = wires.filter(({ kind }) => kind === 'bus').map(({ colour }) => colour);
    expect([first, second]).toEqual(['red', 'black']);
  });
});

describe('a lift bridge', () => {
  const lifted = wiringModel({ ...table, lifts: [{ id: 'bridge', line: 'main', from: 1300, to: 1500 }] });

  it('is cut at both ends and at both dead approaches', () => {
    expect(lifted.gaps.filter(({ why }) => why !== 'frog').map(({ at, why }) => [at, why])).toEqual([
      [1050, 'approach'],
      [1300, 'bridge'],
      [1500, 'bridge'],
      [1750, 'approach'],
    ]);
  });

  it('has a lead to its span and its approaches through a switch', () => {
    const leads = lifted.wires.filter(({ kind }) => kind === 'lead');
    expect(leads).toHaveLength(2);
    // 30 before the span, then along the line to its middle at 1400, on the deck
    const onDeck = (leads[0]?.path ?? []).filter(([, , z]) => z === 609);
    expect(spaceLength(onDeck)).toBeCloseTo(130, 6);
    expect(onDeck.length).toBeGreaterThan(3);
    const switched = lifted.wires.filter(({ kind, net }) => kind === 'feeder' && net === 'switch-bridge');
    expect(switched).toHaveLength(4);
    const [unit, ...more] = lifted.units;
    expect([unit?.kind, unit?.of, unit?.from, more]).toEqual(['bridge-switch', 'bridge', 'rest', []]);
    // beyond the end of the span that comes down on it: main at 1530
    expect(Math.hypot((unit?.place[0] ?? 0) - 706, (unit?.place[1] ?? 0) - 600)).toBeLessThan(60);
    // planted fault: one approach joined to the bus past the switch
    expect(approachFindings(lifted)).toEqual([]);
    const fed = lifted.feeders.find(({ net }) => net === 'switch-bridge')?.id ?? '';
    const wires = lifted.wires.map((one) => (one.id.startsWith(`${fed}-`) ? { ...one, net: 'rest' } : one));
    expect(approachFindings({ ...lifted, wires })).toMatchObject([
      { rule: 'approach-always-live', level: 'halt', where: 'main', figure: 2, limit: 0 },
    ]);
    const own = lifted.wires.filter(({ kind }) => kind === 'unit').map(({ id }) => id);
    expect(own).toEqual(['switch-bridge-in-a', 'switch-bridge-in-b', 'switch-bridge-out-a', 'switch-bridge-out-b']);
    expect(lifted.findings.filter(({ level }) => level === 'halt')).toEqual([]);
  });
});

describe('a notebook in inches', () => {
  const inches = wiringModel({ ...table, show: 'in' });

  it('has its wires cut to whole quarters and its holes drilled in sixteenths', () => {
    const off = (mm: number, step: number) => Math.abs(mm / step - Math.round(mm / step));
    for (const { drawn, length } of inches.wires) {
      expect(off(length, 25.4 / 4)).toBeLessThan(1e-9);
      expect(length).toBeGreaterThan(drawn);
    }
    for (const { diameter } of inches.holes) expect(off(diameter, 25.4 / 16)).toBeLessThan(1e-9);
    expect(inches.smallParts.filter(({ name }) => / mm\b/.test(name))).toEqual([]);
  });

  it('says every length as a length, so that no sentence has millimetres in its words', () => {
    const words = [
      ...inches.wires.flatMap(({ from, to }) => [from, to]),
      ...inches.tests.flatMap(({ what, expect: seen }) => [what, seen]),
    ];
    const found = inches.findings.flatMap(({ mend, what }) => [what, mend]);
    const baked = [...words, ...found].flat().filter((word) => typeof word === 'string' && /\d ?mm\b/.test(word));
    expect(baked).toEqual([]);
  });
});
