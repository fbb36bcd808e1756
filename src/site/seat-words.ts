import type { Placing } from '../core/assembly/assembly.ts';
import { boxRound } from '../core/assembly/engagement.ts';
import { inset, type Seat, type Stand, type Stands } from '../core/assembly/seats.ts';
import type { Box, Vector } from '../core/geometry/shapes.ts';
import { both, type Html, line, listedAnd, partLink, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { partNamed, pieceLabel } from './parts.ts';

/** A move, the bench it is a move of, and what stands already. */
export type Seating = {
  readonly book: Book;
  readonly stands: Stands;
  readonly placing: Placing;
  readonly standing: ReadonlySet<string>;
};

type Axis = 0 | 1 | 2;
type Met = { readonly id: string; readonly stand: Stand; readonly seat: Seat };

/** Less than this nobody measures on wood, mm. */
const EVEN = 0.05;
const LOW: readonly string[] = ['left', 'front', 'lower'];
const HIGH: readonly string[] = ['right', 'back', 'upper'];

/** Where a piece goes, phrase by phrase: its joints, the faces it lies against, what it stands between, its height. */
export function seatPhrases(at: Seating): readonly Html[] {
  const met = metBy(at);
  const joined = met.filter(({ seat }) => seat.how !== 'touch');
  const touching = met.filter(({ seat }) => seat.how === 'touch');
  return [
    ...joined.filter(({ seat }) => seat.how === 'lap').map((one) => lapPhrase(at, one)),
    ...letIn(at, joined),
    ...(inCorner(at, joined, touching) ?? [...onFaces(at, joined), ...beside(at, touching)]),
    ...(joined.some(({ seat }) => seat.away === null || seat.away[2] !== 0) ? [] : restingOn(at, touching)),
    ...offsets(at, joined, touching),
    ...overFrame(at, joined),
    ...heights(at, joined),
    ...(joined.length > 0 && joined.every(({ seat }) => seat.held === 'loose') ? [text('without glue')] : []),
  ];
}

/** What the pieces of a move come to of what stands, each once. */
function metBy({ placing, stands, standing }: Seating): readonly Met[] {
  const all = placing.parts.flatMap((id) => {
    const stand = stands.of.get(id);
    return stand === undefined ? [] : stand.seats.map((seat): Met => ({ id, stand, seat }));
  });
  const there = all.filter(({ seat }) => standing.has(seat.mate) && !placing.parts.includes(seat.mate));
  return there.filter((one, i) => there.findIndex((other) => alike(one, other)) === i);
}

function alike({ seat: a }: Met, { seat: b }: Met): boolean {
  return a.mate === b.mate && a.how === b.how && String(a.away) === String(b.away);
}

function pieces({ book }: Seating, met: readonly Met[]): Html {
  return listedAnd(met.map(({ seat: { mate } }) => partLink(book, mate, pieceLabel(book, mate))));
}

/** Two slots go into each other, so far from the mate's end. */
function lapPhrase(at: Seating, one: Met): Html {
  const mate = at.stands.of.get(one.seat.mate);
  const named = pieces(at, [one]);
  const words = line(text('slot into slot with '), named);
  if (mate === undefined) return words;
  const axis: Axis = span(mate.box, 0) >= span(mate.box, 1) ? 0 : 1;
  const { low } = inset(one.stand.box, mate.box, axis);
  return line(words, text(', '), both(lengthPair(low)), text(` from the ${LOW[axis]} end of `), named);
}

/** Dados, rabbets and grooves, by which of the two is cut. */
function letIn(at: Seating, joined: readonly Met[]): readonly Html[] {
  return (['rabbet', 'dado', 'groove'] as const).flatMap((how) =>
    (['mate', 'this'] as const).flatMap((cut) => {
      const met = joined.filter(({ seat }) => seat.how === how && seat.cut === cut);
      if (met.length === 0) return [];
      const many = met.length > 1 ? `${how}s` : how;
      return [line(text(cut === 'mate' ? `into the ${many} of ` : `its ${many} over `), pieces(at, met))];
    }),
  );
}

/** A leg in a corner of the frame, fastened to one of its two boards. */
function inCorner(at: Seating, joined: readonly Met[], touching: readonly Met[]): readonly Html[] | null {
  const boards = [...joined, ...touching].filter((one) => isOutside(at, one) && one.seat.away?.[2] === 0);
  const [a, b] = boards;
  if (joined.length !== 1 || boards.length !== 2 || a === undefined || b === undefined) return null;
  const isCorner = a.seat.away !== null && b.seat.away !== null && axisOf(a.seat.away) !== axisOf(b.seat.away);
  return isCorner
    ? [line(text('into the corner of '), pieces(at, boards), text(', tight against the inside of both'))]
    : null;
}

function isOutside({ book }: Seating, { seat }: Met): boolean {
  return ['side', 'end'].includes(partNamed(book, seat.mate)?.role ?? '');
}

/** Faces that are glued, screwed or bolted to each other, by the side of the mate they are on. */
function onFaces(at: Seating, joined: readonly Met[]): readonly Html[] {
  const sides = new Map<string, Met[]>();
  for (const one of joined) {
    const side = one.seat.away === null ? null : sideOf(at, one.seat.mate, one.seat.away);
    if (side !== null) sides.set(side, [...(sides.get(side) ?? []), one]);
  }
  return [...sides].map(([side, met]) => line(text(`${side} `), pieces(at, met)));
}

/** `on top of`, `against the right face of`: the side of a piece that another lies against, as the frame lies now. */
function sideOf({ book, stands, placing }: Seating, mate: string, away: Vector): string {
  const over = isOver(placing);
  const axis = axisOf(away);
  const up = away[axis] > 0;
  if (axis === 2 && !over) return up ? 'on top of' : 'under';
  if (axis === 2) return up ? 'under' : 'on the upturned lower edge of';
  if (['side', 'end'].includes(partNamed(book, mate)?.role ?? ''))
    return `against the ${isInside(stands, mate, away) ? 'inside' : 'outside'} of`;
  const named = (axis === 1 && over ? !up : up) ? HIGH : LOW;
  return `against the ${named[axis]} ${surface(stands.of.get(mate)?.box, axis)} of`;
}

/** Whether the frame lies upside down for a move of the bench; a sub-assembly is built as it will stand. */
function isOver({ frame, within }: Placing): boolean {
  return within === null && frame === 'upside-down';
}

function axisOf(away: Vector): Axis {
  return away[0] !== 0 ? 0 : away[1] !== 0 ? 1 : 2;
}

function span({ min, max }: Box, axis: Axis): number {
  return max[axis] - min[axis];
}

function isInside({ frame, of }: Stands, mate: string, away: Vector): boolean {
  const box = of.get(mate)?.box;
  if (frame === null || box === undefined) return true;
  const axis = axisOf(away);
  const middle = (one: Box) => (one.min[axis] + one.max[axis]) / 2;
  return (middle(frame) - middle(box)) * away[axis] > 0;
}

/** A board's faces are across its thickness, its ends across its length. */
function surface(box: Box | undefined, axis: Axis): string {
  if (box === undefined) return 'face';
  const [thin, , long] = [span(box, 0), span(box, 1), span(box, 2)].toSorted((a, b) => a - b);
  if (span(box, axis) === thin) return 'face';
  return span(box, axis) === long ? 'end' : 'edge';
}

/** What a piece stands between, against or on without a joint. */
function beside(at: Seating, touching: readonly Met[]): readonly Html[] {
  const along = (axis: Axis, way: 1 | -1) => touching.filter(({ seat }) => seat.away?.[axis] === way);
  return ([0, 1] as const).flatMap((axis): readonly Html[] => {
    const [low, high] = [along(axis, 1), along(axis, -1)];
    if (low.length > 0 && high.length > 0)
      return [line(text('between '), pieces(at, low), text(' and '), pieces(at, high))];
    const met = [...low, ...high];
    return met.length === 0 ? [] : [line(text('against '), pieces(at, met))];
  });
}

/** What bears a piece that is fastened sideways. */
function restingOn(at: Seating, touching: readonly Met[]): readonly Html[] {
  const under = touching.filter(({ seat }) => seat.away?.[2] === (isOver(at.placing) ? -1 : 1));
  return under.length === 0 ? [] : [line(text('resting on '), pieces(at, under))];
}

/** How a piece lies on the only one it is fastened to, where nothing it touches says so. */
function offsets(at: Seating, joined: readonly Met[], touching: readonly Met[]): readonly Html[] {
  const [one] = joined;
  const mate = one === undefined ? undefined : at.stands.of.get(one.seat.mate);
  if (one === undefined || joined.length > 1 || mate === undefined || one.seat.away === null) return [];
  const taken = [one, ...touching].map(({ seat }) => (seat.away === null ? null : axisOf(seat.away)));
  const free = ([0, 1] as const).filter((axis) => !taken.includes(axis));
  return free.map((axis) => offset(inset(one.stand.box, mate.box, axis)));
}

function offset({ axis, low, high }: ReturnType<typeof inset>): Html {
  if (Math.abs(low) < EVEN && Math.abs(high) < EVEN) return text(`flush ${LOW[axis]} and ${HIGH[axis]}`);
  if (Math.abs(low - high) < EVEN) return text('middle on middle');
  if (Math.abs(low) < EVEN) return text(`flush at the ${LOW[axis]}`);
  if (Math.abs(high) < EVEN) return text(`flush at the ${HIGH[axis]}`);
  return low > 0
    ? line(both(lengthPair(low)), text(` in from the ${LOW[axis]} end`))
    : line(both(lengthPair(-low)), text(` beyond the ${LOW[axis]} end`));
}

/** A deck lies on the frame's outside edges: where it is flush with them, and how far it stands over. */
function overFrame(at: Seating, joined: readonly Met[]): readonly Html[] {
  const { placing } = at;
  const { frame, of } = at.stands;
  const box = of.get(placing.parts[0] ?? '')?.box;
  const borne = joined.filter((one) => isOutside(at, one) && one.seat.away?.[2] === 1);
  if (frame === null || box === undefined || borne.length < 2) return [];
  const sides = ([0, 1] as const).flatMap((axis) => {
    const { low, high } = inset(box, frame, axis);
    return [
      { name: LOW[axis] ?? '', by: -low },
      { name: HIGH[axis] ?? '', by: -high },
    ];
  });
  const flush = sides.filter(({ by }) => Math.abs(by) < EVEN).map(({ name }) => name);
  const over = sides.filter(({ by }) => by >= EVEN);
  return [
    ...(flush.length > 0 ? [line(text('flush with the frame '), listedAnd(flush.map(text)))] : []),
    ...over.map(({ name, by }) => line(both(lengthPair(by)), text(` over the frame at the ${name}`))),
  ];
}

/** How high a piece is that no joint holds at its height, from the edge of the frame that the builder can measure from. */
function heights({ placing, stands }: Seating, joined: readonly Met[]): readonly Html[] {
  const { frame, of } = stands;
  if (frame === null || placing.within !== null) return [];
  if (joined.some(({ seat }) => seat.away === null || seat.away[2] !== 0)) return [];
  const boxes = placing.parts.flatMap((id) => of.get(id)?.box ?? []);
  if (boxes.length === 0) return [];
  const { min, max } = boxRound(boxes.map((box) => ({ box })));
  const [low, high, under] = [min[2] - frame.min[2], max[2] - frame.min[2], frame.max[2] - max[2]];
  const over = isOver(placing);
  if (placing.path === 'first') return [firstOn(over ? under : low, over)];
  if (low < -EVEN) {
    if (Math.abs(under) < EVEN)
      return [text(over ? 'its upper end on the workbench' : 'its upper end level with the upper edge of the sides')];
    return [line(text('its upper end '), both(lengthPair(under)), text(' below the upper edge of the sides'))];
  }
  const datum = text(over ? ' below the underside of the sides, which is up now' : ' above the underside of the sides');
  if (placing.parts.length > 1) return [line(text('its lower edge '), both(lengthPair(low)), datum)];
  return [line(text('from '), both(lengthPair(low)), text(' to '), both(lengthPair(high)), datum)];
}

/** What the first piece stands on. */
function firstOn(up: number, over: boolean): Html {
  const edge = `its ${over ? 'upper' : 'lower'} edge`;
  if (Math.abs(up) < EVEN) return text(`${edge} on the workbench`);
  return line(text(`${edge} `), both(lengthPair(up)), text(' above the workbench, on packers'));
}
