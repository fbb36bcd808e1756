import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frame } from '../../src/core/benchwork/frame.ts';
import type { BenchworkInput } from '../../src/core/benchwork/input.ts';
import type { Finding } from '../../src/core/finding.ts';
import { length, say } from '../../src/core/units/say.ts';
import { CASTER, DRAWERS, fittedTable, GOODS, POSTS, SHELVES } from '../core/benchwork/fitted.ts';

const RUNS = 3000;
const IN = 25.4;

/** A length as one writes it: whole millimetres, or sixteenths of an inch. */
const sized = (least: number, most: number) =>
  fc.oneof(
    fc.integer({ min: Math.ceil(least), max: Math.floor(most) }),
    fc.integer({ min: Math.ceil((least / IN) * 16), max: Math.floor((most / IN) * 16) }).map((n) => (n / 16) * IN),
  );
const maybe = (least: number, most: number) => fc.option(sized(least, most), { nil: null });

/** Tables whose sizes may lie far beside what can be built. */
const wild: fc.Arbitrary<BenchworkInput> = fc
  .record({
    size: fc.record({
      length: sized(300, 2600),
      width: sized(250, 1500),
      height: sized(150, 1300),
      side: sized(40, 400),
      shallow: sized(0, 200),
    }),
    across: fc.integer({ min: 0, max: 6 }),
    along: fc.integer({ min: 0, max: 3 }),
    strips: maybe(40, 120),
    overhang: sized(0, 60),
    drawers: fc.record({
      side: fc.constantFrom('front', 'back', 'left', 'right'),
      bays: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 2 }),
      slide: fc.constantFrom(254, 250, 350, 406.4, 450, 700),
      clearance: sized(1, 40),
      faces: fc.constantFrom('cut-out', 'overlaid'),
      bit: sized(3, 30),
      corners: fc.constantFrom('rabbet', 'dado'),
      opening: maybe(5, 450),
      ligament: maybe(1, 200),
      gaps: fc.option(fc.record({ under: maybe(1, 80), liftOut: maybe(1, 80), overlap: maybe(1, 80) }), { nil: null }),
    }),
    legs: fc.record({
      form: fc.constantFrom('post', 'angle', 'trestle'),
      layers: fc.integer({ min: 1, max: 8 }),
      width: maybe(15, 400),
      footWidth: maybe(10, 300),
      stand: fc.constantFrom('caster', 'foot', 'floor'),
      tall: sized(20, 400),
      swivel: sized(20, 400),
      plate: sized(20, 150),
    }),
    below: maybe(1, 400),
    show: fc.constantFrom('mm', 'in'),
    poor: fc.boolean(),
  })
  .map(({ size, across, along, strips, overhang, drawers, legs, below, show, poor }) => {
    const { shallow, ...plan } = size;
    const side = Math.min(size.side, size.height - 10);
    const asked = drawers.gaps;
    const overlap = drawers.faces === 'overlaid' ? (asked?.overlap ?? null) : null;
    const gaps = asked === null ? {} : { gaps: { ...asked, overlap } };
    const [columns, rows] = [across + 1, along + 1];
    const most = drawers.side === 'front' || drawers.side === 'back' ? columns : rows;
    const bays = [...new Set(drawers.bays.map((bay) => Math.min(bay, most)))];
    const wide = legs.form === 'post' ? legs.width : (legs.width ?? 100);
    const footWidth = legs.footWidth === null || wide === null ? null : Math.min(legs.footWidth, wide);
    const caster = {
      ...CASTER,
      overallHeight: legs.tall,
      swivelRadius: legs.swivel,
      plate: [legs.plate, legs.plate] as const,
      locks: poor,
    };
    const foot = GOODS.hardware.find(({ form }) => form === 'foot');
    const stand =
      legs.stand === 'foot' && foot !== undefined
        ? ({ kind: 'foot', foot, travel: 20, height: legs.tall } as const)
        : legs.stand === 'caster'
          ? ({ kind: 'caster', caster, free: null } as const)
          : ({ kind: 'floor' } as const);
    const plain = fittedTable({
      struts: { along: { kind: 'even', count: along }, across: { kind: 'even', count: across } },
      flangeStrips: strips,
      deck: { overhang, flush: 'front-left', seams: [] },
      drawers: [
        {
          ...DRAWERS,
          ...{ side: drawers.side, bays, faces: drawers.faces, bit: drawers.bit },
          ...{ corners: drawers.corners, opening: drawers.opening, ligament: drawers.ligament },
          slides: { length: drawers.slide, clearance: drawers.clearance },
          ...gaps,
        },
      ],
      shelves: [{ ...SHELVES, bays: [1], below }],
      legs: {
        ...{ ...POSTS, form: legs.form, layers: legs.form === 'post' ? Math.min(6, legs.layers) : 1 },
        ...{ width: wide, footWidth, stand },
      },
    });
    const hardware = poor ? GOODS.hardware.filter(({ form }) => form === 'slide') : GOODS.hardware;
    return {
      ...plain,
      dimensions: { ...plain.dimensions, ...plan, side, strut: Math.max(10, side - shallow) },
      goods: { ...GOODS, hardware, show },
    };
  });

/** What is told as no size can be: lengths, figures and limits under nothing, or no number at all. */
function nonsense({ rule, what, mend, figure, limit }: Finding): readonly string[] {
  const lengths = [...what, ...mend].flatMap((said) => (typeof said === 'string' ? [] : [said.length]));
  const numbers = [...lengths, ...[figure, limit].filter((one) => one !== null)];
  const words = [...what, ...mend].filter((said) => typeof said === 'string').join('_');
  const wrong = numbers.some((one) => !Number.isFinite(one) || one < 0) || oddWords(words);
  const told = [...what, ' | ', ...mend].map((said) => (typeof said === 'string' ? said : said.length.toFixed(2)));
  return wrong ? [`${rule} (${figure} ${limit}): ${told.join('')}`] : [];
}

/** Faults tell lengths in words, in both units. */
const oddWords = (text: string) => /(?:^|[\s_(])-\d|NaN|Infinity|undefined/.test(text);

describe(`findings of ${RUNS} tables of any size`, () => {
  const rules: Record<string, number> = {};
  const first = new Map<string, string>();
  for (const input of fc.sample(wild, { numRuns: RUNS, seed: 20261127 })) {
    const made = frame(input);
    if (!made.ok) {
      rules.faults = (rules.faults ?? 0) + 1;
      for (const { rule } of made.faults) rules[`fault ${rule}`] = (rules[`fault ${rule}`] ?? 0) + 1;
      for (const { what, mend } of made.faults)
        if (oddWords(what) || oddWords(mend)) first.set(what, `${what} | ${mend}`);
      continue;
    }
    for (const finding of made.value.findings) {
      rules[finding.rule] = (rules[finding.rule] ?? 0) + 1;
      for (const odd of nonsense(finding)) if (!first.has(finding.rule)) first.set(finding.rule, odd);
    }
  }

  it('come up in enough kinds', () => {
    const kinds = Object.entries(rules).map(([rule, count]) => `${rule} ${count}`);
    console.log(kinds.join(', '));
    expect(kinds.length).toBeGreaterThan(25);
  });

  it('tell no size under nothing and no figure that is none', () => {
    expect([...first.values()]).toEqual([]);
  });

  it('planted fault: a negative length, figure or word is seen', () => {
    const plain: Finding = {
      ...{
        rule: 'planted',
        level: 'halt',
        where: 'table',
        chapter: 'benchwork',
        unit: 'mm',
        source: '',
        accepted: null,
      },
      ...{ what: say`${length(1)}`, mend: say`take ${length(0)}`, figure: 1, limit: 0 },
    };
    expect(nonsense(plain)).toEqual([]);
    expect(nonsense({ ...plain, what: say`${length(-1)} above` })).toHaveLength(1);
    expect(nonsense({ ...plain, mend: ['at most -1'] })).toHaveLength(1);
    expect(nonsense({ ...plain, figure: -0.1 })).toHaveLength(1);
    expect(nonsense({ ...plain, limit: Number.NaN })).toHaveLength(1);
    expect(oddWords('takes -3 mm')).toBe(true);
  });
});
