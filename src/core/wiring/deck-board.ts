import { bounds, holds } from '../geometry/polygon.ts';
import { fromWorld, standing, toWorld } from '../geometry/pose.ts';
import type { Point, Polygon, Pose } from '../geometry/shapes.ts';
import { distance, nearestOnStraight } from '../geometry/straight.ts';
import { HOLE_FROM_CUT } from '../stock/cut-limits.ts';
import { partOutline } from '../stock/outline.ts';
import type { ComesDown } from './clear-way.ts';
import type { WiringGround } from './input.ts';
import { OFF_SCREW } from './routing/site.ts';

/** One board of a deck as it lies on its bench: its wood from above in the bench's coordinates, mm. */
export type DeckBoard = {
  /** the instance */
  readonly id: string;
  /** of its bench in the notebook */
  readonly bench: Pose;
  readonly wood: Polygon;
  /** its left end and its front edge as cut */
  readonly low: Point;
  readonly screws: readonly { readonly at: Point; readonly diameter: number }[];
};

type Ground = Pick<WiringGround, 'benches' | 'parts' | 'fasteners'>;

/** Every board of every deck. */
export function deckBoards({ benches, fasteners = [], parts }: Ground): readonly DeckBoard[] {
  return parts
    .filter(({ role }) => role === 'deck')
    .flatMap((part) => {
      const own = benches.find(({ id }) => id === part.bench);
      if (own === undefined) return [];
      const { holes, outline } = partOutline(part);
      return part.places.map(({ id, pose }): DeckBoard => {
        const lie = (loop: readonly Point[]) => loop.map(([x, y]) => flat(toWorld(pose, [x, y, 0])));
        const wood = { outline: lie(outline), holes: holes.map(lie) };
        const screws = fasteners.filter(({ through }) => through.includes(id));
        return {
          ...{ id, bench: standing([own.place.x, own.place.y], own.place.turn), wood, low: bounds(wood.outline).low },
          screws: screws.map(({ diameter, head }) => ({ at: flat(head), diameter })),
        };
      });
    });
}

/** The board that has wood at a point of the notebook; null for none. */
export function boardAt(boards: readonly DeckBoard[], point: Point): DeckBoard | null {
  return boards.find((board) => holds(board.wood, onBench(board, point))) ?? null;
}

/** A point of the notebook from a board's left end and its front edge, seen from before its bench; mm. */
export function fromLeftAndFront(board: DeckBoard, point: Point): Point {
  const [x, y] = onBench(board, point);
  return [x - board.low[0], y - board.low[1]];
}

/** Whether a hole through the deck has wood all round: clear of a board's edges and cuts, and of its screws; mm. */
export function takesHole(boards: readonly DeckBoard[], diameter: number): ComesDown {
  return (point) => boards.every((board) => isClear(board, onBench(board, point), diameter / 2));
}

/** Off every edge of the board, whether in its wood or beside it, and off its screws. */
function isClear({ screws, wood }: DeckBoard, at: Point, radius: number): boolean {
  const edge = [wood.outline, ...wood.holes].every((loop) =>
    loop.every((to, i) => distance(at, nearestOnStraight(loop.at(i - 1) ?? to, to, at)) - radius >= HOLE_FROM_CUT),
  );
  return edge && screws.every((screw) => distance(at, screw.at) - screw.diameter / 2 - radius >= OFF_SCREW);
}

function onBench({ bench }: DeckBoard, [x, y]: Point): Point {
  return flat(fromWorld(bench, [x, y, 0]));
}

function flat([x, y]: readonly number[]): Point {
  return [x ?? 0, y ?? 0];
}
