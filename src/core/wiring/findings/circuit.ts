import type { Finding } from '../../finding.ts';
import { length, say } from '../../units/say.ts';
import type { Computed } from '../computed.ts';
import type { WiringInput } from '../input.ts';
import type { RailBranch } from '../rail-circuit.ts';
import { ohms, tell } from '../tell.ts';
import { wireFindings } from './wires.ts';

/** Voltage, shorts, ratings and rails without a feed. */
export function circuitFindings(input: WiringInput, computed: Computed): readonly Finding[] {
  return [
    ...conductFindings(input),
    ...unfedFindings(computed.unfed),
    ...computed.districts.flatMap((district) => wireFindings(input, computed, district)),
    ...assumedFindings(input),
  ];
}

/** A wire said to resist nothing. */
function conductFindings({ bus, feeders }: WiringInput): readonly Finding[] {
  const stocks = [bus?.stock, feeders?.stock].filter((one) => one !== undefined);
  return [...new Set(stocks)]
    .filter(({ ohmPerMetre }) => !(ohmPerMetre > 0))
    .map(({ id, ohmPerMetre, area }) =>
      tell({
        rule: 'wire-resists-nothing',
        level: 'halt',
        where: id,
        what: say`${id} is listed with ${ohms(ohmPerMetre)} a metre: no wire resists nothing.`,
        mend: say`Copper of ${String(area)} mm2 resists about ${ohms(0.017241 / area)} a metre at 20 degrees.`,
        ...{ figure: ohmPerMetre, limit: 0, unit: 'ohm', source: 'IEC 60028' },
      }),
    );
}

function unfedFindings(unfed: readonly RailBranch[]): readonly Finding[] {
  return unfed.map(({ line, start, end }) =>
    tell({
      rule: 'rail-unfed',
      level: 'halt',
      where: line,
      what: say`Nothing feeds ${line} from ${length(start)} to ${length(end)}.`,
      mend: say`Put a feeder at ${length((start + end) / 2)}, or lead the bus past it.`,
      ...{ figure: end - start, limit: 0, unit: 'mm', source: 'nodal analysis' },
    }),
  );
}

function assumedFindings({ rail, rails }: WiringInput): readonly Finding[] {
  if (rails.lines.length > 0 && !(rail.ohmPerMetre > 0)) return [railOfNothing(rail.ohmPerMetre)];
  if (!rail.assumed || rails.lines.length === 0) return [];
  return [
    tell({
      rule: 'rail-assumed',
      level: 'note',
      where: 'rails',
      what: say`One rail is taken to resist ${ohms(rail.ohmPerMetre)} a metre: nickel silver of the scale's usual height.`,
      mend: say`Measure a yard of your rail and write it as 'rails: { ohm-per-metre: ... }' in wiring.md.`,
      ...{
        figure: rail.ohmPerMetre,
        unit: 'ohm',
        source: 'code 100 nickel silver 1.45 milliohm an inch, others with the square of their height',
      },
    }),
  ];
}

function railOfNothing(ohmPerMetre: number): Finding {
  return tell({
    rule: 'rail-resists-nothing',
    level: 'halt',
    where: 'rails',
    what: say`One rail is written to resist ${ohms(ohmPerMetre)} a metre: no rail resists nothing.`,
    mend: say`Measure a yard of your rail, or leave 'ohm-per-metre' out: then that of nickel silver is taken.`,
    ...{ figure: ohmPerMetre, limit: 0, unit: 'ohm', source: 'Ohm' },
  });
}
