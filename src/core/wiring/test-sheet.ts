import { length, type Sentence, say } from '../units/say.ts';
import type { Feeder } from './feeders.ts';
import type { Gap } from './gap.ts';
import type { WiringInput } from './input.ts';
import type { DistrictFigures } from './layout-circuit.ts';
import { mostLoop } from './protection.ts';
import { ohms, volts } from './tell.ts';

/** One test with what it has to show; ticked when it does. */
export type TestRow = { readonly id: string; readonly of: string; readonly what: Sentence; readonly expect: Sentence };

type Tested = {
  readonly feeders: readonly Feeder[];
  readonly districts: readonly DistrictFigures[];
  readonly gaps: readonly Gap[];
};

/** The tests of the wiring in the order they are made: without power, then with a meter, then with a coin. */
export function testSheet(input: WiringInput, { feeders, districts, gaps }: Tested): readonly TestRow[] {
  return [
    ...gaps.map(
      (gap): TestRow => ({
        id: `cut.${gap.id}`,
        of: gap.id,
        what:
          gap.rails === 'both'
            ? say`Supply off. Ohmmeter along each rail across the cut in ${gap.line} at ${length(gap.at)}.`
            : say`Supply off. Ohmmeter along the rail of ${gap.of}'s frog across the cut in ${gap.line} at ${length(gap.at)}.`,
        expect:
          gap.rails === 'frog'
            ? say`No connection while the wires of one side are off the bus.`
            : say`No connection in either rail while the wires of one side are off the bus.`,
      }),
    ),
    ...feeders.map(
      (feeder): TestRow => ({
        id: `feeder.${feeder.id}`,
        of: feeder.id,
        what: say`Supply off. Ohmmeter from each wire of ${feeder.id} to its own rail of ${feeder.line} at ${length(feeder.at)}, then to the other rail.`,
        expect: say`Under one ohm to its own rail, no connection to the other.`,
      }),
    ),
    ...districts.flatMap(({ id, worst, short, tripsAt }): readonly TestRow[] => [
      ...(worst === null
        ? []
        : [
            {
              id: `volts.${id}`,
              of: id,
              what: say`Trains that draw all that ${id} gives, standing on ${worst.line} at ${length(worst.at)}.`,
              expect: say`${volts(worst.volts)} or more of the ${volts(input.supply.volts)}.`,
            },
          ]),
      ...(short === null
        ? []
        : [
            {
              id: `coin.${id}`,
              of: id,
              what: say`A coin across the rails of ${short.line} at ${length(short.at)}, and at the far end of every length of rail of ${id}.`,
              expect: say`It switches off at once, every time: the loop is ${ohms(short.loop)}, and ${ohms(mostLoop({ volts: input.supply.volts, tripsAt }))} would still do.`,
            },
          ]),
    ]),
  ];
}
