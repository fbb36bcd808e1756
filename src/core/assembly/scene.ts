import type { Vector } from '../geometry/shapes.ts';
import { type Blocking, blockings } from './blocking.ts';
import type { Body, Link } from './body.ts';
import { directionsOf } from './directions.ts';

/** What stands, who blocks whom along each direction, and who is joined to whom; indices into `bodies`. */
export type Scene = {
  readonly bodies: readonly Body[];
  readonly graphs: readonly Blocking[];
  readonly joined: readonly (readonly number[])[];
};

export function scene(bodies: readonly Body[], links: readonly Link[]): Scene {
  const index = new Map(bodies.map((one, i) => [one.id, i]));
  const joined = bodies.map((): number[] => []);
  for (const { between } of links) {
    const [a, b] = [index.get(between[0]), index.get(between[1])];
    if (a === undefined || b === undefined || a === b) continue;
    joined[a]?.push(b);
    joined[b]?.push(a);
  }
  return { bodies, graphs: blockings(bodies, directionsOf(bodies)), joined };
}

/** The scene with nothing in each other's way between given pairs: what it would be, were those joints left open. */
export function sceneWithout(at: Scene, pairs: readonly (readonly [number, number])[]): Scene {
  const freed = (i: number, j: number) => pairs.some(([a, b]) => (a === i && b === j) || (a === j && b === i));
  const graphs = at.graphs.map(({ direction, blocks }) => ({
    direction,
    blocks: blocks.map((others, i) => others.filter((j) => !freed(i, j))),
  }));
  return { ...at, graphs };
}

/** The part of a scene that some of its bodies make, with their new indices. */
export function sceneOf(at: Scene, members: readonly number[]): Scene {
  const place = new Map(members.map((member, i) => [member, i]));
  const only = (others: readonly number[]) => others.flatMap((j) => place.get(j) ?? []);
  return {
    bodies: members.flatMap((member) => at.bodies[member] ?? []),
    graphs: at.graphs.map(({ direction, blocks }) => ({
      direction,
      blocks: members.map((member) => only(blocks[member] ?? [])),
    })),
    joined: members.map((member) => only(at.joined[member] ?? [])),
  };
}

export function names(at: Scene, members: Iterable<number>): readonly string[] {
  return [...members].flatMap((member) => at.bodies[member]?.id ?? []);
}

export function opposite(d: Vector): Vector {
  return [0 - d[0], 0 - d[1], 0 - d[2]];
}
