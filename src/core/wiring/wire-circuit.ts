import type { Branch } from './circuit.ts';
import type { LaidUnit } from './laid-unit.ts';
import type { Net } from './nets.ts';
import { feederNode } from './rail-circuit.ts';
import { type BusSpot, type Limb, type Stretch, spotAt } from './routing/limbs.ts';
import { CLIPPED } from './routing/tap.ts';
import type { Tail } from './tail.ts';

/** The heavy wires and what hangs on them. */
export type Laid = {
  readonly limbs: readonly Limb[];
  readonly nets: readonly Net[];
  readonly units: readonly LaidUnit[];
  readonly tails: readonly Tail[];
};

/** The node of the supply. */
export const SOURCE = 'supply';

/** What a length of a pair resists there and back, in ohm for mm. */
type Resists = { readonly bus: (length: number) => number; readonly tail: (length: number) => number };

/** All wires as branches: each pair along the bus from joint to joint, its unit before it, and the thin wires on it. */
export function wireBranches(laid: Laid, resists: Resists): readonly Branch[] {
  const { limbs, nets, tails, units } = laid;
  const buses = nets.flatMap((net) => net.stretches.flatMap((stretch) => busBranches(laid, { net, stretch }, resists)));
  const begun = nets.flatMap((net): readonly Branch[] =>
    net.unit === null ? [{ id: `begin ${net.id}`, from: SOURCE, to: nodeAt(limbs, net.id, net.source), ohm: 0 }] : [],
  );
  const between = units.flatMap(({ from, id, tap }): readonly Branch[] => {
    const ohm = resists.bus(tap.across + CLIPPED);
    return [
      { id: `in ${id}`, from: nodeAt(limbs, from, tap), to: `unit ${id}`, ohm },
      { id: `out ${id}`, from: `unit ${id}`, to: nodeAt(limbs, id, tap), ohm },
    ];
  });
  const thin = tails.map(
    ({ length, net, tap }): Branch => ({
      ...{ id: `tail ${tap.drop}`, from: nodeAt(limbs, net, tap), to: feederNode(tap.drop), ohm: resists.tail(length) },
    }),
  );
  return [...begun, ...buses, ...between, ...thin];
}

/** A place on a pair as a node: the start of a branch is the T-joint that it leaves. */
function nodeAt(limbs: readonly Limb[], net: string, spot: BusSpot): string {
  const { along, limb } = spotAt(limbs, spot);
  return `${net} ${limb} ${along.toFixed(5)}`;
}

type Length = { readonly net: Net; readonly stretch: Stretch };

/** A stretch of a pair, parted wherever something is joined to it. */
function busBranches({ limbs, tails, units }: Laid, { net, stretch }: Length, { bus }: Resists): readonly Branch[] {
  const joints: readonly BusSpot[] = [
    net.source,
    ...tails.filter((one) => one.net === net.id).map(({ tap }) => tap),
    ...units.filter(({ from }) => from === net.id).map(({ tap }) => tap),
    ...net.stretches.map(({ from, limb }) => ({ limb, along: from })),
  ];
  const inside = joints
    .map((spot) => spotAt(limbs, spot))
    .filter(({ limb, along }) => limb === stretch.limb && along > stretch.from + 1e-5 && along < stretch.to - 1e-5)
    .map(({ along }) => along);
  const stops = [...new Set([stretch.from, ...inside, stretch.to])].toSorted((a, b) => a - b);
  return stops.slice(1).map((to, i) => {
    const from = stops[i] ?? to;
    const node = (along: number) => nodeAt(limbs, net.id, { limb: stretch.limb, along });
    return { id: `bus ${net.id} ${stretch.limb} ${i}`, from: node(from), to: node(to), ohm: bus(to - from) };
  });
}
