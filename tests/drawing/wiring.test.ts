import { describe, expect, it } from 'vitest';
import { compute, type Notebook } from '../../src/core/notebook.ts';
import { benchWalls } from '../../src/core/wiring/bench-bays.ts';
import { bayName } from '../../src/core/wiring/routing/bays.ts';
import type { WiringModel } from '../../src/core/wiring/wiring.ts';
import { baysOf } from '../../src/drawing/bays/bay.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import type { Mark } from '../../src/drawing/mark.ts';
import { type PaperName, papers } from '../../src/drawing/paper.ts';
import { lettering, textBox, textWidth } from '../../src/drawing/text.ts';
import { bayPicture, clippedPath } from '../../src/drawing/wiring/bay-blocks.ts';
import { type Bundle, bundlesOf } from '../../src/drawing/wiring/bundles.ts';
import { mirrored } from '../../src/drawing/wiring/mirrored.ts';
import { netRow, oneLineBlocks, type Row, supplyRow } from '../../src/drawing/wiring/one-line.ts';
import { spaceName } from '../../src/drawing/wiring/space-name.ts';
import { voltageBlocks } from '../../src/drawing/wiring/voltage-graph.ts';
import { holeTable } from '../../src/drawing/wiring/wire-notes.ts';
import { wiringEntries } from '../../src/drawing/wiring/wiring-drawings.ts';
import { picture, wiresFromBelow } from '../../src/drawing/wiring/wiring-plan.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { complaints } from './checker.ts';

function wiringOf({ wiring: own }: Notebook): WiringModel {
  if (own === null) throw new Error('the demo notebook has no wiring');
  return own;
}

const content = readContent(await loadWithShipped('content', 'content'));
const plan = content.plans.find(({ slug }) => slug === 'bittern-basin');
const answer = plan === undefined ? null : compute(plan);
if (answer === null || !answer.ok) throw new Error('the demo notebook does not compute');
const book = answer.value;
const wiring = wiringOf(book);
const options = { unit: 'mm', paper: 'A3' } as const;
const above = picture({ book, wiring, options, scale: 10 });
const below = mirrored(above);

/** A mark's points or, for words, the middle of their box, as numbers in a fixed order. */
function places(mark: Mark): readonly (readonly [number, number])[] {
  switch (mark.kind) {
    case 'line':
      return [mark.from, mark.to];
    case 'polyline':
      return mark.points;
    case 'polygon':
      return mark.rings.flat();
    case 'circle':
    case 'arc':
      return [mark.centre];
    case 'text': {
      const { x0, x1, y0, y1 } = textBox(mark);
      return [[(x0 + x1) / 2, (y0 + y1) / 2]];
    }
  }
}

function unlike(marks: readonly Mark[]): readonly string[] {
  return above.marks.flatMap((mark, i) => {
    const other = marks[i];
    if (other === undefined || other.kind !== mark.kind) return [`${i}: another kind`];
    const [here, there] = [places(mark), places(other)];
    const same =
      here.length === there.length &&
      here.every(([x, y], k) => Math.abs(x + (there[k]?.[0] ?? Number.NaN)) < 1e-9 && y === there[k]?.[1]);
    const words = mark.kind !== 'text' || (other.kind === 'text' && other.text === mark.text);
    return same && words ? [] : [`${i}: a ${mark.role} ${mark.kind} is not mirrored`];
  });
}

describe('the wires from below', () => {
  it('are the exact mirror of the wires from above, their words readable', () => {
    expect(above.marks.length).toBeGreaterThan(50);
    expect(unlike(below.marks)).toEqual([]);
  });

  it('planted fault: one wire left as it was is seen', () => {
    const wire = above.marks.findIndex(({ kind, role }) => kind === 'polyline' && role === 'feature');
    expect(unlike(below.marks.map((mark, i) => (i === wire ? (above.marks[i] ?? mark) : mark)))).toHaveLength(1);
  });

  it('mirrored twice are the wires from above', () => {
    expect(unlike(mirrored(mirrored(above)).marks.map((mark) => mark))).not.toEqual([]);
    expect(mirrored(below).marks).toEqual(above.marks);
  });
});

describe('drawings of the wiring', () => {
  const ids = wiringEntries(book).map(({ id }) => id);

  it('are five, and none for a notebook without wires', () => {
    expect(ids).toEqual(['wiring.above', 'wiring.below', 'wiring.bays', 'wiring.one-line', 'wiring.voltage']);
    expect(wiringEntries({ ...book, wiring: null })).toEqual([]);
  });

  for (const id of ids) {
    it(`${id} has nothing crossed, clipped or overlapping on any paper, in either unit`, () => {
      const names = Object.keys(papers).filter((name): name is PaperName => name in papers);
      const found = names.flatMap((paper) =>
        (['mm', 'in'] as const).flatMap((unit) => complaints(layOutDrawing(book, id, { unit, paper }), paper)),
      );
      expect(found).toEqual([]);
    });
  }

  const anywhere = (id: string, paper: PaperName, unit: 'mm' | 'in') =>
    layOutDrawing(book, id, { unit, paper }).sheets.flatMap(({ own }) => textsOf(own));
  const wanted = [
    ...new Set(wiring.wires.map(({ label }) => label.replace(/[a-z]$/, ''))),
    ...wiring.holes.map(({ id }) => id.replace('hole-', 'H')),
    ...wiring.gaps.map(({ id }) => id.replace('gap-', 'G')),
    ...wiring.units.map((_, i) => `U${i + 1}`),
    'supply',
    'front',
  ];

  it('name every pair, hole, cut and unit, the supply, the front and the bays, on every paper', () => {
    for (const id of ['wiring.above', 'wiring.below'])
      for (const paper of Object.keys(papers).filter((name): name is PaperName => name in papers))
        for (const unit of ['mm', 'in'] as const) {
          const [sheet] = layOutDrawing(book, id, { unit, paper }).sheets;
          const words = textsOf(sheet?.own ?? []);
          expect(words.flatMap((text) => text.split(', '))).toEqual(expect.arrayContaining(wanted));
          expect(words).toEqual(expect.arrayContaining(wiring.places.map(({ bay }) => bayName(bay))));
        }
  });

  it('say what they had no room to name', () => {
    const small = wiresFromBelow({ book, wiring, options, scale: 100 }).marks;
    const lost = /No room at this scale for (.*): see/.exec(textsOf(small).join(' '))?.[1]?.split('; ') ?? [];
    expect(lost.length).toBeGreaterThan(0);
    const named = textsOf(small).flatMap((text) => text.split(', '));
    expect([...named, ...lost.flatMap((text) => text.split(', '))]).toEqual(expect.arrayContaining(wanted));
    expect(textsOf(wiresFromBelow({ book, wiring, options, scale: 10 }).marks).join(' ')).not.toContain('No room');
  });

  it('name what takes up space under a bay by its kind, not by another count of the bays', () => {
    const counted = (name: string) => /(?:front|back|left|right)[ -]\d|\.\w/.test(name);
    const ids = wiring.places.flatMap(({ spaces }) => spaces);
    expect(ids.map(spaceName).filter(counted)).toEqual([]);
    // planted fault: the ids themselves
    expect(ids.filter(counted).length).toBeGreaterThan(3);
  });

  it('name the bays alike on every drawing, page and plan', () => {
    const bays = baysOf(book).flatMap(({ bays: own }) => own);
    expect(wiring.places.map(({ bay }) => bay)).toEqual(expect.arrayContaining(bays));
    const words = anywhere('wiring.bays', 'A4', 'mm');
    const headed = words.filter((text) => /^Bay \d/.test(text));
    expect(headed.length).toBeGreaterThan(3);
    expect(wiring.places.map(({ bay }) => bayName(bay))).toEqual(expect.arrayContaining(headed));
  });

  it('say no machine name of a board: what is written on the wood instead', () => {
    const ids = book.parts.flatMap(({ places }) => places.map(({ id }) => id)).filter((id) => id.includes('.'));
    const slips = (texts: readonly string[]) => texts.filter((text) => ids.some((id) => text.includes(id)));
    for (const id of wiringEntries(book).map((one) => one.id)) expect(slips(anywhere(id, 'A4', 'mm'))).toEqual([]);
    // planted fault: the id of a strut in a note
    expect(slips([`H1 in ${wiring.holes[0]?.part ?? ''}`])).toHaveLength(1);
  });
});

function textsOf(marks: readonly Mark[]): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

/** Labels on one line of paper with less than a wide space between them: `1` beside `12` reads as 112. */
function readTogether(marks: readonly Mark[]): readonly string[] {
  const labels = marks.flatMap((mark) => (mark.kind === 'text' && mark.role === 'label' ? [mark] : []));
  return labels.flatMap((one, i) =>
    labels.slice(i + 1).flatMap((other) => {
      const [a, b] = [textBox(one), textBox(other)];
      const level = Math.abs(one.at[1] - other.at[1]) < one.size;
      const apart = Math.max(a.x0, b.x0) - Math.min(a.x1, b.x1);
      return level && apart < 1.5 ? [`${one.text} and ${other.text}`] : [];
    }),
  );
}

describe('numbers on the wires', () => {
  const drawn = [picture, wiresFromBelow].flatMap((draw) =>
    [5, 10, 20].map((scale) => draw({ book, wiring, options, scale }).marks),
  );
  const bayed = wiring.places.map((place) => bayPicture({ book, wiring, options, scale: 10 }, place).marks);

  it('never read together', () => {
    for (const marks of [...drawn, ...bayed]) expect(readTogether(marks)).toEqual([]);
  });

  it('planted fault: 1 pushed against 12 is seen', () => {
    const at = (text: string, x: number) => lettering(text, [x, 0], { role: 'label', weight: 'bold' });
    expect(readTogether([at('1', 0), at('12', textWidth('1', 2.5, 'bold') + 0.8)])).toEqual(['1 and 12']);
  });

  /** Pairs of the bus whose path passes a point, sampled every half millimetre. */
  function passing([x, y]: readonly [number, number]): readonly string[] {
    const near = wiring.wires.filter(({ kind, label, path }) => {
      if (kind !== 'bus' || label.endsWith('b')) return false;
      return path.slice(1).some((to, i) => {
        const from = path[i] ?? to;
        const steps = Math.ceil(2 * Math.hypot(to[0] - from[0], to[1] - from[1]));
        return Array.from({ length: steps + 1 }, (_, k) => k / steps).some(
          (t) => Math.hypot(from[0] + (to[0] - from[0]) * t - x, from[1] + (to[1] - from[1]) * t - y) < 0.6,
        );
      });
    });
    return near.map(({ label }) => label.replace(/a$/, '')).toSorted();
  }

  function misnamed(bundles: readonly Bundle[]): readonly string[] {
    return bundles.flatMap(({ numbers, straights }) =>
      straights.flatMap(([[ax, ay], [bx, by]]) => {
        const there = passing([(ax + bx) / 2, (ay + by) / 2]);
        return JSON.stringify(there) === JSON.stringify(numbers.toSorted()) ? [] : [`${numbers} but ${there}`];
      }),
    );
  }

  it('along the bus are those of all pairs that run there', () => {
    const bundles = bundlesOf(wiring);
    expect(bundles.length).toBeGreaterThan(5);
    expect(misnamed(bundles)).toEqual([]);
    // planted fault: one pair left out
    const full = bundles.findIndex(({ numbers }) => numbers.length > 2);
    expect(
      misnamed(bundles.map((one, i) => (i === full ? { ...one, numbers: one.numbers.slice(1) } : one))),
    ).not.toEqual([]);
  });
});

describe('holes on the wiring sheets', () => {
  type Hole = (typeof wiring.holes)[number];

  /** Holes that the table puts elsewhere than the board's own part, which its drawing is made from. */
  function elsewhere(holes: readonly Hole[]): readonly string[] {
    const [block] = holeTable({ book, wiring: { ...wiring, holes }, options, scale: 10 });
    const words = textsOf(block?.marks ?? []);
    return wiring.holes.flatMap(({ diameter, id, part: piece }, i) => {
      const part = book.parts.find(({ places: own }) => own.some((one) => one.id === piece));
      const label = part?.places.find((one) => one.id === piece)?.label;
      const name = words.indexOf(id.replace('hole-', 'H'));
      const along = Number(/^[\d.]+/.exec(words[name + 2] ?? '')?.[0]);
      const up = Number(/All middles ([\d.]+) mm from its underside/.exec(words.join(' '))?.[1]);
      const there = part?.features.some(
        (feature) =>
          feature.kind === 'hole' &&
          Math.abs(feature.at[0] - along) < 0.06 &&
          Math.abs(feature.at[1] - up) < 0.06 &&
          feature.diameter === diameter,
      );
      return there === true && words[name + 1] === label ? [] : [`hole ${i + 1}`];
    });
  }

  it('are where the part drawing of their board has them, on the board that is named', () => {
    expect(wiring.holes.length).toBeGreaterThan(3);
    expect(elsewhere(wiring.holes)).toEqual([]);
  });

  it('planted fault: a hole 5 mm off along its board is seen', () => {
    const [first, ...rest] = wiring.holes;
    if (first === undefined) throw new Error('no hole');
    const [x, y, z] = first.at;
    expect(elsewhere([{ ...first, at: [x, y + 5, z] }, ...rest])).toEqual(['hole 1']);
  });
});

describe('a bay from below', () => {
  /** Boards whose name stands on the wrong side of their bay, seen from below. */
  function misplaced(draw: (place: (typeof wiring.places)[number]) => readonly Mark[]): readonly string[] {
    return wiring.places.flatMap((place) => {
      const marks = draw(place);
      const middle = -((place.low[0] + place.high[0]) / 2) / 10;
      return benchWalls(book)
        .filter(
          ({ along, faces }) => along === 'y' && faces.some((face) => [place.low[0], place.high[0]].includes(face)),
        )
        .flatMap(({ faces, part }) => {
          const label = book.parts.flatMap(({ places: own }) => own).find(({ id }) => id === part)?.label;
          const mark = marks.find((one) => one.kind === 'text' && one.text === label);
          if (mark === undefined || mark.kind !== 'text') return [`${label} is not named in ${place.bay}`];
          const { x0, x1 } = textBox(mark);
          // what lies to the right from above lies to the left from below
          const right = (faces[0] + faces[1]) / 2 > (place.low[0] + place.high[0]) / 2;
          return (x0 + x1) / 2 < middle === right ? [] : [`${label} in ${place.bay}`];
        });
    });
  }
  const ask = { book, wiring, options, scale: 10 };

  it('has the boards round it named where one sees them lying under the bench', () => {
    expect(misplaced((place) => mirrored(bayPicture(ask, place)).marks)).toEqual([]);
  });

  it('planted fault: a bay left as seen from above is seen', () => {
    expect(misplaced((place) => bayPicture(ask, place).marks).length).toBeGreaterThan(5);
  });
});

describe('the wiring on one line', () => {
  type Hung = { readonly number: string; readonly on: string | null };

  /** Every pair of a row and the pair of the row that it hangs on. */
  function hung(row: Row, on: string | null): readonly Hung[] {
    const number = /^pair (\d+)$/.exec(row.first)?.[1];
    const mine = number === undefined ? [] : [{ number, on }];
    return [...mine, ...row.under.flatMap((one) => hung(one, number ?? null))];
  }
  const nets = [...wiring.districts, ...wiring.units].map(({ id }) => netRow({ book, wiring, options, scale: 1 }, id));
  const all = nets.flatMap((row) => hung(row, null));
  const pathOf = (number: string) => wiring.wires.find(({ label }) => label === `${number}a`)?.path ?? [];

  /** How far a point is from a path, from above. */
  function off([x, y]: readonly number[], path: readonly (readonly number[])[]): number {
    return Math.min(
      ...path.slice(1).map((to, i) => {
        const [[ax = 0, ay = 0], [bx = 0, by = 0]] = [path[i] ?? to, to];
        const long = (bx - ax) ** 2 + (by - ay) ** 2 || 1;
        const t = Math.min(1, Math.max(0, (((x ?? 0) - ax) * (bx - ax) + ((y ?? 0) - ay) * (by - ay)) / long));
        return Math.hypot(ax + (bx - ax) * t - (x ?? 0), ay + (by - ay) * t - (y ?? 0));
      }),
    );
  }

  /** Pairs that hang on a length of bus which their own path does not meet. */
  function unmet(hangs: readonly Hung[]): readonly string[] {
    return hangs.flatMap(({ number, on }) => {
      if (on === null) return [];
      const [own, bus] = [pathOf(number), pathOf(on)];
      const [start, end] = [own[0] ?? [], own.at(-1) ?? []];
      // a branch may lead on to the one that feeds it
      const apart = Math.min(
        off(start, bus),
        off(end, bus),
        ...[bus[0] ?? [], bus.at(-1) ?? []].map((p) => off(p, own)),
      );
      return apart < 0.5 ? [] : [`${number} on ${on}`];
    });
  }

  it('has every pair once, but those that come out of a unit and those up to a frog', () => {
    const wanted = wiring.wires.filter(({ id, label }) => label.endsWith('a') && !id.endsWith('-out-a'));
    expect(all.map(({ number }) => Number(number)).toSorted((a, b) => a - b)).toEqual(
      wanted.map(({ label }) => Number(label.slice(0, -1))),
    );
  });

  it('hangs each on the length of bus that its wires meet', () => {
    expect(all.filter(({ on }) => on !== null).length).toBeGreaterThan(15);
    expect(unmet(all)).toEqual([]);
  });

  it('planted fault: a feeder hung on a length of bus at the other end is seen', () => {
    const feeder = all.find(({ number }) => number === '23');
    expect(unmet([{ number: feeder?.number ?? '', on: '2' }])).toHaveLength(1);
  });

  it('shows supply, breakers, units, motors, rails and loads as signs, with lengths and sizes', () => {
    const signs = (row: Row): readonly string[] => [row.sign, ...row.under.flatMap(signs)];
    const used = new Set([supplyRow({ book, wiring, options, scale: 1 }), ...nets].flatMap(signs));
    expect([...used]).toEqual(
      expect.arrayContaining(['supply', 'breaker', 'unit', 'switch', 'bus', 'rails', 'motor', 'load']),
    );
    const words = oneLineBlocks({ book, wiring, options, scale: 1 }).flatMap(({ marks }) => textsOf(marks));
    for (const { label, length } of wiring.wires.filter((wire) => wire.label.endsWith('a'))) {
      if (!words.includes(`pair ${label.slice(0, -1)}`)) continue;
      const at = words.indexOf(`pair ${label.slice(0, -1)}`);
      expect(words[at + 1]).toContain(`2\u00a0×\u00a0${length}\u00a0mm\u00a0of\u00a0`);
    }
  });
});

describe('a path in a bay', () => {
  it('is cut at the bay', () => {
    const path = [
      [-10, 5, 0],
      [30, 5, 0],
      [30, 40, 0],
    ] as const;
    expect(clippedPath(path, { low: [0, 0], high: [20, 20] })).toEqual([
      [
        [0, 5],
        [20, 5],
      ],
    ]);
    expect(clippedPath(path, { low: [50, 50], high: [60, 60] })).toEqual([]);
  });
});

describe('volts along a line', () => {
  const blocks = voltageBlocks({ book, wiring, options, scale: 1 });

  /** Lines whose dot is not at the lowest place of their curve, or whose words say other volts than the model has. */
  function wrong(drawn: readonly (readonly Mark[])[]): readonly string[] {
    return drawn.flatMap((marks, i) => {
      const { line, points } = wiring.voltage[i] ?? { line: '', points: [] };
      const curve = marks.find((mark) => mark.kind === 'polyline');
      const dot = marks.find((mark) => mark.kind === 'circle');
      if (curve?.kind !== 'polyline' || dot?.kind !== 'circle') return [`${line} has no curve or no dot`];
      const lowest = Math.max(...curve.points.map(([, y]) => y));
      const volts = Math.round(Math.min(...points.map(([, own]) => own)) * 100) / 100;
      const said = textsOf(marks).join(' ').includes(`lowest, ${volts} V at `);
      return said && Math.abs(dot.centre[1] - lowest) < 1e-9 ? [] : [line];
    });
  }

  it('marks its lowest place and says it, with distances on its axis', () => {
    const drawn = blocks.map(({ marks }) => marks);
    expect(drawn.length).toBe(wiring.voltage.length);
    expect(wrong(drawn)).toEqual([]);
    for (const marks of drawn) expect(textsOf(marks).filter((text) => / mm$/.test(text)).length).toBeGreaterThan(2);
    // planted fault: the dot of the first line where its curve is highest
    const [first = [], ...rest] = drawn;
    const raised = first.map((mark) => (mark.kind === 'circle' ? { ...mark, centre: [0, 0] as const } : mark));
    expect(wrong([raised, ...rest])).toEqual([wiring.voltage[0]?.line]);
  });
});
