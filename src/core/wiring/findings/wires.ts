import type { Finding } from '../../finding.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import type { Computed } from '../computed.ts';
import type { WiringInput } from '../input.ts';
import type { DistrictFigures } from '../layout-circuit.ts';
import { carries, mostLoop, TAIL_LIMIT, TRIP_FACTOR } from '../protection.ts';
import { amps, ohms, PRACTICE, tell, volts } from '../tell.ts';
import { longestTail, sizeMend, wiresOf } from '../wire-size.ts';

/** One way in which a district's wires do not serve it. */
type Fault = Pick<Finding, 'rule' | 'level' | 'figure' | 'limit' | 'unit' | 'source'> & {
  readonly what: Sentence;
  /** besides other wires */
  readonly or: Sentence;
};

/** All that is wrong with a district's wires in one finding, the worst first, with one mend that cures all of it. */
export function wireFindings(input: WiringInput, computed: Computed, district: DistrictFigures): readonly Finding[] {
  const faults = [...trip(input, district), ...rating(input, computed, district), ...drop(input, district)];
  const worst = faults.find(({ level }) => level === 'halt') ?? faults[0];
  if (worst === undefined) return [];
  const others = faults.filter((one) => one !== worst);
  const { figure, level, limit, or, rule, source, unit } = worst;
  return [
    tell({
      ...{ rule, level, where: district.id, figure, limit, unit, source },
      what: [...worst.what, ...others.flatMap(({ what }) => [' ', ...what])],
      mend: [...sizeMend(input, computed), ...or],
    }),
  ];
}

function drop(input: WiringInput, { forTrains, worst }: DistrictFigures): readonly Fault[] {
  const least = input.supply.volts * (1 - input.mayLose);
  if (worst === null || worst.volts >= least - 1e-9) return [];
  return [
    {
      ...{ rule: 'volts-low', level: 'care', figure: worst.volts, limit: least, unit: 'V', or: [] },
      what: say`Trains that draw ${amps(forTrains)} on ${worst.line} at ${length(worst.at)} get ${volts(worst.volts)} of ${volts(input.supply.volts)}.`,
      source: `${PRACTICE}: at most ${Math.round(input.mayLose * 100)} % lost`,
    },
  ];
}

/** A short that the breaker takes for a train burns whatever is thinnest. */
function trip(input: WiringInput, { name, short, trips, tripsAt }: DistrictFigures): readonly Fault[] {
  if (short === null || trips) return [];
  const lower = Math.floor((short.amps / TRIP_FACTOR) * 10) / 10;
  return [
    {
      ...{ rule: 'short-does-not-trip', level: 'halt', figure: short.loop, unit: 'ohm' },
      limit: mostLoop({ volts: input.supply.volts, tripsAt }),
      what: say`A short on ${short.line} at ${length(short.at)} draws ${amps(short.amps)} through ${ohms(short.loop)}; ${name} needs ${amps(TRIP_FACTOR * tripsAt)} to switch off at once.`,
      or: say` Or let ${name} trip at ${amps(lower)}.`,
      source: `${PRACTICE}: a short draws twice the trip current; other schools take it as it is, or three times`,
    },
  ];
}

/** What a breaker lets through has to be carried by every wire behind it; above what a short wire may carry it burns. */
function rating(input: WiringInput, computed: Computed, district: DistrictFigures): readonly Fault[] {
  const wires = wiresOf(input);
  const longest = longestTail(computed, district.id);
  if (wires === null || longest === 0) return [];
  const { name, tripsAt } = district;
  const runs = [
    { what: 'bus', stock: wires.bus, run: Number.POSITIVE_INFINITY },
    { what: 'feeders', stock: wires.thin, run: longest },
  ] as const;
  return runs.flatMap(({ what, stock, run }): readonly Fault[] => {
    const may = carries(stock.amps, run);
    if (may >= tripsAt) return [];
    const long = what === 'feeders' && run >= TAIL_LIMIT;
    const shorter = long && stock.amps.chassis >= tripsAt ? say` Or keep the feeders under ${length(TAIL_LIMIT)}.` : [];
    return [
      {
        ...{ rule: 'wire-thin-for-trip', level: stock.amps.chassis < tripsAt ? 'halt' : 'care' },
        ...{ figure: may, limit: tripsAt, unit: 'A' },
        what: [
          `The ${what} of ${name}`,
          ...(long ? say`, the longest of them ${length(run)},` : []),
          ` may carry ${amps(may)}; ${name} lets ${amps(tripsAt)} through before it trips.`,
        ],
        or: [...shorter, ...(computed.sized() === null ? say` Or let ${name} trip at ${amps(may)}.` : [])],
        source: 'a fuse protects its wire: NEC 240 practice, ratings as in the stock',
      },
    ];
  });
}
