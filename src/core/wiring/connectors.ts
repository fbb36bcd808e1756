import type { Vector } from '../geometry/shapes.ts';
import type { BenchJoint } from './bench-joints.ts';
import { busPieces } from './bus-pieces.ts';
import type { Net } from './nets.ts';
import type { Wire } from './wire.ts';

/** A plug where the bus goes from one bench to the next, its pins with their wires on both sides. */
export type Connector = {
  readonly id: string;
  readonly between: readonly [string, string];
  readonly at: Vector;
  readonly pins: readonly {
    readonly pin: number;
    /** the wire that comes from the supply, and the one that goes on */
    readonly wire: string;
    readonly onto: string;
    readonly colour: string;
  }[];
};

/** The plugs between benches, a pin for each wire that passes. */
export function connectors(
  joints: readonly BenchJoint[],
  wires: readonly Wire[],
  nets: readonly Net[],
): readonly Connector[] {
  return joints.map(({ at, between, id }) => {
    const passing = nets.flatMap((net) => {
      const pieces = busPieces(net, joints);
      const [before, after] = [pieces.find(({ ends }) => ends === id), pieces.find(({ begins }) => begins === id)];
      return before === undefined || after === undefined ? [] : [{ before: before.id, after: after.id }];
    });
    const pairs = passing.flatMap(({ after, before }) =>
      ['a', 'b'].map((letter) => ({ wire: `${before}-${letter}`, onto: `${after}-${letter}` })),
    );
    const pins = pairs.map((pair, i) => ({
      ...{ pin: i + 1, ...pair },
      colour: wires.find((wire) => wire.id === pair.wire)?.colour ?? '',
    }));
    return { id, between, at, pins };
  });
}
