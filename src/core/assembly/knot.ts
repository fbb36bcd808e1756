import { comesApart, type Manner, orderOf } from './order.ts';
import { names, type Scene, sceneOf, sceneWithout } from './scene.ts';

/** Bodies of which none can be left out without unlocking the rest, and what would free them. */
export type Knot = {
  readonly bodies: readonly string[];
  /** pairs that free the whole set if their joint is left open, each on its own */
  readonly freedBy: readonly (readonly [string, string])[];
};

/** The smallest set within a locked one that no move takes apart, found by leaving out one body after the other. */
export function knotOf(at: Scene, locked: readonly number[], manner: Manner): Knot {
  const core = [...locked].reduce((kept, candidate) => without(at, kept, { candidate, manner }), [...locked]);
  const members = core.sort((a, b) => a - b);
  return { bodies: names(at, members), freedBy: freeing(sceneOf(at, members), manner) };
}

type Leaving = { readonly candidate: number; readonly manner: Manner };

/** What stays locked once a body is left out; all of it when the rest then comes apart. */
function without(at: Scene, kept: readonly number[], { candidate, manner }: Leaving): number[] {
  const rest = kept.filter((member) => member !== candidate);
  if (rest.length === kept.length) return [...kept];
  const [still] = orderOf(sceneOf(at, rest), manner).locked;
  return still === undefined ? [...kept] : still.flatMap((i) => rest[i] ?? []);
}

function freeing(knot: Scene, manner: Manner): readonly (readonly [string, string])[] {
  const pairs = knot.bodies.flatMap((_, i) => knot.bodies.slice(i + 1).map((_b, k) => [i, i + 1 + k] as const));
  return pairs
    .filter(([i, j]) => knot.graphs.some(({ blocks }) => blocks[i]?.includes(j) === true))
    .filter((pair) => comesApart(sceneWithout(knot, [pair]), manner))
    .map(([i, j]) => [knot.bodies[i]?.id ?? '', knot.bodies[j]?.id ?? ''] as const);
}
