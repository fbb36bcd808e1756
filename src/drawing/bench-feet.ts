import type { Vector } from '../core/geometry/shapes.ts';
import { dot } from '../core/geometry/vector.ts';
import type { BenchAsk } from './bench-stage.ts';
import { isLeg } from './leg-groups.ts';
import { extentOfSeen, fromAbove, type Gaze, placedParts, type Seen, seen } from './scene.ts';

/** A foot on a thread: where the leg's end over it is, and the thread's diameter; mm. */
export type Foot = { readonly id: string; readonly at: Vector; readonly thread: number };

type Standing = Pick<BenchAsk, 'notebook' | 'bench'>;

/** A pad's height, and its width and its nut's as multiples of the thread; common practice, no source. */
const PAD = 10;
const WIDE = 4;
const NUT = 1.8;

/** The middles of a leg's ends: of each end where it has as many feet, else of all of them together. */
function endsOf(wood: readonly Seen[], count: number): readonly Vector[] {
  const low = Math.min(...wood.map(({ far }) => far));
  const boxes = wood.filter(({ far }) => far < low + 0.1).map(extentOfSeen);
  const middle = (some: typeof boxes): Vector => {
    const across = (axis: 0 | 1) =>
      (Math.min(...some.map((box) => box.low[axis])) + Math.max(...some.map((box) => box.high[axis]))) / 2;
    return [across(0), across(1), low];
  };
  return boxes.length === count ? boxes.map((box) => middle([box])) : [middle(boxes)];
}

/** The feet that a bench's legs stand on, by their hardware. */
export function feetOf({ notebook: { parts, hardware, stock }, bench }: Standing): readonly Foot[] {
  const wood = placedParts(parts.filter((part) => part.bench === bench.id)).map((one) => seen(one, fromAbove));
  const feet = (stock ?? []).filter((one) => one.kind === 'hardware').filter(({ form }) => form === 'foot');
  const uses = (hardware ?? []).filter(({ item }) => feet.some(({ id }) => id === item));
  return [...new Set(uses.map(({ where }) => where))].flatMap((leg) => {
    const own = uses.filter(({ where }) => where === leg);
    const pieces = wood.filter((piece) => isLeg(piece) && piece.id.startsWith(`${leg}.`));
    const thread = feet.find(({ id }) => id === own[0]?.item)?.diameter;
    if (pieces.length === 0 || thread === undefined || thread === null) return [];
    const count = own.reduce((sum, { quantity }) => sum + quantity, 0);
    return endsOf(pieces, count).map((at, i): Foot => ({ id: `${leg}.foot-${i + 1}`, at, thread }));
  });
}

type Block = { readonly low: number; readonly high: number; readonly ahead: number };

/** The feet as they are seen: a pad on the floor, the thread from it to the leg's end, a nut in its middle. */
export function seenFeet(ask: Standing, gaze: Gaze): readonly Seen[] {
  return feetOf(ask).flatMap(({ id, at, thread }) => {
    const [u, top, near] = [dot(at, gaze.right), at[2], dot(at, gaze.toward)];
    const pad = Math.min(PAD, 0.6 * top);
    const block = (name: string, half: number, { low, high, ahead }: Block): Seen => ({
      ...{ id: `${id}.${name}`, label: '', role: 'foot', near: near + ahead, far: near - 1 },
      areas: [
        {
          outline: [
            [u - half, low],
            [u + half, low],
            [u + half, high],
            [u - half, high],
          ],
          holes: [],
        },
      ],
    });
    const [nut, half] = [(pad + top) / 2, (top - pad) / 6];
    return [
      block('thread', thread / 2, { low: pad, high: top, ahead: 0 }),
      block('nut', (NUT * thread) / 2, { low: nut - half, high: nut + half, ahead: 1 }),
      block('pad', (WIDE * thread) / 2, { low: 0, high: pad, ahead: 2 }),
    ];
  });
}
