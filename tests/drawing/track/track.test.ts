import { describe, expect, test } from 'vitest';
import { compute } from '../../../src/core/notebook.ts';
import type { TrackInput } from '../../../src/core/track/input.ts';
import { layTrack, type TrackModel } from '../../../src/core/track/lay.ts';
import type { Drawing } from '../../../src/drawing/drawing.ts';
import { layOutDrawing } from '../../../src/drawing/layout.ts';
import { listDrawings } from '../../../src/drawing/list.ts';
import { loadWithShipped } from '../../../src/reading/disk.ts';
import { readContent } from '../../../src/reading/read.ts';
import { model, table } from '../../core/benchwork/example.ts';
import {
  curve,
  from,
  height,
  line,
  oval,
  straight,
  tableGround,
  through,
  track,
  turnout,
} from '../../core/track/example.ts';
import { complaints } from '../checker.ts';

const papers = ['A4', 'A3', 'Letter', 'Tabloid'] as const;

function book(input: TrackInput) {
  const built = model(table([17.6, 17.7, 17.8]));
  return {
    ...{ slug: 'demo', title: 'Demo', makers: ['an uncle'], sheets: [] },
    ...{ benches: built.benches, parts: built.parts, joints: built.joints, seams: built.seams },
    track: layTrack(input).model,
  };
}

const WYE = turnout('Y1', { kind: 'wye', angle: 0.5, radius: 400 });
const busy = track(
  [
    line(
      'main',
      [
        straight(300, { joint: 'quay' }),
        through('Y1', 'points', 'left'),
        curve('right', 350, 60, { easement: 60, joint: 'mill' }),
        straight(200),
      ],
      {
        from: from(100, 300),
        heights: [height(300, 0), height(900, 14)],
      },
    ),
    line('spur', [curve('right', 300, 30), straight(150)], {
      from: { kind: 'end', name: 'Y1.right' },
      ends: 'buffer',
      phase: 'later',
    }),
  ],
  {
    turnouts: [WYE],
    ground: tableGround(),
    beside: [{ id: 'second', at: 'b', line: 'main', side: 'left', by: 28, phase: 'now' }],
  },
);

const books = { oval: book(oval()), busy: book(busy) };

/** Points of the set-out table that a plan leaves without their name. */
function unnamed(plan: Pick<Drawing, 'sheets'>, { setOut }: TrackModel): readonly string[] {
  const words = new Set(plan.sheets[0]?.own.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
  return setOut
    .filter(({ kind, id }) => ['centre', 'tangent', 'end'].includes(kind) && !words.has(id))
    .map(({ id }) => id);
}

describe('the plan of the demo table', async () => {
  const plan = readContent(await loadWithShipped('content', 'content')).plans.find(
    ({ slug }) => slug === 'bittern-basin',
  );
  const result = plan === undefined ? null : compute(plan);
  const demo = result?.ok === true ? result.value : null;
  const { track: laid } = demo ?? {};
  if (demo === null || laid === undefined || laid === null) throw new Error('the demo has no track');

  test.each(papers)('names every centre, tangent point and end as the set-out table does, on %s', (paper) => {
    for (const unit of ['mm', 'in'] as const) {
      expect(unnamed(layOutDrawing(demo, 'track.plan', { unit, paper }), laid)).toEqual([]);
    }
  });

  test('is found out where a name is missing', () => {
    const { sheets } = layOutDrawing(demo, 'track.plan', { unit: 'mm', paper: 'A4' });
    const bare = sheets.map((sheet) => ({
      ...sheet,
      own: sheet.own.filter((mark) => mark.kind !== 'text' || mark.text !== 'main.t2'),
    }));
    expect(unnamed({ sheets: bare }, laid)).toEqual(['main.t2']);
  });

  test('prints places in fractions alone, as nothing has to fit there', () => {
    const texts = (id: string) =>
      layOutDrawing(demo, id, { unit: 'in', paper: 'A4' }).dimensions.map(({ text }) => text);
    expect(texts('track.plan').filter((text) => text.includes('.'))).toEqual([]);
    expect(texts('track.plan').some((text) => /^\d+\/32/.test(text))).toBe(true);
    // where something has to fit, decimals stand
    expect(texts('joint.dado.end.left.strut.along-1').some((text) => text.includes('.'))).toBe(true);
  });
});

describe('drawings of the track', () => {
  for (const [name, one] of Object.entries(books)) {
    const entries = listDrawings(one).filter(({ chapter }) => chapter === 'track');
    test(`${name}: a plan, and heights of every line that climbs`, () => {
      const climbing = one.track.lines
        .filter(({ profile }) => profile.curves.length > 0)
        .map(({ id }) => `track.heights.${id}`);
      expect(entries.map(({ id }) => id)).toEqual(['track.plan', ...climbing]);
    });
    for (const { id } of entries) {
      test(`${name}: ${id} is readable and closes on every paper in both units`, () => {
        for (const paper of papers) {
          for (const unit of ['mm', 'in'] as const) {
            const drawing = layOutDrawing(one, id, { unit, paper });
            expect(complaints(drawing, paper)).toEqual([]);
            if (id !== 'track.plan') expect(drawing.sheets).toHaveLength(1);
          }
        }
      });
    }
  }

  test('the plan tells every turnout, joint and radius, and draws each line where it lies', () => {
    const drawing = layOutDrawing(books.oval, 'track.plan', { unit: 'mm', paper: 'A3' });
    const words = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    for (const word of ['W1', 'basin-east', 'R 380', 'main', 'siding', '+18']) expect(words).toContain(word);
    const [view] = drawing.views;
    const wide = drawing.marks.filter((mark) => mark.kind === 'polyline' && mark.pen === 'cut-edge');
    expect(wide).toHaveLength(2);
    const [main] = wide;
    if (main?.kind !== 'polyline' || view === undefined) throw new Error('no line drawn');
    const xs = main.points.map(([x]) => (x - view.origin[0]) * view.scale);
    expect(Math.min(...xs)).toBeCloseTo(59.02, 0);
    expect(Math.max(...xs)).toBeCloseTo(1534.98, 0);
  });

  test('the plan is followed by every point to set out', () => {
    const { sheets } = layOutDrawing(books.oval, 'track.plan', { unit: 'mm', paper: 'A3' });
    const words = sheets.flatMap(({ marks }) => marks).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    for (const { id } of books.oval.track.setOut) expect(words).toContain(id);
    expect(words.join(' ')).toContain('centre of R 380: 1155, 530.9; check 1271.1 and 692.7 from');
  });

  test('the plan says in words what it shows', () => {
    const { desc } = layOutDrawing(books.oval, 'track.plan', { unit: 'mm', paper: 'A3' });
    expect(desc).toContain(
      'main is 3819.6 mm long and reaches from 59 mm to 1535 mm along and from 150 mm to 911.8 mm across.',
    );
  });

  test('the heights tell both grades and every break', () => {
    const drawing = layOutDrawing(books.oval, 'track.heights.main', { unit: 'mm', paper: 'A3' });
    const words = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(words.filter((word) => word === '2 %')).toHaveLength(2);
    expect(words.filter((word) => word === '+18')).toHaveLength(2);
    expect(words.filter((word) => word === 'R 380')).toHaveLength(2);
  });
});

describe('open ends', () => {
  const hollow = (input: TrackInput) =>
    layOutDrawing(book(input), 'track.plan', { unit: 'mm', paper: 'A3' }).sheets.flatMap(({ marks }) =>
      marks.filter((mark) => mark.kind === 'polygon' && mark.role === 'symbol' && mark.fill === 'paper'),
    ).length;

  test('carry a hollow triangle: both ends of a line laid alone, none of a ring, one where a line goes on', () => {
    const single = line('main', [straight(300)], { from: from(100, 300) });
    const next = line('next', [straight(300)], { from: { kind: 'end', name: 'main.end' }, ends: 'buffer' });
    expect(hollow(track([single], { ground: tableGround() }))).toBe(2);
    expect(hollow(track([single, next], { ground: tableGround() }))).toBe(1);
    const ring = line('ring', [curve('left', 300, 30, { times: 12 })], { from: from(700, 250), ends: 'ring.start' });
    expect(hollow(track([ring], { ground: tableGround() }))).toBe(0);
  });
});
