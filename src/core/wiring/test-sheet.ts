import { length, type Sentence, say } from '../units/say.ts';
import type { Feeder } from './feeders.ts';
import type { Gap } from './gap.ts';
import type { WiringInput } from './input.ts';
import type { LaidUnit } from './laid-unit.ts';
import type { DistrictFigures } from './layout-circuit.ts';
import { mostLoop } from './protection.ts';
import { ohms, volts } from './tell.ts';
import type { Wire } from './wire.ts';

/** One test with what it has to show; ticked when it does. */
export type TestRow = { readonly id: string; readonly of: string; readonly what: Sentence; readonly expect: Sentence };

type Tested = {
  readonly feeders: readonly Feeder[];
  readonly districts: readonly DistrictFigures[];
  readonly gaps: readonly Gap[];
  readonly units: readonly LaidUnit[];
  readonly wires: readonly Wire[];
};

/** The tests of the wiring in the order they are made: without power, then with a meter, then with a coin. */
export function testSheet(input: WiringInput, { feeders, districts, gaps, units, wires }: Tested): readonly TestRow[] {
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
        what: say`Supply off. Ohmmeter from ${wireLabels(wires, feeder.id)} each to its own rail of ${feeder.line} at ${length(feeder.at)}, a to the ${feeder.side} one, then to the other rail.`,
        expect: say`Under one ohm to its own rail, no connection to the other.`,
      }),
    ),
    ...units.map(
      ({ id, kind, line, of }): TestRow => ({
        id: `unit.${id}`,
        of: id,
        what:
          kind === 'bridge-switch'
            ? say`Supply on, ${of} lifted. Voltmeter across the rails of ${line} on both its approaches; then ${of} closed.`
            : say`Supply on. Drive a train into the section of ${line} that reverses, over the cut at its end, and out again.`,
        expect:
          kind === 'bridge-switch'
            ? say`No voltage while it is up, and no train moves; all of it when it is closed.`
            : kind === 'reverser'
              ? say`Nothing switches off and the train does not stop.`
              : say`It runs in with the switch one way and out with it the other; the switch is thrown while the train stands inside.`,
      }),
    ),
    ...districts.flatMap(({ id, name, worst, short, tripsAt }): readonly TestRow[] => [
      ...(worst === null
        ? []
        : [
            {
              id: `volts.${id}`,
              of: id,
              what: say`Trains that draw all that ${name} gives, standing on ${worst.line} at ${length(worst.at)}.`,
              expect: say`${volts(worst.volts)} or more of the ${volts(input.supply.volts)}.`,
            },
          ]),
      ...(short === null
        ? []
        : [
            {
              id: `coin.${id}`,
              of: id,
              what: say`A coin across the rails of ${short.line} at ${length(short.at)}, and at the far end of every length of rail of ${name}.`,
              expect: say`It switches off at once, every time: the loop is ${ohms(short.loop)}, and ${ohms(mostLoop({ volts: input.supply.volts, tripsAt }))} would still do.`,
            },
          ]),
    ]),
  ];
}

/** The labels of a pair's two wires; its own id where no wire is laid. */
function wireLabels(wires: readonly Wire[], pair: string): string {
  const labels = wires.filter(({ id }) => id === `${pair}-a` || id === `${pair}-b`).map(({ label }) => label);
  return labels.length === 0 ? pair : labels.join(' and ');
}
