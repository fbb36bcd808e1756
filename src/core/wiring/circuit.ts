import { type Factors, factored, solved } from './linear.ts';

/**
 * A resistance between two nodes, ohm. Nothing resists at 0: its nodes are then one. In a layout both wires of a pair run
 * together, so one branch stands for both of them, there and back.
 */
export type Branch = { readonly id: string; readonly from: string; readonly to: string; readonly ohm: number };

/** Branches with the node that holds the source; currents are drawn out at nodes and come back at the source. */
export type Circuit = { readonly source: string; readonly branches: readonly Branch[] };

/** A circuit ready to be asked. Drops are from the source, V; a node the source does not reach has none. */
export type Network = {
  readonly circuit: Circuit;
  /** the node that stands for each node's group of joined nodes */
  readonly root: ReadonlyMap<string, string>;
  readonly index: ReadonlyMap<string, number>;
  readonly factors: Factors | null;
};

/** Currents drawn at nodes, A. */
export type Draws = Readonly<Record<string, number>>;

/** The circuit with its matrix of conductances factored (nodal analysis, Kirchhoff's current law). */
export function network(circuit: Circuit): Network {
  const root = joinedNodes(circuit);
  const own = (node: string) => root.get(node) ?? node;
  const real = circuit.branches.filter(({ from, to, ohm }) => ohm > 0 && own(from) !== own(to));
  const reached = reachedFrom(own(circuit.source), real, own);
  const nodes = [...reached].filter((node) => node !== own(circuit.source));
  const index = new Map(nodes.map((node, i) => [node, i]));
  const matrix = nodes.map(() => nodes.map(() => 0));
  const add = (i: number | undefined, j: number | undefined, by: number) => {
    const row = i === undefined ? undefined : matrix[i];
    if (row !== undefined && j !== undefined) row[j] = (row[j] ?? 0) + by;
  };
  for (const { from, to, ohm } of real) {
    const [i, j] = [index.get(own(from)), index.get(own(to))];
    for (const [a, b] of [
      [i, i],
      [j, j],
    ] as const)
      add(a, b, 1 / ohm);
    for (const [a, b] of [
      [i, j],
      [j, i],
    ] as const)
      add(a, b, -1 / ohm);
  }
  return { circuit, root, index, factors: factored(matrix) };
}

function joinedNodes({ source, branches }: Circuit): ReadonlyMap<string, string> {
  const parent = new Map<string, string>();
  for (const node of [source, ...branches.flatMap(({ from, to }) => [from, to])]) parent.set(node, node);
  const find = (node: string): string => {
    const up = parent.get(node) ?? node;
    return up === node ? node : find(up);
  };
  for (const { from, to, ohm } of branches) if (ohm === 0) parent.set(find(from), find(to));
  return new Map([...parent.keys()].map((node) => [node, find(node)]));
}

function reachedFrom(start: string, branches: readonly Branch[], own: (node: string) => string): ReadonlySet<string> {
  const beside = new Map<string, string[]>();
  for (const { from, to } of branches) {
    for (const [a, b] of [
      [own(from), own(to)],
      [own(to), own(from)],
    ] as const)
      beside.set(a, [...(beside.get(a) ?? []), b]);
  }
  const seen = new Set([start]);
  for (const node of seen) for (const next of beside.get(node) ?? []) seen.add(next);
  return seen;
}

/** Whether the source feeds a node at all. */
export function isFed(net: Network, node: string): boolean {
  const own = net.root.get(node);
  return own !== undefined && (own === net.root.get(net.circuit.source) || net.index.has(own));
}

/** The voltage lost between the source and each node for what is drawn, V; nodes that are not fed are left out. */
export function drops(net: Network, draws: Draws): ReadonlyMap<string, number> {
  const wanted = [...net.index.keys()].map(() => 0);
  for (const [node, amps] of Object.entries(draws)) {
    const i = net.index.get(net.root.get(node) ?? node);
    if (i !== undefined) wanted[i] = (wanted[i] ?? 0) + amps;
  }
  const lost = net.factors === null ? [] : solved(net.factors, wanted);
  const source = net.root.get(net.circuit.source);
  return new Map(
    [...net.root].flatMap(([node, own]) => {
      const i = net.index.get(own);
      if (own === source) return [[node, 0] as const];
      return i === undefined ? [] : [[node, lost[i] ?? 0] as const];
    }),
  );
}

/** Resistance of the loop from the source to a node and back, ohm; null where it is not fed. */
export function loopResistance(net: Network, node: string): number | null {
  return drops(net, { [node]: 1 }).get(node) ?? null;
}

/** Current through each branch, from `from` to `to`, for the drops at its ends; A. Branches of no resistance are left out. */
export function branchAmps({ circuit }: Network, lost: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  return new Map(
    circuit.branches.flatMap(({ id, from, to, ohm }) => {
      const [a, b] = [lost.get(from), lost.get(to)];
      return ohm === 0 || a === undefined || b === undefined ? [] : [[id, (b - a) / ohm] as const];
    }),
  );
}
