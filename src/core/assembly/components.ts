/**
 * Strongly connected components of a directed graph (Tarjan 1972), without recursion: `arrows[i]` lists where i points.
 * A component comes before every component that points to it, so the first ones have no arrow leaving them.
 */
export function components(count: number, arrows: (i: number) => readonly number[]): readonly (readonly number[])[] {
  const search: Search = {
    index: new Array<number>(count).fill(-1),
    low: new Array<number>(count).fill(0),
    stacked: new Array<boolean>(count).fill(false),
    stack: [],
    found: [],
    next: 0,
  };
  for (let root = 0; root < count; root += 1) if (search.index[root] === -1) visit(search, root, arrows);
  return search.found;
}

type Search = {
  readonly index: number[];
  readonly low: number[];
  readonly stacked: boolean[];
  readonly stack: number[];
  readonly found: number[][];
  next: number;
};

type Call = { readonly node: number; readonly out: readonly number[]; step: number };

function visit(search: Search, root: number, arrows: (i: number) => readonly number[]): void {
  const calls: Call[] = [enter(search, root, arrows)];
  for (let call = calls.at(-1); call !== undefined; call = calls.at(-1)) {
    const next = call.out[call.step];
    call.step += 1;
    if (next === undefined) {
      calls.pop();
      leave(search, call.node, calls.at(-1)?.node);
    } else if (search.index[next] === -1) {
      calls.push(enter(search, next, arrows));
    } else if (search.stacked[next] === true) {
      lower(search, call.node, search.index[next] ?? 0);
    }
  }
}

function enter(search: Search, node: number, arrows: (i: number) => readonly number[]): Call {
  search.index[node] = search.next;
  search.low[node] = search.next;
  search.next += 1;
  search.stack.push(node);
  search.stacked[node] = true;
  return { node, out: arrows(node), step: 0 };
}

function leave(search: Search, node: number, parent: number | undefined): void {
  if (search.low[node] === search.index[node]) search.found.push(popUntil(search, node));
  if (parent !== undefined) lower(search, parent, search.low[node] ?? 0);
}

function popUntil(search: Search, node: number): number[] {
  const members: number[] = [];
  for (let member = search.stack.pop(); member !== undefined; member = search.stack.pop()) {
    search.stacked[member] = false;
    members.push(member);
    if (member === node) break;
  }
  return members.sort((a, b) => a - b);
}

function lower(search: Search, node: number, to: number): void {
  search.low[node] = Math.min(search.low[node] ?? to, to);
}
