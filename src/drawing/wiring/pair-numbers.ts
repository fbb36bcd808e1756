import type { Vector } from '../../core/geometry/shapes.ts';
import type { Wire } from '../../core/wiring/wire.ts';
import type { WiringModel } from '../../core/wiring/wiring.ts';
import type { Spot } from '../mark.ts';
import { onPaper, type View } from '../view.ts';
import { pairNumber, pairsOf } from './wiring-stage.ts';

/** A place on paper with the numbers of the pairs that are named there. */
export type Numbers = { readonly spot: Spot; readonly numbers: readonly string[] };

/** Places nearer than this on paper share one label, mm. */
const SHARED = 1;

/** Every pair's number once: a length of bus half-way along it, a thin pair at its end; pairs of one place together. */
export function pairNumbers(wiring: WiringModel, view: View): readonly Numbers[] {
  return sharedNumbers(
    pairsOf(wiring).flatMap((wire) => {
      const spot = spotOf(wire, view);
      return spot === null ? [] : [{ wire, spot }];
    }),
  );
}

/** Numbers of pairs by where they are named, those of one place together. */
export function sharedNumbers(named: readonly { readonly wire: Wire; readonly spot: Spot }[]): readonly Numbers[] {
  const groups: { readonly spot: Spot; readonly numbers: string[] }[] = [];
  for (const { spot, wire } of named) {
    const near = groups.find((one) => Math.hypot(one.spot[0] - spot[0], one.spot[1] - spot[1]) < SHARED);
    if (near === undefined) groups.push({ spot, numbers: [pairNumber(wire)] });
    else near.numbers.push(pairNumber(wire));
  }
  return groups;
}

function spotOf({ kind, path }: Wire, view: View): Spot | null {
  const at = kind === 'bus' ? halfWay(path) : path[path.length - 1];
  return at === undefined ? null : onPaper(view, [at[0], at[1]]);
}

/** The point half-way along a path. */
function halfWay(path: readonly Vector[]): Vector | undefined {
  const straights = path.slice(1).map((to, i) => ({ from: path[i] ?? to, to }));
  const long = ({ from, to }: (typeof straights)[number]) => Math.hypot(to[0] - from[0], to[1] - from[1]);
  let left = straights.reduce((sum, one) => sum + long(one), 0) / 2;
  for (const one of straights) {
    const own = long(one);
    if (own >= left && own > 0) {
      const share = left / own;
      const { from, to } = one;
      return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share, from[2]];
    }
    left -= own;
  }
  return path[0];
}
