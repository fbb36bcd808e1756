/** `to` can start only when `from` is done. */
export type Edge = { readonly from: string; readonly to: string };

type End = (edge: Edge) => string;

const start: End = (edge) => edge.from;
const end: End = (edge) => edge.to;

function listed(edges: readonly Edge[], key: End, value: End): Map<string, string[]> {
  const map = new Map<string, string[]>();
  for (const edge of edges) {
    const list = map.get(key(edge));
    if (list === undefined) map.set(key(edge), [value(edge)]);
    else list.push(value(edge));
  }
  return map;
}

/** The shortest way from one id to another along the edges, both ends included, or null. */
export function pathBetween(edges: readonly Edge[], from: string, to: string): string[] | null {
  const next = listed(edges, start, end);
  const cameFrom = new Map<string, string | null>([[from, null]]);
  const queue = [from];
  for (let i = 0; i < queue.length; i += 1) {
    const at = queue[i] ?? '';
    if (at === to) return walkBack(cameFrom, to);
    for (const follower of next.get(at) ?? []) {
      if (cameFrom.has(follower)) continue;
      cameFrom.set(follower, at);
      queue.push(follower);
    }
  }
  return null;
}

function walkBack(cameFrom: ReadonlyMap<string, string | null>, to: string): string[] {
  const path: string[] = [];
  for (let at: string | null | undefined = to; at !== null && at !== undefined; at = cameFrom.get(at)) path.push(at);
  return path.reverse();
}

/** The edges between ids that lie on a loop or between two loops: what is left when free ends are taken away. */
function knotted(edges: readonly Edge[]): Edge[] {
  let left = [...edges];
  for (;;) {
    const starts = new Set(left.map((edge) => edge.from));
    const ends = new Set(left.map((edge) => edge.to));
    const inner = left.filter((edge) => ends.has(edge.from) && starts.has(edge.to));
    if (inner.length === left.length) return left;
    left = inner;
  }
}

/** Adds the wanted edges to `held` one by one, save those that would close a loop; each of these with its loop. */
export function withoutLoops(held: readonly Edge[], wanted: readonly Edge[]) {
  const kept = [...held];
  const loops: { readonly edge: Edge; readonly loop: readonly string[] }[] = [];
  for (const edge of wanted) {
    const loop = pathBetween(kept, edge.to, edge.from);
    if (loop === null) kept.push(edge);
    else loops.push({ edge, loop });
  }
  return { kept, loops };
}

/** The edges an author wrote, without those that close a loop; cheap when there is none. */
export function authoredEdges(edges: readonly Edge[]) {
  const knot = new Set(knotted(edges));
  const { kept, loops } = withoutLoops([], [...knot]);
  const dropped = new Set(loops.map((loop) => loop.edge));
  const inKnot = new Set(kept);
  return { kept: edges.filter((edge) => !knot.has(edge) || (inKnot.has(edge) && !dropped.has(edge))), loops };
}

/** The ids so that every edge points forward, else as listed: an id is drawn forward only when another waits for it. */
export function inOrder(ids: readonly string[], edges: readonly Edge[]): string[] {
  const before = listed(edges, end, start);
  const position = new Map(ids.map((id, i) => [id, i]));
  const placed = new Set<string>();
  for (const id of ids) {
    const stack = [id];
    while (stack.length > 0) {
      const top = stack[stack.length - 1] ?? '';
      const open = (before.get(top) ?? []).filter((one) => position.has(one) && !placed.has(one));
      if (open.length === 0) {
        placed.add(top);
        stack.pop();
      } else {
        stack.push(...open.sort((a, b) => (position.get(b) ?? 0) - (position.get(a) ?? 0)));
      }
      if (stack.length > edges.length + 1) throw new Error(`loop through ${top}`);
    }
  }
  return [...placed];
}
