import type { Wire } from '../../core/wiring/wire.ts';
import type { WiringModel } from '../../core/wiring/wiring.ts';
import { boxAbout, type Labelled } from '../labels.ts';
import type { Spot } from '../mark.ts';
import { onPaper, type View } from '../view.ts';
import { type Bundle, bundlesOf, longestOf } from './bundles.ts';
import { APART, numbersSaid, pairNumber, pairsOf } from './wiring-stage.ts';

/** Places nearer than this on paper share one label, mm. */
const SHARED = 1;

/** Half of the dot that a thin pair ends in, mm. */
export const DOT = 0.7;

/** The numbers of all pairs: along the bus those that run side by side, a thin pair's at its end. */
export function pairLabels(wiring: WiringModel, view: View): readonly Labelled[] {
  const ends = pairsOf(wiring).flatMap((wire) => {
    const last = wire.path[wire.path.length - 1];
    return wire.kind === 'bus' || last === undefined ? [] : [{ wire, spot: onPaper(view, [last[0], last[1]]) }];
  });
  return [...endLabels(ends), ...bundleLabels(bundlesOf(wiring), view)];
}

/** Numbers of bundles, each beside its longest straight. */
export function bundleLabels(bundles: readonly Bundle[], view: View): readonly Labelled[] {
  return bundles.flatMap((bundle): readonly Labelled[] => {
    const straight = longestOf(bundle);
    if (straight === null) return [];
    const [[ax, ay], [bx, by]] = [onPaper(view, straight[0]), onPaper(view, straight[1])];
    const box = { x0: Math.min(ax, bx), x1: Math.max(ax, bx), y0: Math.min(ay, by), y1: Math.max(ay, by) };
    return [{ text: numbersSaid(bundle.numbers), box, apart: APART }];
  });
}

/** Numbers of thin pairs by where they end, those of one place together. */
export function endLabels(named: readonly { readonly wire: Wire; readonly spot: Spot }[]): readonly Labelled[] {
  const groups: { readonly spot: Spot; readonly numbers: string[] }[] = [];
  for (const { spot, wire } of named) {
    const near = groups.find((one) => Math.hypot(one.spot[0] - spot[0], one.spot[1] - spot[1]) < SHARED);
    if (near === undefined) groups.push({ spot, numbers: [pairNumber(wire)] });
    else near.numbers.push(pairNumber(wire));
  }
  return groups.map(({ spot, numbers }) => ({ text: numbersSaid(numbers), box: boxAbout(spot, DOT), apart: APART }));
}
