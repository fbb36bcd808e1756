import { length, type Sentence, say } from '../units/say.ts';
import type { Feeder } from './feeders.ts';
import type { Gap } from './gap.ts';
import type { WiringInput } from './input.ts';
import type { LaidUnit } from './laid-unit.ts';
import type { DistrictFigures } from './layout-circuit.ts';
import { mostLoop } from './protection.ts';
import { ohms, volts } from './tell.ts';
import { type Wire, wiresOfPair } from './wire.ts';

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
    ...gaps.map(cutTest),
    ...feeders.map((feeder) => feederTest(feeder, wires)),
    ...units.map(unitTest),
    ...districts.flatMap((district) => districtTests(input, district)),
  ];
}

function cutTest({ at, id, line, of, rails }: Gap): TestRow {
  const one = rails === 'frog';
  return {
    id: `cut.${id}`,
    of: id,
    what: one
      ? say`Supply off, no feeder joined to the bus, no train on the rails. Ohmmeter along the rail of ${of}'s frog across the cut in ${line} at ${length(at)}.`
      : say`Supply off, no feeder joined to the bus, no train on the rails. Ohmmeter along each rail across the cut in ${line} at ${length(at)}.`,
    expect: one ? say`No connection.` : say`No connection in either rail.`,
  };
}

function feederTest({ at, id, line, side }: Feeder, wires: readonly Wire[]): TestRow {
  return {
    id: `feeder.${id}`,
    of: id,
    what: say`Supply off. Ohmmeter from ${wireLabels(wires, id)} each to its own rail of ${line} at ${length(at)}, a to the ${side} one, then to the other rail.`,
    expect: say`Under one ohm to its own rail, no connection to the other.`,
  };
}

function unitTest({ id, kind, line, of }: LaidUnit): TestRow {
  if (kind === 'bridge-switch')
    return {
      id: `unit.${id}`,
      of: id,
      what: say`Supply on, ${of} lifted. Voltmeter across the rails of ${line} on both its approaches; then ${of} closed.`,
      expect: say`No voltage while it is up, and no train moves; all of it when it is closed.`,
    };
  return {
    id: `unit.${id}`,
    of: id,
    what: say`Supply on. Drive a train into the section of ${line} that reverses, over the cut at its end, and out again.`,
    expect:
      kind === 'reverser'
        ? say`Nothing switches off and the train does not stop.`
        : say`It runs in with the switch one way and out with it the other; the switch is thrown while the train stands inside.`,
  };
}

/** The lowest voltage, and a coin where the loop is longest. */
function districtTests(
  { supply }: WiringInput,
  { id, name, short, tripsAt, worst }: DistrictFigures,
): readonly TestRow[] {
  const low = worst === null ? [] : [worst];
  const far = short === null ? [] : [short];
  return [
    ...low.map(
      (one): TestRow => ({
        id: `volts.${id}`,
        of: id,
        what: say`Trains that draw all that ${name} gives, standing on ${one.line} at ${length(one.at)}.`,
        expect: say`${volts(one.volts)} or more of the ${volts(supply.volts)}.`,
      }),
    ),
    ...far.map(
      (one): TestRow => ({
        id: `coin.${id}`,
        of: id,
        what: say`A coin across the rails of ${one.line} at ${length(one.at)}, and at the far end of every length of rail of ${name}.`,
        expect: say`It switches off at once, every time: the loop is ${ohms(one.loop)}, and ${ohms(mostLoop({ volts: supply.volts, tripsAt }))} would still do.`,
      }),
    ),
  ];
}

/** The labels of a pair's two wires; its own id where no wire is laid. */
function wireLabels(wires: readonly Wire[], pair: string): string {
  const labels = wiresOfPair(wires, pair).map(({ label }) => label);
  return labels.length === 0 ? pair : labels.join(' and ');
}
