import type { Polygon } from '../geometry/shapes.ts';
import { benchUnder, onBench, outside } from './deck.ts';
import { type Element, sharpest, stanceOn } from './element.ts';
import type { Ground } from './input.ts';
import type { LaidTurnout, Layout } from './laid.ts';
import type { LineWay } from './line.ts';
import { moved, type Stance } from './stretch.ts';
import { endStance, isEnd } from './turnout-shape.ts';

/** A point to mark on the deck; x and y from the left and front edges of its bench, mm. */
export type SetOutRow = {
  readonly id: string;
  readonly kind: 'centre' | 'tangent' | 'easement' | 'turnout' | 'frog' | 'end';
  readonly line: string;
  readonly bench: string | null;
  /** distance from the line's start; null for what lies off it */
  readonly at: number | null;
  readonly x: number;
  readonly y: number;
  /** from the front left and the front right corner, to check the two measures by */
  readonly diagonals: readonly [number, number] | null;
  /** of the arc about a centre */
  readonly radius: number | null;
  /** of an easement's point: along its straight from the easement's start, and square off it */
  readonly along: number | null;
  readonly offset: number | null;
  /** whether the point can be marked on the deck itself; a centre may lie off it */
  readonly onDeck: boolean;
};

type Mark = Pick<SetOutRow, 'id' | 'kind' | 'line' | 'at' | 'radius' | 'along' | 'offset'> & {
  readonly place: Pick<Stance, 'x' | 'y'>;
};

/** Offsets of an easement are given so often, mm. */
const EVERY = 50;

/** Everything a trammel and a square need: centres, tangent points, easement offsets, turnouts and ends. */
export function setOut(layout: Layout, ground: Ground, areas: readonly Polygon[]): readonly SetOutRow[] {
  const marks = [...layout.lines.flatMap(lineMarks), ...layout.turnouts.flatMap(turnoutMarks)];
  return marks.map(({ place, ...rest }) => {
    const bench = benchUnder(ground, [place.x, place.y]);
    const [x, y] = bench === null ? [place.x, place.y] : onBench(bench, [place.x, place.y]);
    const diagonals = bench === null ? null : ([Math.hypot(x, y), Math.hypot(bench.length - x, y)] as const);
    return {
      ...rest,
      bench: bench?.id ?? null,
      x,
      y,
      diagonals,
      onDeck: areas.length > 0 && outside(areas, [place.x, place.y]) <= 1e-3,
    };
  });
}

function lineMarks(line: LineWay): readonly Mark[] {
  const plain = { line: line.id, radius: null, along: null, offset: null };
  const own = line.elements.filter(({ turnout, length }) => turnout === null && length > 0);
  const tangents = own.map(
    (element, i): Mark => ({
      ...plain,
      id: `${line.id}.t${i + 1}`,
      kind: 'tangent',
      at: element.from,
      place: stanceOn(element, 0),
    }),
  );
  const arcs = own.filter(({ kind }) => kind === 'arc').map((element, i) => centreMark(line, element, i));
  const easements = own
    .filter(({ kind }) => kind === 'easement')
    .flatMap((element, i) => easementMarks(line, element, i));
  const end: Mark = { ...plain, id: `${line.id}.end`, kind: 'end', at: line.length, place: line.end };
  return [...tangents, ...(line.ends === `${line.id}.start` ? [] : [end]), ...arcs, ...easements];
}

function centreMark(line: LineWay, element: Element, i: number): Mark {
  const { x, y, heading } = stanceOn(element, 0);
  const radius = sharpest(element);
  const side = element.stretch.k0 > 0 ? radius : -radius;
  const place = { x: x - side * Math.sin(heading), y: y + side * Math.cos(heading) };
  return {
    id: `${line.id}.c${i + 1}`,
    kind: 'centre',
    line: line.id,
    at: null,
    radius,
    along: null,
    offset: null,
    place,
  };
}

/** Offsets from the easement's straight, counted from its straight end. */
function easementMarks(line: LineWay, element: Element, i: number): readonly Mark[] {
  const { k0, k1 } = element.stretch;
  const begins = Math.abs(k0) <= Math.abs(k1);
  const straight = stanceOn(element, begins ? 0 : element.length);
  const [c, s] = [Math.cos(straight.heading), Math.sin(straight.heading)];
  const count = Math.ceil(element.length / EVERY - 1e-9);
  return Array.from({ length: count }, (_, j): Mark => {
    const away = Math.min(element.length, EVERY * (j + 1));
    const own = begins ? away : element.length - away;
    const place = stanceOn(element, own);
    const [dx, dy] = [place.x - straight.x, place.y - straight.y];
    return {
      ...{
        id: `${line.id}.e${i + 1}-${j + 1}`,
        kind: 'easement',
        line: line.id,
        at: element.from + own,
        radius: null,
        place,
      },
      along: Math.abs(c * dx + s * dy),
      offset: Math.abs(c * dy - s * dx),
    };
  });
}

function turnoutMarks({ id, line, shape, place }: LaidTurnout): readonly Mark[] {
  const plain = { line, at: null, radius: null, along: null, offset: null };
  const ends = Object.keys(shape.ends)
    .filter(isEnd)
    .map((end): Mark => ({ ...plain, id: `${id}.${end}`, kind: 'turnout', place: endStance(shape, end, place) }));
  if (shape.frogPoint === null) return ends;
  const frog: Mark = {
    ...plain,
    id: `${id}.frog`,
    kind: 'frog',
    place: moved(place, { x: shape.frogPoint, y: 0, turn: 0 }),
  };
  return [...ends, frog];
}
