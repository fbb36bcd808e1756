import { type Draws, drops, type Network } from './circuit.ts';

/** A place on a branch: its share of the way from `from` to `to`, 0 to 1. */
export type Spot = { readonly branch: string; readonly share: number };

/** What a place on a branch loses, as a quadratic of its share of the way: a + b s + c s^2; ohm or V. */
type Quadratic = { readonly a: number; readonly b: number; readonly c: number };

function at({ a, b, c }: Quadratic, s: number): number {
  return a + b * s + c * s * s;
}

/**
 * Answers for every place along one branch. A current drawn at share s is the same as (1 - s) of it drawn at its start
 * and s at its end, and the branch's own s (1 - s) R besides (superposition), so the loop to a place is exact:
 * R(s) = (1-s)^2 Raa + 2 s (1-s) Rab + s^2 Rbb + s (1-s) R.
 */
export type BranchLine = {
  readonly branch: string;
  readonly loop: Quadratic;
  /** what the loads elsewhere already take */
  readonly loads: Quadratic;
};

/** The loop resistance and the loads' drop along a branch; null where it is not fed at both ends. */
export function alongBranch(net: Network, id: string, loads: Draws): BranchLine | null {
  const branch = net.circuit.branches.find((one) => one.id === id);
  if (branch === undefined) return null;
  const [fromUnit, toUnit] = [drops(net, { [branch.from]: 1 }), drops(net, { [branch.to]: 1 })];
  const lost = drops(net, loads);
  const [aa, ab, bb] = [fromUnit.get(branch.from), fromUnit.get(branch.to), toUnit.get(branch.to)];
  const [la, lb] = [lost.get(branch.from), lost.get(branch.to)];
  if (aa === undefined || ab === undefined || bb === undefined || la === undefined || lb === undefined) return null;
  const loop = { a: aa, b: 2 * (ab - aa) + branch.ohm, c: aa - 2 * ab + bb - branch.ohm };
  return { branch: id, loop, loads: { a: la, b: lb - la, c: 0 } };
}

/** What is lost at a place for `amps` drawn there, V. */
export function lostAt({ loop, loads }: BranchLine, share: number, amps: number): number {
  return at(loads, share) + amps * at(loop, share);
}

/** Where along a branch most is lost, and how much. */
export function worstAlong(line: BranchLine, amps: number): { readonly share: number; readonly lost: number } {
  const b = line.loads.b + amps * line.loop.b;
  const c = line.loads.c + amps * line.loop.c;
  const top = c < 0 ? Math.min(1, Math.max(0, -b / (2 * c))) : 0;
  const shares = [0, top, 1].map((share) => ({ share, lost: lostAt(line, share, amps) }));
  return shares.reduce((worst, one) => (one.lost > worst.lost + 1e-12 ? one : worst));
}
