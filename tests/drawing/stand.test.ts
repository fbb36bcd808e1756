import { describe, expect, test } from 'vitest';
import { compute, type Notebook } from '../../src/core/notebook.ts';
import type { Part, Placement } from '../../src/core/stock/part.ts';
import { feetOf } from '../../src/drawing/bench-feet.ts';
import { seenCasters, seenStands } from '../../src/drawing/bench-stand.ts';
import { markExtent } from '../../src/drawing/block.ts';
import { overlap } from '../../src/drawing/labels.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import type { Mark } from '../../src/drawing/mark.ts';
import { fromFront } from '../../src/drawing/scene.ts';
import { partUp } from '../../src/drawing/up-arrow.ts';
import { onPaper } from '../../src/drawing/view.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { complaints } from './checker.ts';

const files = await loadContent(new URL('../../content', import.meta.url).pathname);
const notebooks = readContent(files).plans.flatMap((plan): readonly Notebook[] => {
  const result = compute(plan);
  return result.ok ? [result.value] : [];
});

function bookOf(slug: string): Notebook {
  const found = notebooks.find((one) => one.slug === slug);
  if (found === undefined) throw new Error(`no notebook ${slug}`);
  return found;
}

function wordsOf(marks: readonly Mark[]): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

const table = bookOf('bittern-basin');
const drawn = (id: string, book = table) => layOutDrawing(book, id, { unit: 'mm', paper: 'A4' });

describe('what a bench stands on', () => {
  for (const view of ['front', 'left', 'section']) {
    test(`is measured from the floor in the ${view} view: the whole is the deck's height`, () => {
      const { marks, dimensions } = drawn(`benchwork.${view}`);
      expect(wordsOf(marks)).toContain('Floor');
      const whole = dimensions.find(({ chain }) => chain === 'heights whole');
      expect(whole?.between).toEqual([0, table.benches[0]?.deckTop]);
      const links = dimensions.filter(({ chain }) => chain === 'heights');
      expect(links.some(({ between }) => between?.[0] === 0 && between[1] === 100)).toBe(true);
    });
  }

  test('is left out where nothing of the bench reaches the floor; the height is then in words', () => {
    const { marks } = drawn('benchwork.front', bookOf('window-shelf'));
    expect(wordsOf(marks)).not.toContain('Floor');
    expect(wordsOf(marks).some((text) => text.includes('above the floor'))).toBe(true);
  });

  test('has wheels as large as the stock says, on the floor and within the circle they swing in', () => {
    const [bench] = table.benches;
    if (bench === undefined) throw new Error('no bench');
    const wheels = seenCasters({ notebook: table, bench }, fromFront).filter(({ id }) => id.endsWith('.wheel'));
    expect(wheels).toHaveLength(4);
    for (const { id, areas } of wheels) {
      const points = areas.flatMap(({ outline }) => outline);
      const [us, vs] = [points.map(([u]) => u), points.map(([, v]) => v)];
      const circle = table.envelopes.find((one) => `${one.id}.wheel` === id);
      expect(Math.min(...vs)).toBeCloseTo(0, 6);
      expect(Math.max(...vs)).toBeCloseTo(75, 6);
      expect(Math.min(...us)).toBeGreaterThanOrEqual((circle?.min[0] ?? Number.NaN) - 1e-6);
      expect(Math.max(...us)).toBeLessThanOrEqual((circle?.max[0] ?? Number.NaN) + 1e-6);
    }
  });
});

describe('casters of two kinds', () => {
  const all = 'casters: { stock: caster-75, mount: plate }';
  const some = 'casters: { stock: caster-75, free: caster-75-free, mount: plate }';
  const mixed = () => {
    const changed = files.map((file) =>
      file.path.endsWith('.md')
        ? { ...file, bytes: new TextEncoder().encode(new TextDecoder().decode(file.bytes).replace(all, some)) }
        : file,
    );
    const plan = readContent(changed).plans.find(({ slug }) => slug === 'bittern-basin');
    const made = plan === undefined ? null : compute(plan);
    return made?.ok === true ? made.value : null;
  };

  test('say which of them lock', () => {
    expect(wordsOf(drawn('benchwork.front').marks)).toContain('Every caster locks.');
    const posts = mixed();
    expect.assert(posts !== null);
    expect(wordsOf(drawn('benchwork.front', posts).marks)).toContain('Casters that lock: front left, front right.');
  });

  test('planted fault: with the locks taken off none is said to lock', () => {
    const stock = table.stock.map((one) => (one.kind === 'caster' ? { ...one, locks: false } : one));
    expect(wordsOf(drawn('benchwork.front', { ...table, stock }).marks)).toContain('No caster locks.');
  });
});

describe('a bench on feet that screw', () => {
  const casters = 'casters: { stock: caster-75, mount: plate }';
  const feet = 'feet: { stock: foot-m8, height: 25 mm }';
  const swapped = (bytes: Uint8Array) =>
    new TextEncoder().encode(new TextDecoder().decode(bytes).replace(casters, feet));
  const other = files.map((file) => (file.path.endsWith('.md') ? { ...file, bytes: swapped(file.bytes) } : file));
  const plan = readContent(other).plans.find(({ slug }) => slug === 'bittern-basin');
  expect.assert(plan !== undefined);
  const onFeet = compute(plan);

  test('shows a foot under every leg, from the floor to the leg, and says how high they stand', () => {
    expect.assert(onFeet.ok && onFeet.value.benches[0] !== undefined);
    const [notebook, bench] = [onFeet.value, onFeet.value.benches[0]];
    expect(notebook.slug).toBe('bittern-basin');
    expect(feetOf({ notebook, bench }).map(({ at }) => at[2])).toEqual([25, 25, 25, 25]);
    const pieces = seenStands({ notebook, bench }, fromFront).filter(({ id }) => id.includes('leg.front-left'));
    const vs = pieces.flatMap(({ areas }) => areas.flatMap(({ outline }) => outline.map(([, v]) => v)));
    expect([Math.min(...vs), Math.max(...vs)]).toEqual([0, 25]);
    const thread = pieces.find(({ id }) => id.endsWith('.thread'))?.areas[0]?.outline.map(([u]) => u) ?? [];
    expect(Math.max(...thread) - Math.min(...thread)).toBeCloseTo(8, 9);
    const { marks, dimensions } = drawn('benchwork.front', notebook);
    expect(wordsOf(marks)).toContain('On 4 feet that screw, 25 mm high as drawn.');
    expect(dimensions.some(({ chain, between }) => chain === 'heights' && between?.[1] === 25)).toBe(true);
    for (const unit of ['mm', 'in'] as const) {
      for (const view of ['front', 'left', 'section']) {
        const drawing = layOutDrawing(notebook, `benchwork.${view}`, { unit, paper: 'A4' });
        expect(complaints(drawing, 'A4')).toEqual([]);
      }
    }
  });
});

describe('labels', () => {
  test('name a leg of many layers as one in the plan, and leave out what the shelves hide', () => {
    const words = wordsOf(drawn('benchwork.plan').marks);
    expect(words).toEqual(expect.arrayContaining(['P1A to P1F', 'P2A to P2F', 'P3A to P3F', 'P4A to P4F']));
    expect(words.filter((text) => /^(P1B|HB3C)$/.test(text))).toEqual([]);
  });

  test('name every move of the exploded view, and nothing of another chapter is in it', () => {
    const words = wordsOf(drawn('assembly.exploded').marks);
    const order = table.assembly[0]?.poses.find(({ pose }) => pose === table.assembly[0]?.chosen)?.order ?? [];
    const labels = new Map(table.parts.flatMap(({ places }) => places.map(({ id, label }) => [id, label] as const)));
    const alone = order.filter(({ parts, within }) => parts.length === 1 && within === null);
    const names = alone.flatMap(({ parts: [id = ''] }) => labels.get(id) ?? []);
    expect(names.length).toBeGreaterThan(20);
    expect(words).toEqual(expect.arrayContaining([...names, 'DR2A to DR2E', 'DR3A to DR3E']));
    expect(words.filter((text) => /^F\d|^P-back/.test(text))).toEqual([]);
  });

  test('say of a hidden piece that it is hidden', () => {
    const steps = listDrawings(table).flatMap(({ id }) => (id.startsWith('assembly.step-') ? [id] : []));
    const words = steps.flatMap((step) => wordsOf(drawn(step).marks));
    expect(words.filter((text) => /^HB[23][ABC], hidden$/.test(text)).length).toBeGreaterThan(0);
  });
});

describe('the way up', () => {
  const place = (x: Placement['pose']['x'], y: Placement['pose']['y']): Placement => ({
    id: 'a',
    label: 'A',
    pose: { origin: [0, 0, 0], x, y, z: [0, 1, 0] },
    marks: [{ text: 'up', side: 'face', at: [10, 20], kind: 'up' }],
  });
  const part = (...places: readonly Placement[]): Part => ({
    id: 'a',
    label: 'A',
    role: 'side',
    chapter: 'benchwork',
    bench: 'table',
    stock: 'ply',
    blank: { length: 100, width: 50, thickness: 10, grain: 'length' },
    features: [],
    places,
    cutAfterMeasuring: false,
    phase: 'now',
  });

  test('is across a part that stands on its long edge, along one that stands on its end', () => {
    expect(partUp(part(place([1, 0, 0], [0, 0, 1])))?.way).toEqual([0, 1]);
    expect(partUp(part(place([0, 0, -1], [1, 0, 0])))?.way).toEqual([-1, 0]);
  });

  test('is not drawn on a part that lies flat, nor where its pieces stand differently', () => {
    expect(partUp(part(place([1, 0, 0], [0, 1, 0])))).toBeNull();
    expect(partUp(part(place([1, 0, 0], [0, 0, 1]), place([1, 0, 0], [0, 0, -1])))).toBeNull();
  });

  test('is drawn on the sides of the table', () => {
    expect(wordsOf(drawn('part.side.front').marks)).toContain('up');
  });
});

describe('joints', () => {
  test('are drawn once for shapes that meet alike, holes of other chapters or not, and name the other pairs', () => {
    const listed = listDrawings(table).filter(({ kind }) => kind === 'joint');
    expect(listed.filter(({ id }) => id.startsWith('joint.lap.')).map(({ title }) => title)).toEqual([
      'Lap of C1 and L1, 3 alike',
    ]);
    expect(wordsOf(drawn('joint.lap.strut.across-1.strut.along-1').marks)).toContain('The same: C2 and L1; C3 and L1.');
  });

  test('measure corners that are drawn, and none that lies on a straight edge', () => {
    const { dimensions } = layOutDrawing(table, 'joint.rabbet.side.front.end.left', { unit: 'mm', paper: 'A4' });
    const across = dimensions.filter(({ chain }) => chain?.endsWith('across what enters'));
    // the end is one straight board here: its thickness is all there is to measure across it
    expect(across.map(({ text }) => text)).toEqual(['17.7']);
  });

  test('never print a clearance of nothing on an inch sheet', () => {
    const { marks } = layOutDrawing(table, 'joint.lap.strut.across-1.strut.along-1', { unit: 'in', paper: 'Letter' });
    expect(wordsOf(marks).some((text) => text.endsWith('clearance 0.012; lap relief 1/64.'))).toBe(true);
  });
});

/** What a figure says: `0.713`, `45/64` or `1 3/4`. */
function figureValue(figure: string): number {
  return figure.split(' ').reduce((sum, piece) => {
    const [top = Number.NaN, bottom = 1] = piece.split('/').map(Number);
    return sum + top / bottom;
  }, 0);
}

/** Words on the joint's sheet that tell its fit, and the width that its chains print for the cut. */
function fitOn(id: string, unit: 'mm' | 'in', book = table) {
  const { marks, dimensions } = layOutDrawing(book, id, { unit, paper: 'A4' });
  const told = wordsOf(marks).find((text) => text.includes('clearance')) ?? '';
  const found = /, ([\d./ ]+) wide: [a-z ]+ ([\d./ ]+) \+ clearance ([\d./]*\d)/.exec(told) ?? [];
  const [, wide = '', thickest = '', play = ''] = found;
  return { told, wide, sum: figureValue(thickest) + figureValue(play), chained: dimensions.map(({ text }) => text) };
}

describe('the fit of a joint', () => {
  const joints = listDrawings(table).filter(({ kind }) => kind === 'joint');

  for (const unit of ['mm', 'in'] as const) {
    test(`is told as thickest reading and clearance, which add up to the cut as its chain has it, ${unit}`, () => {
      expect(joints.length).toBeGreaterThan(5);
      for (const { id } of joints) {
        const { wide, sum, chained } = fitOn(id, unit);
        expect(chained, id).toContain(wide);
        expect(Math.abs(sum - figureValue(wide)), id).toBeLessThan(unit === 'mm' ? 0.051 : 0.0025);
      }
    });
  }

  test('would not add up, were another reading the thickest', () => {
    const thicker = table.thicknesses.map((one) => ({ ...one, thickest: one.thickest + 0.5 }));
    const { wide, chained } = fitOn('joint.dado.end.left.strut.along-1', 'mm', { ...table, thicknesses: thicker });
    expect(chained).not.toContain(wide);
  });

  test('says which piece has the cut', () => {
    expect(fitOn('joint.dado.end.left.strut.along-1', 'mm').told).toMatch(/^The dado is in E1, for L1, /);
    expect(fitOn('joint.lap.strut.across-1.strut.along-1', 'mm').told).toMatch(/^C1 and L1 have a slot each, /);
  });
});

describe('marks of mates', () => {
  type Boxed = { readonly text: string; readonly pen: string; readonly box: ReturnType<typeof markExtent> };

  /** Words that stand in a box of their own, and the pen of the box. */
  function boxedWords(marks: readonly Mark[]): readonly Boxed[] {
    const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
    return marks.flatMap((mark): readonly Boxed[] => {
      if (mark.kind !== 'polygon' || mark.role !== 'symbol') return [];
      const box = markExtent(mark);
      const inside = texts.find((text) => {
        const own = markExtent(text);
        return own.x0 >= box.x0 && own.x1 <= box.x1 && own.y0 >= box.y0 && own.y1 <= box.y1;
      });
      return inside === undefined ? [] : [{ text: inside.text, pen: mark.pen, box }];
    });
  }

  test('stand on the part by the spot where they are written, on wood, dashed where that is on the back', () => {
    const [side] = table.parts;
    expect(side?.id).toBe('side.front');
    const { marks, views } = drawn('part.side.front');
    const view = views.find(({ name }) => name === 'face 0');
    expect.assert(side !== undefined && view !== undefined);
    const written = boxedWords(marks);
    expect(written.map(({ text }) => text)).toEqual(expect.arrayContaining(['C1', 'C3', 'E1']));
    const own = side.places[0]?.marks ?? [];
    for (const { text, pen, box } of written) {
      const mark = own.find((one) => one.text === text);
      expect.assert(mark !== undefined);
      expect(pen).toBe(mark.side === 'face' ? 'dimension' : 'hidden');
      const [x, y] = onPaper(view, mark.at);
      expect(Math.hypot((box.x0 + box.x1) / 2 - x, (box.y0 + box.y1) / 2 - y)).toBeLessThan(10);
      const openings = side.features.flatMap((one) => (one.kind === 'opening' ? [one.patch] : []));
      for (const { x0, x1, y0, y1 } of openings) {
        const [[left, low], [right, top]] = [onPaper(view, [x0, y0]), onPaper(view, [x1, y1])];
        expect(overlap(box, { x0: left, x1: right, y0: top, y1: low })).toBe(false);
      }
    }
  });
});
