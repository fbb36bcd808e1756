import type { Patch } from '../../stock/part.ts';
import type { Machines, SetUp } from './operation.ts';

export const NO_SET_UP: SetUp = {
  fence: null,
  stop: null,
  straightedge: [],
  bit: null,
  depth: null,
  passes: 1,
  together: [],
  scrapFirst: false,
};

/** A routed cut: across the part its width lies along x, along the part along y. */
export type Routed = { readonly patch: Patch; readonly depth: number; readonly across: boolean };

/**
 * The router's set-up for a cut: the largest bit that goes in, the guide at the bit's offset from each edge of the cut
 * (base less half the bit before it; beyond the cut where it would lie off the part), and passes no deeper than the
 * setting. mm.
 */
export function routerSetUp({ patch, depth, across }: Routed, machines: Machines): SetUp {
  const [from, to] = across ? [patch.x0, patch.x1] : [patch.y0, patch.y1];
  const bit = largestBit(machines.bits, to - from);
  if (bit === null) return { ...NO_SET_UP, depth, stop: across ? from : null, fence: across ? null : from };
  const aside = from + bit / 2 < machines.base ? machines.base : -machines.base;
  const first = from + bit / 2 + aside;
  const last = to - bit / 2 + aside;
  const perPass = machines.perPass ?? bit / 2;
  return {
    ...NO_SET_UP,
    fence: across ? null : from,
    stop: across ? from : null,
    straightedge: last - first > 0.01 ? [first, last] : [first],
    bit,
    depth,
    passes: Math.max(1, Math.ceil(depth / perPass - 1e-9)),
  };
}

function largestBit(bits: readonly number[], width: number): number | null {
  const fitting = bits.filter((bit) => bit <= width + 1e-9);
  return fitting.length === 0 ? null : Math.max(...fitting);
}
