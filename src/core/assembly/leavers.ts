import type { Blocking } from './blocking.ts';
import { components } from './components.ts';
import type { Scene } from './scene.ts';

/** Groups along one direction that nothing left standing blocks: strongly connected, with no arrow out. */
export function leavers(graph: Blocking, present: ReadonlySet<number>): readonly (readonly number[])[] {
  const nodes = [...present];
  const position = new Map(nodes.map((node, i) => [node, i]));
  const arrows = nodes.map((node) => standingBlockers(graph.blocks[node] ?? [], position));
  const found = components(nodes.length, (i) => arrows[i] ?? []).filter((group) => closed(group, arrows));
  return found.map((group) => group.flatMap((i) => nodes[i] ?? []).sort((a, b) => a - b));
}

function standingBlockers(blockers: readonly number[], position: ReadonlyMap<number, number>): readonly number[] {
  const standing: number[] = [];
  for (const other of blockers) {
    const there = position.get(other);
    if (there !== undefined) standing.push(there);
  }
  return standing;
}

function closed(group: readonly number[], arrows: readonly (readonly number[])[]): boolean {
  if (group.length === 1) return (arrows[group[0] ?? 0] ?? []).length === 0;
  const members = new Set(group);
  return group.every((i) => (arrows[i] ?? []).every((j) => members.has(j)));
}

/** Whether joints hold the members together. */
export function connected(at: Scene, members: readonly number[]): boolean {
  if (members.length === 1) return true;
  const [first] = members;
  if (first === undefined) return false;
  const all = new Set(members);
  const seen = new Set([first]);
  for (const node of seen) for (const next of at.joined[node] ?? []) if (all.has(next)) seen.add(next);
  return seen.size === all.size;
}
