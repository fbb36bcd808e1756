import type { Wire } from '../../core/wiring/wire.ts';
import type { WiringModel } from '../../core/wiring/wiring.ts';
import { pairsOf } from './wiring-stage.ts';

/** A length of bus with what is met along it on the way from where it is fed: thin pairs, and lengths that part from it. */
export type BusBranch = {
  readonly pair: Wire;
  readonly met: readonly (Wire | BusBranch)[];
};

/** Whether what is met is a length of bus, not a thin pair. */
export function isBranch(one: Wire | BusBranch): one is BusBranch {
  return 'met' in one;
}

/** The name of a pair, which both its wires begin with. */
function pairId({ id }: Wire): string {
  return id.replace(/-[ab]$/, '');
}

/** The bus of a district or of a unit as the current meets it: from the supply, or from where its unit joins it. */
export function netTree(wiring: WiringModel, net: string): readonly BusBranch[] {
  const mine = pairsOf(wiring).filter((wire) => wire.net === net);
  const buses = mine.filter(({ kind }) => kind === 'bus');
  const fed = mine.find(({ id }) => id === `${net}-out-a`);
  const source = buses.find((one) => pairId(one) === fed?.on);
  const roots = source === undefined ? buses.filter(({ on }) => on === null) : [source];
  return roots.map((pair) => branchFrom({ mine, buses }, pair, { at: fed?.along ?? pair.along, before: null }));
}

type Net = { readonly mine: readonly Wire[]; readonly buses: readonly Wire[] };
type Entered = { readonly at: number; readonly before: Wire | null };

function branchFrom({ mine, buses }: Net, pair: Wire, { at, before }: Entered): BusBranch {
  const thin = mine.filter(({ id, kind, on }) => kind !== 'bus' && on === pairId(pair) && !id.endsWith('-out-a'));
  const parting = buses.filter(({ on }) => on === pairId(pair)).map((one) => ({ one, along: one.along }));
  const parent = buses.filter((one) => pairId(one) === pair.on).map((one) => ({ one, along: pair.along }));
  const next = [...parting, ...parent].filter(({ one }) => one !== before);
  const met = [
    ...thin.map((one) => ({ along: one.along, what: one })),
    ...next.map(({ along, one }) => ({
      along,
      what: branchFrom({ mine, buses }, one, { at: along, before: pair }),
    })),
  ];
  const far = ({ along }: { readonly along: number }) => Math.abs(along - at);
  return { pair, met: met.toSorted((a, b) => far(a) - far(b)).map(({ what }) => what) };
}

/** Thin pairs that hang right where a district or a unit is fed, which has no bus of its own. */
export function hungAtSource(wiring: WiringModel, net: string): readonly Wire[] {
  return pairsOf(wiring).filter(
    ({ id, kind, label, net: own, on }) =>
      own === net && kind !== 'bus' && on === null && !id.endsWith('-out-a') && !label.endsWith('f'),
  );
}
