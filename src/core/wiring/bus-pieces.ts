import type { BenchJoint } from './bench-joints.ts';
import type { Net } from './nets.ts';
import type { Stretch } from './routing/limbs.ts';

/** One length of a pair's heavy wires between its ends, T-joints and plugs; distances along the bus, mm. */
export type BusPiece = Stretch & {
  /** `bus-quay`, the next of the same pair `bus-quay-2` and on */
  readonly id: string;
  /** the plug that it begins at, and that it ends at; null for none */
  readonly begins: string | null;
  readonly ends: string | null;
};

/** The lengths of bus of a pair of its own, parted at every plug between benches. */
export function busPieces({ id, stretches }: Net, joints: readonly BenchJoint[]): readonly BusPiece[] {
  const pieces = stretches.flatMap((stretch) => {
    const cuts = joints.filter(
      ({ along, limb }) => limb === stretch.limb && along > stretch.from + 1e-6 && along < stretch.to - 1e-6,
    );
    return [...cuts, null].map((joint, i) => {
      const before = cuts[i - 1];
      return {
        ...{ limb: stretch.limb, from: before?.along ?? stretch.from, to: joint?.along ?? stretch.to },
        ...{ begins: before?.id ?? null, ends: joint?.id ?? null },
      };
    });
  });
  return pieces.map((piece, i) => ({ ...piece, id: i === 0 ? `bus-${id}` : `bus-${id}-${i + 1}` }));
}
