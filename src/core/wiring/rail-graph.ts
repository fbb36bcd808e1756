import type { Metal } from './metal.ts';
import type { RailPlan } from './rail-plan.ts';

/**
 * Rails as a graph with signs. A vertex is metal with a direction of its own: a turnout from its points out, or a plain
 * joint. An edge is a length of rail between them: `same` says that its left rail is left at both ends, so that rails
 * meet like with like; else they swap.
 */
export type RailGraph = { readonly vertices: readonly string[]; readonly edges: readonly RailEdge[] };

export type RailEdge = {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  readonly same: boolean;
  readonly length: number;
};

/** A length of rail laid from one end of metal to another, mm. */
export type LaidRail = { readonly id: string; readonly from: string; readonly to: string; readonly length: number };

/** The graph of metal and the rails laid between its ends; throws a RangeError for an end nobody has. */
export function graphOf(metal: readonly Metal[], laid: readonly LaidRail[]): RailGraph {
  const edges = laid.map(({ id, from, to, length }): RailEdge => {
    const [a, b] = [endOf(metal, from), endOf(metal, to)];
    // going out of an outlet and into an inlet runs with the metal's direction at both ends
    return { id, a: a.metal, b: b.metal, same: a.outlet !== b.outlet, length };
  });
  return { vertices: metal.map(({ id }) => id), edges };
}

function endOf(metal: readonly Metal[], end: string): { readonly metal: string; readonly outlet: boolean } {
  const owner = metal.find(({ inlets, outlets }) => inlets.includes(end) || outlets.includes(end));
  if (owner === undefined) throw new RangeError(`no end ${end}`);
  return { metal: owner.id, outlet: owner.outlets.includes(end) };
}

/** The graph of a plan's rails; each edge is one segment. */
export function railGraph({ metal, segments }: Pick<RailPlan, 'metal' | 'segments'>): RailGraph {
  const laid = segments.map(({ id, from, to }) => ({ id, from: from.end, to: to.end, length: to.at - from.at }));
  return graphOf(metal, laid);
}

/** The graph in pieces that hang together. */
export function components({ vertices, edges }: RailGraph): readonly RailGraph[] {
  const seen = new Set<string>();
  return vertices.flatMap((start) => {
    if (seen.has(start)) return [];
    const mine = new Set([start]);
    for (const vertex of mine) {
      for (const { a, b } of edges) {
        if (a === vertex) mine.add(b);
        if (b === vertex) mine.add(a);
      }
    }
    for (const vertex of mine) seen.add(vertex);
    return [{ vertices: vertices.filter((one) => mine.has(one)), edges: edges.filter(({ a }) => mine.has(a)) }];
  });
}

/** Sidings and other tails end nowhere, so no closed route uses them: the graph without them. */
export function withoutTails(graph: RailGraph): RailGraph {
  let { edges } = graph;
  for (;;) {
    const ends = edges.flatMap(({ a, b }) => [a, b]);
    const kept = edges.filter(({ a, b }) => a === b || (many(ends, a) && many(ends, b)));
    if (kept.length === edges.length) break;
    edges = kept;
  }
  return { vertices: graph.vertices.filter((v) => edges.some(({ a, b }) => a === v || b === v)), edges };
}

function many(ends: readonly string[], vertex: string): boolean {
  return ends.filter((one) => one === vertex).length > 1;
}
