import type { Vector } from '../geometry/shapes.ts';
import { times } from '../geometry/vector.ts';
import type { Joint } from '../stock/part.ts';
import type { Packer } from './assembly.ts';
import type { Body } from './body.ts';
import type { Move } from './order.ts';
import { gapAlong } from './play.ts';

/** A part nearer to the bench than this lies on it, mm. */
const LYING = 0.05;
/** Joints that only close while the parts are held at their height; what is screwed to a face is held by its screws. */
const LET_IN: readonly Joint['kind'][] = ['lap', 'dado', 'rabbet', 'groove'];
/** What rests on a part that is in place needs no packer, mm. */
const RESTING = 1e-6;

type Hanging = { readonly body: Body; readonly height: number };

/** What a bench is built from: every body, its joints, and the moves in their order. */
export type Build = {
  readonly bodies: readonly Body[];
  readonly joints: readonly Joint[];
  readonly moves: readonly Move[];
};

/**
 * Packers for a flat bench: one under each end of every part that hangs clear of it with nothing below it yet, and one
 * under every lap of two such parts. Only moves before the first turn count, since what is glued then holds itself.
 */
export function packersOf({ bodies, joints, moves }: Build, home: Vector): readonly Packer[] {
  const turn = moves.findIndex(({ up }) => up[2] !== home[2]);
  const early = turn < 0 ? moves : moves.slice(0, turn);
  const letIn = new Set(joints.filter(({ kind }) => LET_IN.includes(kind)).flatMap(({ between }) => between));
  const core = early.flatMap((move) => (move.bodies.length === 1 ? move.bodies : [])).filter((id) => letIn.has(id));
  const placed = core.flatMap((id) => bodies.find((one) => one.id === id) ?? []);
  const base = placed.reduce((low, one) => Math.min(low, lowest(one, home)), Number.POSITIVE_INFINITY);
  const hanging = placed.flatMap((one, i): readonly Hanging[] => {
    const height = lowest(one, home) - base;
    return height > LYING && !rests(one, placed.slice(0, i), home) ? [{ body: one, height }] : [];
  });
  return [...hanging.flatMap(endPackers), ...crossingPackers(hanging, joints)];
}

function lowest({ box }: Body, up: Vector): number {
  return up[2] > 0 ? box.min[2] : -box.max[2];
}

function rests(one: Body, below: readonly Body[], home: Vector): boolean {
  const down = times(home, -1);
  return below.some((other) => {
    const gap = gapAlong(one, other, down);
    return gap !== null && gap <= RESTING;
  });
}

function endPackers({ body: { id, box }, height }: Hanging): readonly Packer[] {
  const middle = (i: 0 | 1) => (box.min[i] + box.max[i]) / 2;
  const lengthwise = box.max[0] - box.min[0] >= box.max[1] - box.min[1];
  return lengthwise
    ? [
        { part: id, where: 'left end', at: [box.min[0], middle(1)], height },
        { part: id, where: 'right end', at: [box.max[0], middle(1)], height },
      ]
    : [
        { part: id, where: 'front end', at: [middle(0), box.min[1]], height },
        { part: id, where: 'back end', at: [middle(0), box.max[1]], height },
      ];
}

function crossingPackers(hanging: readonly Hanging[], joints: readonly Joint[]): readonly Packer[] {
  return hanging.flatMap(({ body, height }, i) =>
    hanging.slice(i + 1).flatMap((later): readonly Packer[] => {
      const meet = joints.some(({ kind, between }) => kind === 'lap' && joins(between, [body.id, later.body.id]));
      if (!meet) return [];
      const [a, b] = [body.box, later.body.box];
      const middle = (k: 0 | 1) => (Math.max(a.min[k], b.min[k]) + Math.min(a.max[k], b.max[k])) / 2;
      const lower = Math.min(height, later.height);
      return [{ part: body.id, where: `crossing ${later.body.id}`, at: [middle(0), middle(1)], height: lower }];
    }),
  );
}

function joins([a, b]: readonly [string, string], [c, d]: readonly [string, string]): boolean {
  return (a === c && b === d) || (a === d && b === c);
}
