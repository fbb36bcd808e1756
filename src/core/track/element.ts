import type { Point } from '../geometry/shapes.ts';
import { curvatureAt, moveAlong, moved, type Stance, type Stretch, turnAfter } from './stretch.ts';

/** One straight, arc or easement of a laid line; notebook coordinates, mm and radians. */
export type Element = {
  readonly kind: 'straight' | 'arc' | 'easement';
  /** piece of the line it belongs to, from 0 */
  readonly piece: number;
  /** turnout it lies in */
  readonly turnout: string | null;
  /** of the middle line it runs beside; its own start when `aside` is 0 */
  readonly base: Stance;
  readonly stretch: Stretch;
  /** how far to the left of its base it runs, mm */
  readonly aside: number;
  /** distance of its start from the line's start */
  readonly from: number;
  /** its own length */
  readonly length: number;
};

/** What a stretch is. */
export function kindOf({ k0, k1 }: Stretch): Element['kind'] {
  if (k0 !== k1) return 'easement';
  return k0 === 0 ? 'straight' : 'arc';
}

/** Length of the first `s` of a stretch when it runs `aside` to the left of it: s less aside times the turn; mm. */
export function lengthBeside(stretch: Stretch, aside: number, s: number): number {
  return s - aside * turnAfter(stretch, s);
}

/** Distance along the base below a place `own` mm along the element itself. */
function alongBase({ stretch, aside, length }: Element, own: number): number {
  if (aside === 0) return own;
  const { k0, k1 } = stretch;
  const [a, b] = [(aside * (k1 - k0)) / (2 * stretch.length), 1 - aside * k0];
  // own = b s - a s^2, solved without loss for small a
  const root = Math.sqrt(Math.max(0, b * b - 4 * a * own));
  return Math.min(stretch.length, Math.max(0, length === 0 ? 0 : (2 * own) / (b + root)));
}

/** Where an element is `own` mm after its start, and its heading. */
export function stanceOn(element: Element, own: number): Stance {
  const at = moved(element.base, moveAlong(element.stretch, alongBase(element, own)));
  const { aside } = element;
  if (aside === 0) return at;
  return { ...at, x: at.x - aside * Math.sin(at.heading), y: at.y + aside * Math.cos(at.heading) };
}

/** Curvature of the element itself, 1/mm, positive to the left: k / (1 - aside k). */
export function curvatureOn(element: Element, own: number): number {
  const k = curvatureAt(element.stretch, alongBase(element, own));
  return k / (1 - element.aside * k);
}

/** Sharpest radius of an element, mm; Infinity for a straight. */
export function sharpest(element: Element): number {
  const k = Math.max(Math.abs(curvatureOn(element, 0)), Math.abs(curvatureOn(element, element.length)));
  return k === 0 ? Number.POSITIVE_INFINITY : 1 / k;
}

/** Places along an element where its heading is `wanted`, give or take half turns; mm. */
export function placesHeading(element: Element, wanted: number): readonly number[] {
  const { base, stretch, aside } = element;
  const { length, k0, k1 } = stretch;
  const most = Math.abs(turnAfter(stretch, length)) + (Math.abs(k0) + Math.abs(k1)) * length;
  if (most === 0) return [];
  const first = Math.ceil((base.heading - wanted - most) / Math.PI);
  const count = Math.floor((2 * most) / Math.PI) + 1;
  const turns = Array.from({ length: count }, (_, i) => wanted + (first + i) * Math.PI - base.heading);
  return turns.flatMap((turn) => placesTurned({ length, k0, k1 }, turn)).map((s) => lengthBeside(stretch, aside, s));
}

/** Where k0 s + (k1 - k0) s^2 / 2L = turn. */
function placesTurned({ length, k0, k1 }: Stretch, turn: number): readonly number[] {
  const a = (k1 - k0) / (2 * length);
  const root = k0 * k0 + 4 * a * turn;
  if (root < 0) return [];
  const sum = k0 < 0 ? k0 - Math.sqrt(root) : k0 + Math.sqrt(root);
  const found = [...(sum === 0 ? [] : [(2 * turn) / sum]), ...(a === 0 ? [] : [-sum / (2 * a)])];
  return found.filter((s) => s > 0 && s < length);
}

/** Points along an element, closer together where it bends: no chord leaves it by more than `within`; mm. */
export function pointsOn(element: Element, { within, apart }: { readonly within: number; readonly apart: number }) {
  const radius = sharpest(element);
  const step = Math.min(apart, Number.isFinite(radius) ? Math.sqrt(8 * radius * within) : apart);
  const count = Math.max(1, Math.ceil(element.length / step));
  return Array.from({ length: count + 1 }, (_, i) => {
    const own = (element.length * i) / count;
    const { x, y, heading } = stanceOn(element, own);
    const point: Point = [x, y];
    return { at: element.from + own, point, heading };
  });
}
