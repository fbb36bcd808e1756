import { centroid } from '../core/geometry/polygon.ts';
import { standing, toWorld } from '../core/geometry/pose.ts';
import type { Point } from '../core/geometry/shapes.ts';
import { fixPlace } from '../core/log/fix-place.ts';
import type { FixLine } from '../core/log/fixes.ts';
import type { HiddenState } from '../core/log/hidden.ts';
import type { Request } from '../core/stock/part.ts';
import { stanceAlong } from '../core/track/line.ts';
import { benchBays, benchWalls } from '../core/wiring/bench-bays.ts';
import { type Bay, bayAt, bayName, nearestBay } from '../core/wiring/routing/bays.ts';
import { wiresBelow } from './below-words.ts';
import type { Html } from './html.ts';
import type { Book } from './notebooks.ts';
import { at } from './paths.ts';
import { plainName } from './words.ts';

/** A spot of the layout: a clear cell between boards under the deck, with what is at it and over it. Notebook mm. */
export type Place = {
  readonly bay: Bay;
  /** `Bay 2-1`, as on the drawings */
  readonly name: string;
  /** `2 of 4 from the left, at the front` */
  readonly where: string;
  /** instances of the boards round it */
  readonly walls: readonly string[];
  readonly requests: readonly Request[];
  /** drawers, legs, shelves and motors whose space reaches in, by id */
  readonly spaces: readonly string[];
  /** named things of track and land over it */
  readonly over: readonly string[];
  readonly fixes: readonly { readonly number: number; readonly fix: FixLine }[];
  readonly hidden: readonly HiddenState[];
  /** what the wiring has there, in words */
  readonly wires: readonly Html[];
};

type Range = readonly [number, number];
type Boxed = { readonly min: readonly number[]; readonly max: readonly number[] };

function touches(a: Range, b: Range): boolean {
  return Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > -1;
}

function meets({ x, y }: Pick<Bay, 'x' | 'y'>, low: Point, high: Point): boolean {
  return touches(x, [low[0], high[0]]) && touches(y, [low[1], high[1]]);
}

/** A box in bench or notebook coordinates over its bench's place; benches square to the notebook. */
function reaches(bay: Bay, { min, max }: Boxed, [dx, dy]: Point): boolean {
  return meets(bay, [(min[0] ?? 0) + dx, (min[1] ?? 0) + dy], [(max[0] ?? 0) + dx, (max[1] ?? 0) + dy]);
}

function originOf(book: Book, bench: string): Point {
  const place = book.notebook.benches.find(({ id }) => id === bench)?.place;
  return [place?.x ?? 0, place?.y ?? 0];
}

/** Where a named thing lies, seen from above; null when nothing of that name has a place. */
export function whereabouts(book: Book, id: string): Point | null {
  const { benches, parts, scenery, track } = book.notebook;
  for (const part of parts) {
    const place = part.places.find((one) => one.id === id);
    const bench = benches.find((one) => one.id === part.bench);
    if (place === undefined || bench === undefined) continue;
    const { length, width } = part.blank;
    const [x, y, z] = toWorld(place.pose, [length / 2, width / 2, 0]);
    const [wx, wy] = toWorld(standing([bench.place.x, bench.place.y], bench.place.turn), [x, y, z]);
    return [wx, wy];
  }
  const water = scenery?.water.find((one) => one.id === id);
  if (water !== undefined) return centroid({ outline: water.outline, holes: [] });
  const straight = (scenery?.sections ?? []).filter((one) => one.line === null);
  const section = straight.find((one) => one.id === id || one.id.startsWith(`${id}-`));
  if (section !== undefined) return highestOf(section);
  const turnout = track?.turnouts.find((one) => one.id === id);
  return turnout === undefined ? null : [turnout.place.x, turnout.place.y];
}

type Section = { readonly from: Point; readonly to: Point; readonly heights: readonly Point[] };

/** The place of a section's highest ground. */
function highestOf({ from, to, heights }: Section): Point {
  const top = heights.reduce((best, one) => (one[1] > best[1] ? one : best), heights[0] ?? [0, 0]);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const share = top[0] / length;
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
}

/** Steps along a line at which it is looked where it is, mm. */
const LOOK = 20;

function linesOver(book: Book, bay: Bay): readonly string[] {
  return (book.notebook.track?.lines ?? [])
    .filter((line) => {
      const looks = Array.from({ length: Math.ceil(line.length / LOOK) + 1 }, (_, i) => i * LOOK);
      return looks.some((along) => {
        const stance = stanceAlong(line, along);
        return stance !== null && bayAt([bay], [stance.x, stance.y]) !== null;
      });
    })
    .map(({ id }) => `line ${plainName(id)}`);
}

function landOver(book: Book, bay: Bay): readonly string[] {
  const { scenery, track } = book.notebook;
  const waters = (scenery?.water ?? []).filter(({ outline }) => {
    const xs = outline.map(([x]) => x);
    const ys = outline.map(([, y]) => y);
    return meets(bay, [Math.min(...xs), Math.min(...ys)], [Math.max(...xs), Math.max(...ys)]);
  });
  const turnouts = (track?.turnouts ?? []).filter(({ place }) => bayAt([bay], [place.x, place.y]) !== null);
  return [...turnouts.map(({ id }) => `turnout ${id}`), ...waters.map(({ id }) => plainName(id))];
}

function fixesAt(book: Book, bay: Bay): Place['fixes'] {
  const { parts, state } = book.notebook;
  const [dx, dy] = originOf(book, bay.bench);
  const own = parts.filter((part) => part.bench === bay.bench);
  return state.fixes.flatMap((fix, i) => {
    if (!fix.stands) return [];
    const spot = fixPlace(own, fix);
    if (spot === null) return [];
    // A fix is in a board of the bay's edge as a rule: it shows in every bay it is a hand's width from.
    const near = 20;
    const low: Point = [spot[0] + dx - near, spot[1] + dy - near];
    return meets(bay, low, [low[0] + 2 * near, low[1] + 2 * near]) ? [{ number: i + 1, fix }] : [];
  });
}

/** The bay a hidden space belongs to: the one it is named after or lies over; null when it is tied to none. */
function bayOfHidden(book: Book, bays: readonly Bay[], id: string): Bay | null {
  const named = bays.find((bay) => bay.id === id);
  const spot = named === undefined ? whereabouts(book, id) : null;
  return named ?? (spot === null ? null : (nearestBay(bays, spot)?.bay ?? null));
}

function rowWords(row: number, rows: number): string {
  if (rows === 1) return '';
  if (row === 1) return ', at the front';
  return row === rows ? ', at the back' : `, row ${row} from the front`;
}

/** Where one finds a bay, standing before the front. */
function bayWhere(bays: readonly Bay[], bay: Bay): string {
  const mine = bays.filter(({ bench }) => bench === bay.bench);
  const [columns, rows] = [Math.max(...mine.map(({ column }) => column)), Math.max(...mine.map(({ row }) => row))];
  return `${bay.column} of ${columns} from the left${rowWords(bay.row, rows)}`;
}

/** Every place of a notebook with what is at, under and over it. */
export function placesOf(book: Book): readonly Place[] {
  const { envelopes, requests, state, track } = book.notebook;
  const walls = benchWalls(book.notebook);
  const bays = benchBays(book.notebook);
  const homes = new Map(state.hidden.map(({ id }) => [id, bayOfHidden(book, bays, id)?.id ?? null]));
  return bays.map((bay) => {
    const mine = walls.filter(({ along, bench, faces, span }) => {
      const [x, y] = along === 'x' ? [span, faces] : [faces, span];
      return bench === bay.bench && touches(bay.x, x) && touches(bay.y, y);
    });
    const spaces = [
      ...envelopes.filter((one) => reaches(bay, one, originOf(book, bay.bench))),
      ...(track?.envelopes ?? []).filter((one) => reaches(bay, one, [0, 0])),
    ];
    return {
      bay,
      name: bayName(bay.id),
      where: bayWhere(bays, bay),
      walls: mine.map(({ part }) => part),
      requests: requests.filter(
        ({ at: [x, y], part }) => meets(bay, [x - 20, y - 20], [x + 20, y + 20]) && part !== '',
      ),
      spaces: [...new Set(spaces.map(({ id }) => id))],
      over: [...linesOver(book, bay), ...landOver(book, bay)],
      fixes: fixesAt(book, bay),
      hidden: state.hidden.filter(({ id }) => homes.get(id) === bay.id),
      wires: wiresBelow(book, bay.id),
    };
  });
}

/** The page of a bay. */
export function placeAddress(book: Book, bay: string): string {
  return at(book.notebook.slug, 'places', bay);
}
