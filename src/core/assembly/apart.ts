import type { Fastener } from '../stock/fastener.ts';
import type { Joint, Part } from '../stock/part.ts';
import { type Sentence, say } from '../units/say.ts';
import type { ComingApart, PoseName, TakingOff } from './assembly.ts';
import { type Body, joinedBody, type Link } from './body.ts';
import { type Move, orderOf } from './order.ts';
import { scene } from './scene.ts';

/** A bench as it stands, with what holds it. */
export type Standing = {
  readonly bodies: readonly Body[];
  readonly joints: readonly Joint[];
  readonly fasteners: readonly Fastener[];
  /** for the labels that are written on the wood */
  readonly parts: readonly Part[];
};

/**
 * How a finished bench comes apart for a move: bolted joints are loosened, what glue and screws hold stays together, and
 * so does what has no straight way out of that. Going back is the same list, read backwards.
 */
export function comingApart(standing: Standing): ComingApart {
  const { bodies, joints } = standing;
  const loosened = joints.filter(({ held }) => held === 'bolts');
  const { units, moves } = partsOf(standing);
  const inside = new Map(units.map((unit) => [unit.id, unit.ids]));
  let frame: PoseName = 'upright';
  const off = moves.map((move): TakingOff => {
    const parts = move.bodies.flatMap((id) => inside.get(id) ?? []);
    const lies: PoseName = move.up[2] > 0 ? 'upright' : 'upside-down';
    const turn = lies !== frame;
    frame = lies;
    const held = loosened.filter(({ between }) => between.some((id) => parts.includes(id))).map(({ id }) => id);
    const [x, y, z] = move.direction;
    return { parts, direction: [0 - x, 0 - y, 0 - z], loosened: held, frame: lies, turn };
  });
  const away = new Set(off.flatMap(({ parts }) => parts));
  const rest = bodies.map(({ id }) => id).filter((id) => !away.has(id));
  return {
    loosened: loosened.map(({ id }) => id),
    pieces: [rest, ...off.map(({ parts }) => parts)].filter((piece) => piece.length > 0),
    off,
    marks: marksOf(loosened, standing),
  };
}

const NONE = { id: '', ids: [] } as const;

type Unit = { readonly id: string; readonly ids: readonly string[] };

/** What stays together, and the moves that take the rest off the largest, one after the other; what is locked stays. */
function partsOf({ bodies, joints }: Standing): { readonly units: readonly Unit[]; readonly moves: readonly Move[] } {
  const byId = new Map(bodies.map((one) => [one.id, one]));
  const ids = bodies.map(({ id }) => id);
  const units = heldTogether(ids, joints.filter(fixed)).map(
    (members): Unit => ({ id: members[0] ?? '', ids: members }),
  );
  const owner = new Map(units.flatMap(({ id, ids: members }) => members.map((member) => [member, id])));
  const joined = units.map(({ id, ids: members }) =>
    joinedBody(
      id,
      members.flatMap((member) => byId.get(member) ?? []),
    ),
  );
  const links = joints.map(
    ({ id, between: [a, b] }): Link => ({ id, between: [owner.get(a) ?? a, owner.get(b) ?? b] }),
  );
  const stays = units.reduce((most, unit) => (unit.ids.length > most.ids.length ? unit : most), units[0] ?? NONE).id;
  const { moves } = orderOf(scene(joined, links), { up: [0, 0, 1], tilts: new Set(), stays });
  return { units, moves: moves.filter(({ path }) => path !== 'first').reverse() };
}

/** A panel that floats in its grooves is caught in them as soon as the glue round it has set. */
function fixed({ held, kind }: Joint): boolean {
  return held === 'glue' || held === 'screws' || (held === 'loose' && kind === 'groove');
}

/** A number beside every hole of a loosened joint, alike on both pieces, so that each bolt goes back where it was. */
function marksOf(loosened: readonly Joint[], { fasteners, parts }: Standing): readonly Sentence[] {
  const labels = new Map(parts.flatMap(({ places }) => places.map(({ id, label }) => [id, label])));
  let next = 1;
  return loosened.map(({ id, between }) => {
    const holes = Math.max(1, fasteners.filter(({ holds }) => holds === id).length);
    const numbers = Array.from({ length: holes }, (_, i) => String(next + i)).join(' and ');
    next += holes;
    const [a, b] = between.map((one) => labels.get(one) ?? one);
    const where = holes === 1 ? 'beside the hole' : 'each beside its hole';
    return say`Write ${numbers}, ${where}, on ${a ?? ''} and likewise on ${b ?? ''}, with an arrow up, before a bolt is drawn.`;
  });
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
