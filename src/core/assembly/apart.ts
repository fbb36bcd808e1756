import type { Joint } from '../stock/part.ts';
import { say } from '../units/say.ts';
import type { ComingApart } from './assembly.ts';
import type { Body } from './body.ts';

/** How a finished bench comes apart for a move: bolted joints are loosened, what glue and screws hold stays together. */
export function comingApart(bodies: readonly Body[], joints: readonly Joint[]): ComingApart {
  const loosened = joints.filter(({ held }) => held === 'bolts');
  const holding = joints.filter(({ held }) => held === 'glue' || held === 'screws');
  const pieces = heldTogether(
    bodies.map(({ id }) => id),
    holding,
  );
  return {
    loosened: loosened.map(({ id }) => id),
    pieces,
    marks: loosened.map(
      ({ between: [a, b] }, i) =>
        say`Write ${String(i + 1)} beside the hole on ${a} and on ${b}, an arrow up and the end it points to, before the bolt is drawn.`,
    ),
  };
}

/** Sets of ids that joints hold together, each in the order given. */
function heldTogether(ids: readonly string[], holding: readonly Joint[]): readonly (readonly string[])[] {
  const set = new Map(ids.map((id) => [id, id]));
  const root = (id: string): string => {
    let at = id;
    for (let up = set.get(at); up !== undefined && up !== at; up = set.get(at)) at = up;
    return at;
  };
  for (const { between } of holding) {
    const [a, b] = [root(between[0]), root(between[1])];
    if (set.has(a) && set.has(b)) set.set(b, a);
  }
  const groups = new Map<string, string[]>();
  for (const id of ids) groups.set(root(id), [...(groups.get(root(id)) ?? []), id]);
  return [...groups.values()];
}
