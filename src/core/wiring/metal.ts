/**
 * Rail ends that are one piece of metal with a direction of its own: `inlets` are entered with the direction, `outlets`
 * left with it. A turnout runs from its points out; a plain joint from the line that ends in it to the one that begins.
 */
export type Metal = { readonly id: string; readonly inlets: readonly string[]; readonly outlets: readonly string[] };

/** A turnout's metal: its points lead in, its other ends lead out. */
export function turnoutMetal(id: string, outlets: readonly string[] = ['straight', 'branch']): Metal {
  return { id, inlets: [`${id}.points`], outlets: outlets.map((end) => `${id}.${end}`) };
}

/** Two ends that a way joins, named by their turnout. */
export type JoinedEnds = { readonly from: string; readonly to: string };

/**
 * The metal of a turnout by its ways: ends that ways join share it, and a crossing has two that share none. What a way
 * comes from and what it goes to lie on opposite sides.
 */
export function metalOf(id: string, ways: readonly JoinedEnds[]): readonly Metal[] {
  const left = new Set(ways.flatMap(({ from, to }) => [from, to]));
  const found: Metal[] = [];
  for (const start of left) {
    const side = new Map<string, 'in' | 'out'>([[start, 'in']]);
    for (const end of side.keys()) {
      const other = side.get(end) === 'in' ? 'out' : 'in';
      for (const { from, to } of ways) {
        if (from === end && !side.has(to)) side.set(to, other);
        if (to === end && !side.has(from)) side.set(from, other);
      }
    }
    for (const end of side.keys()) left.delete(end);
    const named = (which: 'in' | 'out') => [...side].flatMap(([end, one]) => (one === which ? [`${id}.${end}`] : []));
    found.push({
      id: found.length === 0 ? id : `${id}/${found.length + 1}`,
      inlets: named('in'),
      outlets: named('out'),
    });
  }
  return found;
}
