import { components, type RailEdge, type RailGraph, withoutTails } from './rail-graph.ts';

/** Above this many vertices every way to set them is too many to try. */
const MOST_EXACT = 18;

/** Rounds of mending from different starts when not all can be tried. */
const STARTS = 24;

/** The segments to isolate so that no closed route joins a rail to its opposite. */
export type Reversing = {
  readonly sections: readonly RailEdge[];
  /** whether fewer cannot do */
  readonly proved: boolean;
};

/**
 * The fewest segments that, isolated, leave no closed route with an odd number of rail swaps; of equal sets the one
 * whose shortest section is longest. Each vertex is set one way round or the other, and what then disagrees is cut: every
 * cut set of a signed graph is found like this (Harary, On the notion of balance of a signed graph, 1953).
 */
export function reversingSections(graph: RailGraph): Reversing {
  const answers = components(withoutTails(graph)).map((one) =>
    one.vertices.length <= MOST_EXACT ? exactSections(one) : mendedSections(one),
  );
  const sections = answers.flatMap((one) => one.sections);
  return {
    sections: graph.edges.filter((edge) => sections.includes(edge)),
    proved: answers.every(({ proved }) => proved),
  };
}

type Indexed = { readonly edge: RailEdge; readonly a: number; readonly b: number };

function indexed({ vertices, edges }: RailGraph): readonly Indexed[] {
  const index = new Map(vertices.map((vertex, i) => [vertex, i]));
  return edges.map((edge) => ({ edge, a: index.get(edge.a) ?? 0, b: index.get(edge.b) ?? 0 }));
}

function disagrees({ edge, a, b }: Indexed, turned: (vertex: number) => boolean): boolean {
  return edge.same !== (turned(a) === turned(b));
}

/** Fewer first, then the longer shortest one, then the longer sum. */
function better(a: readonly RailEdge[], b: readonly RailEdge[]): boolean {
  if (a.length !== b.length) return a.length < b.length;
  const shortest = (edges: readonly RailEdge[]) =>
    edges.reduce((least, { length }) => Math.min(least, length), Infinity);
  const sum = (edges: readonly RailEdge[]) => edges.reduce((total, { length }) => total + length, 0);
  if (shortest(a) !== shortest(b)) return shortest(a) > shortest(b);
  return sum(a) > sum(b);
}

function exactSections(graph: RailGraph): Reversing {
  const edges = indexed(graph);
  const ways = 2 ** Math.max(0, graph.vertices.length - 1);
  let best: readonly RailEdge[] | null = null;
  for (let way = 0; way < ways; way += 1) {
    const turned = (vertex: number) => ((way >> vertex) & 1) === 1;
    const cut = edges.filter((one) => disagrees(one, turned)).map(({ edge }) => edge);
    if (best === null || better(cut, best)) best = cut;
  }
  return { sections: best ?? [], proved: true };
}

/** From several starts, one vertex after another is turned while that leaves fewer to cut. */
function mendedSections(graph: RailGraph): Reversing {
  const edges = indexed(graph);
  const count = graph.vertices.length;
  let best: readonly RailEdge[] | null = null;
  for (let start = 0; start < STARTS; start += 1) {
    const turned = spread(count, edges, start % count);
    for (let changed = true; changed; ) {
      changed = false;
      for (let vertex = 0; vertex < count; vertex += 1) changed = turnIfBetter(vertex, turned, edges) || changed;
    }
    const cut = edges.filter((one) => disagrees(one, (v) => turned[v] === true)).map(({ edge }) => edge);
    if (best === null || better(cut, best)) best = cut;
  }
  return { sections: best ?? [], proved: (best ?? []).length <= 1 };
}

/** Every vertex as a tree from the start sets it. */
function spread(count: number, edges: readonly Indexed[], start: number): boolean[] {
  const turned: (boolean | undefined)[] = Array.from({ length: count });
  turned[start] = false;
  for (const at of queue(start)) {
    for (const { edge, a, b } of edges) {
      const other = a === at.vertex ? b : b === at.vertex ? a : null;
      if (other === null || turned[other] !== undefined) continue;
      turned[other] = edge.same ? turned[at.vertex] === true : turned[at.vertex] !== true;
      at.push(other);
    }
  }
  return turned.map((one) => one === true);
}

function* queue(start: number): Generator<{ readonly vertex: number; readonly push: (vertex: number) => void }> {
  const waiting = [start];
  for (const vertex of waiting) yield { vertex, push: (next) => waiting.push(next) };
}

function turnIfBetter(vertex: number, turned: boolean[], edges: readonly Indexed[]): boolean {
  const mine = edges.filter(({ a, b }) => a !== b && (a === vertex || b === vertex));
  const wrong = mine.filter((one) => disagrees(one, (v) => turned[v] === true)).length;
  if (mine.length - wrong >= wrong) return false;
  turned[vertex] = turned[vertex] !== true;
  return true;
}

/**
 * Rails that are one piece of metal with their opposites: segments whose left rail can be reached from their right one.
 * Follows every rail as metal and knows nothing of signs or sections; isolated segments are left out.
 */
export function shortedSegments(graph: RailGraph, isolated: ReadonlySet<string>): readonly string[] {
  const parent = new Map<string, string>();
  const find = (rail: string): string => {
    const up = parent.get(rail) ?? rail;
    return up === rail ? rail : find(up);
  };
  const join = (one: string, other: string) => parent.set(find(one), find(other));
  const edges = graph.edges.filter(({ id }) => !isolated.has(id));
  for (const { id, a, b, same } of edges) {
    join(`${id} left`, `${a} left`);
    join(`${id} right`, `${a} right`);
    join(`${id} left`, same ? `${b} left` : `${b} right`);
    join(`${id} right`, same ? `${b} right` : `${b} left`);
  }
  return edges.filter(({ id }) => find(`${id} left`) === find(`${id} right`)).map(({ id }) => id);
}
