import fc from 'fast-check';
import type { Branch, Circuit, Draws } from '../../src/core/wiring/circuit.ts';

/** A connected network of 2 to 14 nodes, its branches and what is drawn at its nodes. */
export type RandomCircuit = { readonly circuit: Circuit; readonly draws: Draws; readonly nodes: readonly string[] };

const ohm = fc.integer({ min: 1, max: 20000 }).map((n) => n / 1000);
const amps = fc.integer({ min: 0, max: 3000 }).map((n) => n / 1000);

/** A tree over all nodes with chords across it; now and then a branch that resists nothing. */
export const randomCircuit: fc.Arbitrary<RandomCircuit> = fc
  .integer({ min: 2, max: 14 })
  .chain((count) =>
    fc.record({
      count: fc.constant(count),
      parents: fc.array(fc.nat(), { minLength: count - 1, maxLength: count - 1 }),
      ohms: fc.array(ohm, { minLength: count - 1, maxLength: count - 1 }),
      chords: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.oneof({ weight: 9, arbitrary: ohm }, fc.constant(0))), {
        maxLength: 12,
      }),
      drawn: fc.array(amps, { minLength: count, maxLength: count }),
    }),
  )
  .map(({ count, parents, ohms, chords, drawn }) => {
    const node = (i: number) => `n${i % count}`;
    const tree = ohms.map(
      (one, i): Branch => ({ id: `t${i}`, from: node((parents[i] ?? 0) % (i + 1)), to: node(i + 1), ohm: one }),
    );
    const across = chords.map(([a, b, one], i): Branch => ({ id: `c${i}`, from: node(a), to: node(b), ohm: one }));
    const nodes = Array.from({ length: count }, (_, i) => node(i));
    return {
      circuit: { source: 'n0', branches: [...tree, ...across] },
      draws: Object.fromEntries(nodes.map((one, i) => [one, drawn[i] ?? 0])),
      nodes,
    };
  });
