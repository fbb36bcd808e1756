import { describe, expect, test } from 'vitest';
import { standsOf } from '../../src/core/assembly/seats.ts';
import { compute } from '../../src/core/notebook.ts';
import { joinsPieces } from '../../src/core/stock/fastener.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { takingOff } from '../../src/site/apart-words.ts';
import { picturedSteps, stepTitle } from '../../src/site/assembly-words.ts';
import { fasteningTable } from '../../src/site/fastening-words.ts';
import { machiningTable } from '../../src/site/machining-words.ts';
import { metalLines } from '../../src/site/metal-words.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { holdLines, movesIn } from '../../src/site/picture-words.ts';
import { prose } from './fixture.ts';

const content = readContent(await loadContent(new URL('../../content', import.meta.url).pathname));
const plan = content.plans.find(({ slug }) => slug === 'bittern-basin');
const computed = plan === undefined ? null : compute(plan);
if (computed === null || !computed.ok) throw new Error('the demo is not computed');
const notebook = computed.value;
const book: Book = { notebook, prose, photos: '' };
const [assembly] = notebook.assembly;
if (assembly === undefined) throw new Error('the demo has no bench');

function plain(html: string): string {
  return html
    .replace(/<span class="in">.*?<\/span>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
}

test('every screw and bolt is driven after the picture in which the last of its pieces goes in', () => {
  const { steps } = picturedSteps(book, assembly);
  const table = fasteningTable(book, assembly, steps);
  const rows = (table?.rows ?? []).map((row) => row.map(plain));
  expect(rows.reduce((sum, row) => sum + Number(row[1]), 0)).toBe(notebook.fasteners.filter(joinsPieces).length);
  const leg = rows.find((row) => row[3]?.startsWith('S1 , P1A'));
  const on = steps.find(({ step }) => step.within === null && step.parts.includes('leg.front-left.layer-1'));
  expect(leg?.slice(0, 2)).toEqual([String(on?.number), '2']);
  const after = rows.map((row) => Number(row[0]));
  expect(after).toEqual([...after].sort((a, b) => a - b));
});

test('drawers come off before the frame is turned over for its legs, bolts first', () => {
  const lines = takingOff(book, assembly).map(plain);
  expect(lines).toHaveLength(6);
  expect(lines[0]).toMatch(/^drawer, front 3 .*: drawn out to the front\.$/);
  expect(lines[2]).toMatch(/^Turn the frame over, two adults, .* Draw 2 bolts: leg, back right .*: lifted off\.$/);
});

test('a side is ripped first and drilled after its dados, the first dado tried in scrap', () => {
  const side = notebook.parts.find(({ id }) => id === 'side.front');
  const rows = (side === undefined ? [] : (machiningTable(book, side)?.rows ?? [])).map((row) => row.map(plain));
  expect(rows[0]?.slice(0, 3)).toEqual(['rip', 'table saw', 'fence 170']);
  expect(rows[1]?.slice(0, 3)).toEqual(['crosscut', 'table saw', 'stop 1600']);
  // a bit of 12.7 in a base of 75: the dado from 395.375 to 413.375 is guided at 326.7 and 332.1
  expect(rows[2]).toEqual([
    'dado try it in scrap and log the fit first clamped together, left ends flush: S1 , S2',
    'router',
    'begins at 395.4',
    '326.7 , 332.1',
    '12.7',
    '5.9',
  ]);
  expect(rows.findIndex((row) => row[0] === 'hole')).toBeGreaterThan(
    rows.findLastIndex((row) => row[0]?.startsWith('rabbet')),
  );
});

describe('the words beside a picture', () => {
  const stands = standsOf(
    notebook.parts.filter(({ chapter }) => chapter === 'benchwork'),
    notebook.joints,
  );
  const { steps } = picturedSteps(book, assembly);
  const pictureOf = (id: string) =>
    steps.find(({ step }) => step.within === null && step.parts.includes(id)) ?? expect.fail(`no picture of ${id}`);
  const words = (id: string) => {
    const told = { book, of: assembly, stands, one: pictureOf(id) };
    return [...movesIn(told), ...holdLines(told)].map(plain).map((line) => line.replaceAll(/ (?=[.,:;])/g, ''));
  };
  // heights by hand: the sides are 170 high and stand 520.8 above the floor, the spacers from 572.8 to 632.8
  test('of spacers say which face of which strut, how high above what, what they are screwed with and what to check', () => {
    expect(words('spacer.front-2-left')).toEqual([
      'Each: lowered, against S1, from 52 mm to 112 mm above the underside of the sides.',
      'DR2H: against the right face of C1.',
      'DR2J: against the left face of C2.',
      'DR3H: against the right face of C2.',
      'DR3J: against the left face of C3.',
      expect.stringMatching(/^Wood screw 4 x 30 mm: 3 through DR2H into C1; 3 through DR2J into C2;/),
      'The slides’ outer halves on DR2H, DR2J, DR3H and DR3J, 3 × Wood screw 4 x 16 mm into each.',
      'Check: the same height at both ends of each.',
    ]);
  });

  test('of struts say how far from which end of what they are let in: the dado of L1 is 5.9 deep, C1 from 395.6', () => {
    // L1 begins 11.8 from the outside of the frame: 395.575 less 11.8
    expect(words('strut.across-1')[1]).toBe('C1: slot into slot with L1, 383.8 mm from the left end of L1.');
    expect(stepTitle(book, pictureOf('strut.across-1').step)).toBe('Struts C1, C2, C3');
    expect(stepTitle(book, pictureOf('shelf.back-2.panel').step)).toBe('Shelves HB2A, HB3A');
  });

  test('of legs name both boards of each corner and the bolts', () => {
    const legs = words('leg.front-left.layer-1');
    expect(legs[0]).toBe('Each: lowered, its upper end on the workbench.');
    expect(legs[1]).toBe(
      'leg, front left (P1A to P1F): into the corner of S1 and E1, tight against the inside of both.',
    );
    expect(legs.at(-1)).toContain('2 through S1 and P1A to P1D, their nuts behind');
  });

  test('of what closes the frame give the diagonals, and of a deck where it is flush', () => {
    expect(words('side.front').at(-1)).toBe('Check: both diagonals 1941.6 mm, or at least the same.');
    expect(words('end.left').join(' ')).not.toContain('diagonals');
    expect(words('deck.1')[1]).toContain('flush with the frame left, front and back');
  });

  test('say the way of every move, and where it comes to whatever is not laid down first', () => {
    const lines = steps.map((one) => movesIn({ book, of: assembly, stands, one }).map(plain));
    expect(lines.flat().length).toBeGreaterThan(50);
    for (const [i, moves] of lines.entries()) {
      const count = steps[i]?.step.placings.length ?? 0;
      const common = moves[0]?.startsWith('Each:') ? 1 : 0;
      expect(moves).toHaveLength(count + common);
      expect(moves.join(' ')).toMatch(/lowered|pushed|lifted|laid down first|slid/);
    }
  });
});

describe('metal', () => {
  const { steps } = picturedSteps(book, assembly);
  const told = steps.map(({ step }) => metalLines(book, step).map(plain).join(' '));
  const all = told.join(' ');

  test('of every kind that is fixed on one piece is told with its pieces, once for each leg and drawer', () => {
    const forms = ['caster', 'bracket', 'slide', 'catch', 'insert'];
    const items = notebook.stock.filter((one) =>
      one.kind === 'hardware' ? forms.includes(one.form) : one.kind === 'caster',
    );
    const used = items.filter(({ id }) => notebook.hardware.some(({ item }) => item === id));
    expect(used.length).toBe(5);
    for (const { id, name } of used) {
      const places = notebook.hardware.filter(({ item }) => item === id).length;
      expect([id, all.split(name).length - 1]).toEqual([id, places]);
    }
  });

  test('a caster says under which pad, whether it locks and with which bolts', () => {
    const leg = told.find((words) => words.includes('P1E'));
    expect(leg).toContain('(it locks) under P1E with 4 × Bolt M6 x 16 mm');
    expect(leg).toContain('4 × Screw-in insert M6 into P1E');
  });

  test('planted fault: a step whose pieces are none of a leg or drawer says nothing of metal', () => {
    const [strut] = steps;
    expect(strut === undefined ? null : metalLines(book, strut.step)).toEqual([]);
    const legs = steps.find(({ step }) => step.within === 'leg.front-left');
    expect(legs === undefined ? null : metalLines(book, { ...legs.step, parts: [] })).toEqual([]);
  });
});
