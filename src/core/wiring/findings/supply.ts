import type { Finding } from '../../finding.ts';
import { say } from '../../units/say.ts';
import { districtsOf } from '../districts.ts';
import type { WiringInput } from '../input.ts';
import { steadyAmps } from '../layout-circuit.ts';
import { CLASS_2, EXTRA_LOW, isClass2 } from '../protection.ts';
import { amps, listed, tell, volts } from '../tell.ts';

/** Checks of what feeds the layout and of what is asked of it. */
export function supplyFindings(input: WiringInput): readonly Finding[] {
  if (!gives(input)) return [missing(input)];
  return [
    ...dangerous(input),
    ...overloads(input),
    ...breakers(input),
    ...twice(input),
    ...oneBlock(input),
    ...throttled(input),
  ];
}

/** Whether a supply gives anything at all. */
export function gives({ supply }: Pick<WiringInput, 'supply'>): boolean {
  return supply.volts > 0 && supply.tripsAt > 0;
}

function missing({ supply }: WiringInput): Finding {
  return tell({
    rule: 'supply-missing',
    level: 'halt',
    where: 'supply',
    what: say`The supply gives ${volts(supply.volts)} and trips at ${amps(supply.tripsAt)}: nothing runs.`,
    mend: say`Write the volts and the trip current on the plate of a bought, listed supply.`,
    figure: Math.min(supply.volts, supply.tripsAt),
    limit: 0,
    unit: 'V',
  });
}

function dangerous({ supply }: WiringInput): readonly Finding[] {
  const limit = EXTRA_LOW[supply.control];
  if (supply.volts > limit) {
    return [
      tell({
        rule: 'supply-not-extra-low',
        level: 'halt',
        where: 'supply',
        what: say`${volts(supply.volts)} on bare rails is above extra-low voltage.`,
        mend: say`Use a bought, listed supply of at most ${volts(Math.min(limit, CLASS_2.volts))}; anything above is for a licensed electrician.`,
        ...{ figure: supply.volts, limit, unit: 'V', source: 'IEC 61140, extra-low voltage, as read' },
      }),
    ];
  }
  if (isClass2(supply.volts, supply.tripsAt)) return [];
  const most = CLASS_2.voltAmps / supply.volts;
  return [
    tell({
      rule: 'supply-above-class-2',
      level: 'care',
      where: 'supply',
      what: say`${volts(supply.volts)} at ${amps(supply.tripsAt)} is more than a supply of class 2 may give, which can heat a thin wire until it burns.`,
      mend: say`Part the layout into districts that trip at ${amps(Math.floor(most * 10) / 10)} or less, each with its own listed supply, and ask what your local code wants.`,
      ...{
        figure: supply.volts * supply.tripsAt,
        limit: CLASS_2.voltAmps,
        unit: 'count',
        source: 'NEC 725, class 2: at most 30 V and 100 VA, as read',
      },
    }),
  ];
}

/** Steady loads that leave nothing for trains. */
function overloads(input: WiringInput): readonly Finding[] {
  const own = districtsOf(input).map(({ id, tripsAt }) => ({ id, tripsAt, steady: steadyAmps(input, id) }));
  const total = {
    id: 'supply',
    tripsAt: input.supply.tripsAt,
    steady: own.reduce((sum, { steady }) => sum + steady, 0),
  };
  return [...own, total]
    .filter(({ steady, tripsAt }) => steady > tripsAt)
    .map(({ id, steady, tripsAt }) =>
      tell({
        rule: 'overload',
        level: 'halt',
        where: id,
        what: say`Steady loads draw ${amps(steady)} of ${id}, which switches off at ${amps(tripsAt)}.`,
        mend: say`Take ${amps(steady - tripsAt)} of loads off it: give lights and motors a listed supply of their own.`,
        ...{ figure: steady, limit: tripsAt, unit: 'A', source: 'sum of the loads as written' },
      }),
    );
}

/** A district that trips no earlier than the supply does switches off everything. */
function breakers({ districts, supply }: WiringInput): readonly Finding[] {
  return districts
    .filter(({ tripsAt }) => tripsAt >= supply.tripsAt)
    .map(({ id, tripsAt }) =>
      tell({
        rule: 'district-trips-late',
        level: 'care',
        where: id,
        what: say`${id} trips at ${amps(tripsAt)}, the supply itself at ${amps(supply.tripsAt)}: a short in ${id} stops everything.`,
        mend: say`Let ${id} trip below ${amps(supply.tripsAt)}, say at ${amps(Math.round(supply.tripsAt * 6.67) / 10)}.`,
        ...{ figure: tripsAt, limit: supply.tripsAt, unit: 'A' },
      }),
    );
}

function twice({ districts }: WiringInput): readonly Finding[] {
  const lines = [...new Set(districts.flatMap((one) => one.lines))];
  return lines.flatMap((line) => {
    const owners = districts.filter((one) => one.lines.includes(line)).map(({ id }) => id);
    if (owners.length < 2) return [];
    return [
      tell({
        rule: 'line-in-two-districts',
        level: 'halt',
        where: line,
        what: say`${line} stands in ${listed(owners)}: their breakers would be joined by its rails.`,
        mend: say`Leave ${line} in ${owners[0] ?? ''} only.`,
        ...{ figure: owners.length, limit: 1, source: 'geometry' },
      }),
    ];
  });
}

/** With direct current a train is driven by its block: one block, one train. */
function oneBlock(input: WiringInput): readonly Finding[] {
  const { supply, rails } = input;
  if (supply.control !== 'dc' || rails.lines.length < 2 || districtsOf(input).length > 1) return [];
  return [
    tell({
      rule: 'one-block',
      level: 'note',
      where: 'rails',
      what: say`With direct current ${listed(rails.lines.map(({ id }) => id))} are one block: every train on them moves at once.`,
      mend: say`Make ${rails.lines[rails.lines.length - 1]?.id ?? ''} a district of its own, with a switch that takes both its rails off.`,
      ...{ figure: 1, limit: rails.lines.length },
    }),
  ];
}

/** With direct current the bus has what the throttle gives: lights follow it and turnouts do not throw. */
function throttled({ loads, supply }: WiringInput): readonly Finding[] {
  if (supply.control !== 'dc' || loads.length === 0) return [];
  return [
    tell({
      rule: 'loads-on-throttle',
      level: 'note',
      where: 'supply',
      what: say`With direct current ${listed(loads.map(({ id }) => id))} get what the throttle gives, and nothing while trains stand.`,
      mend: say`Give lights and motors a bought, listed supply of their own; the figures here are for a throttle wide open.`,
      ...{ figure: loads.length, limit: 0 },
    }),
  ];
}
