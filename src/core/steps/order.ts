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

/** An edge that closes a loop, with the ids on the way round from its end to its start. */
export type Loop = { readonly edge: Edge; readonly loop: readonly string[] };

/** The edges an author wrote, without those that close a loop: depth first, so that one loop is told once. */
export function authoredEdges(edges: readonly Edge[]): {
  readonly kept: readonly Edge[];
  readonly loops: readonly Loop[];
} {
  const next = listed(edges, start, end);
  const finished = new Set<string>();
  const loops: Loop[] = [];
  for (const id of next.keys()) if (!finished.has(id)) walk(id, next, { finished, loops });
  const closing = new Set(loops.map(({ edge }) => `${edge.from} ${edge.to}`));
  return { kept: edges.filter((edge) => !closing.has(`${edge.from} ${edge.to}`)), loops };
}

type Visit = { readonly finished: Set<string>; readonly loops: Loop[] };

function walk(root: string, next: ReadonlyMap<string, readonly string[]>, { finished, loops }: Visit): void {
  const path = [root];
  const onPath = new Map([[root, 0]]);
  const left = [[...(next.get(root) ?? [])].reverse()];
  while (path.length > 0) {
    const at = path[path.length - 1] ?? '';
    const to = left[left.length - 1]?.pop();
    if (to === undefined) {
      finished.add(at);
      onPath.delete(at);
      path.pop();
      left.pop();
      continue;
    }
    const since = onPath.get(to);
    if (since !== undefined) loops.push({ edge: { from: at, to }, loop: path.slice(since) });
    else if (!finished.has(to)) {
      onPath.set(to, path.length);
      path.push(to);
      left.push([...(next.get(to) ?? [])].reverse());
    }
  }
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
