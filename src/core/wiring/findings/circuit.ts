import type { Finding } from '../../finding.ts';
import type { WireStock } from '../../stock/goods.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import type { Feeder } from '../feeders.ts';
import type { Gap } from '../gap.ts';
import type { WiringInput } from '../input.ts';
import {
  type DistrictFigures,
  districtFigures,
  type Laid,
  type LayoutCircuit,
  layoutCircuit,
} from '../layout-circuit.ts';
import { carries, mostLoop, TAIL_LIMIT, TRIP_FACTOR } from '../protection.ts';
import type { RailBranch } from '../rail-circuit.ts';
import type { Tail } from '../tail.ts';
import { amps, ohms, PRACTICE, tell, volts } from '../tell.ts';

/** The circuit as computed, with what it was made of so that other wires can be tried. */
export type Computed = {
  readonly circuit: LayoutCircuit;
  readonly districts: readonly DistrictFigures[];
  readonly unfed: readonly RailBranch[];
  readonly gaps: readonly Gap[];
  readonly feeders: readonly Feeder[];
  readonly tails: readonly Tail[];
  readonly laid: Laid | null;
};

/** Voltage, shorts, ratings and rails without a feed. */
export function circuitFindings(input: WiringInput, computed: Computed): readonly Finding[] {
  return [
    ...conductFindings(input),
    ...unfedFindings(computed.unfed),
    ...computed.districts.flatMap((district) => [
      ...dropFindings(input, computed, district),
      ...tripFindings(input, computed, district),
    ]),
    ...ratingFindings(input, computed),
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

function dropFindings(
  input: WiringInput,
  computed: Computed,
  { id, worst, forTrains }: DistrictFigures,
): readonly Finding[] {
  const least = input.supply.volts * (1 - input.mayLose);
  if (worst === null || worst.volts >= least - 1e-9) return [];
  return [
    tell({
      rule: 'volts-low',
      level: 'care',
      where: id,
      what: say`Trains that draw ${amps(forTrains)} on ${worst.line} at ${length(worst.at)} get ${volts(worst.volts)} of ${volts(input.supply.volts)}.`,
      mend: mendedBy(input, computed, (figures) =>
        figures.every((one) => one.id !== id || (one.worst?.volts ?? 0) >= least - 1e-9),
      ),
      ...{
        figure: worst.volts,
        limit: least,
        unit: 'V',
        source: `${PRACTICE}: at most ${Math.round(input.mayLose * 100)} % lost`,
      },
    }),
  ];
}

/** A short that the breaker takes for a train burns whatever is thinnest. */
function tripFindings(
  input: WiringInput,
  computed: Computed,
  { id, short, tripsAt, trips }: DistrictFigures,
): readonly Finding[] {
  if (short === null || trips) return [];
  const most = mostLoop({ volts: input.supply.volts, tripsAt });
  return [
    tell({
      rule: 'short-does-not-trip',
      level: 'halt',
      where: id,
      what: say`A short on ${short.line} at ${length(short.at)} draws ${amps(short.amps)} through ${ohms(short.loop)}; ${id} needs ${amps(TRIP_FACTOR * tripsAt)} to switch off at once.`,
      mend: [
        ...mendedBy(input, computed, (figures) => figures.every((one) => one.id !== id || one.trips)),
        ` Or let ${id} trip at ${amps(Math.floor((short.amps / TRIP_FACTOR) * 10) / 10)}.`,
      ],
      ...{
        figure: short.loop,
        limit: most,
        unit: 'ohm',
        source: `${PRACTICE}: a short draws twice the trip current; other schools take it as it is, or three times`,
      },
    }),
  ];
}

/** The smallest change that makes `good` true: a thicker bus from stock, else feeders closer together. */
export function mendedBy(
  input: WiringInput,
  computed: Computed,
  good: (figures: readonly DistrictFigures[]) => boolean,
): Sentence {
  const { bus, feeders } = input;
  if (bus === null) return say`Give the layout a bus.`;
  const tail = feeders?.stock.ohmPerMetre ?? bus.stock.ohmPerMetre;
  const tried = (ohmPerMetre: number, thin: number) =>
    districtFigures(
      input,
      layoutCircuit({
        input,
        gaps: computed.gaps,
        feeders: computed.feeders,
        laid: computed.laid,
        bus: ohmPerMetre,
        tail: thin,
      }),
    );
  const thicker = input.wires.filter(({ area }) => area > bus.stock.area + 1e-9).toSorted((a, b) => a.area - b.area);
  const first = thicker.find(({ ohmPerMetre }) => good(tried(ohmPerMetre, tail)));
  if (first !== undefined) return say`Take ${named(first)} for the bus.`;
  const best = thicker[thicker.length - 1];
  const finer = thicker
    .toSorted((a, b) => a.area - b.area)
    .find(({ ohmPerMetre }) => good(tried(best?.ohmPerMetre ?? bus.stock.ohmPerMetre, ohmPerMetre)));
  if (finer !== undefined && best !== undefined)
    return say`Take ${named(best)} for the bus and ${named(finer)} for the feeders.`;
  const every = feeders === null ? 900 : feeders.every / 2;
  return say`No wire in stock is thick enough alone: put a feeder every ${length(every)}, and a second supply for half of the layout.`;
}

function named({ id, gauge, area }: WireStock): string {
  return `${id} (${String(area)} mm2${gauge === null ? '' : `, ${gauge}`})`;
}

/** What a breaker lets through has to be carried by every wire behind it. */
function ratingFindings(input: WiringInput, { districts, tails }: Computed): readonly Finding[] {
  const { bus, feeders } = input;
  if (bus === null) return [];
  const thin = feeders?.stock ?? bus.stock;
  return districts.flatMap(({ id, tripsAt }) => {
    const mine = tails.filter(({ district, tap }) => district === id && !tap.drop.startsWith('load.'));
    const longest = mine.reduce((most, { length: long }) => Math.max(most, long), 0);
    if (mine.length === 0) return [];
    return [
      ...rated(input, { what: 'bus', where: id, stock: bus.stock, run: Number.POSITIVE_INFINITY, tripsAt }),
      ...rated(input, { what: 'feeders', where: id, stock: thin, run: longest, tripsAt }),
    ];
  });
}

type Rated = {
  readonly what: string;
  readonly where: string;
  readonly stock: WireStock;
  readonly run: number;
  readonly tripsAt: number;
};

function rated({ wires }: WiringInput, { what, where, stock, run, tripsAt }: Rated): readonly Finding[] {
  const may = carries(stock.amps, run);
  if (may >= tripsAt) return [];
  const enough = wires.toSorted((a, b) => a.area - b.area).find(({ amps: own }) => carries(own, run) >= tripsAt);
  const long = Number.isFinite(run) && run >= TAIL_LIMIT ? say`, the longest of them ${length(run)},` : [];
  const shorter =
    Number.isFinite(run) && stock.amps.chassis >= tripsAt ? say` Or keep them under ${length(TAIL_LIMIT)}.` : [];
  return [
    tell({
      rule: 'wire-thin-for-trip',
      level: 'care',
      where,
      what: [
        `The ${what} of ${where}`,
        ...long,
        ` may carry ${amps(may)}; ${where} lets ${amps(tripsAt)} through before it trips.`,
      ],
      mend: [
        enough === undefined ? `Let ${where} trip at ${amps(may)}.` : `Take ${named(enough)} for the ${what}.`,
        ...shorter,
      ],
      ...{
        figure: may,
        limit: tripsAt,
        unit: 'A',
        source: 'a fuse protects its wire: NEC 240 practice, ratings as in the stock',
      },
    }),
  ];
}

function assumedFindings({ rail, rails }: WiringInput): readonly Finding[] {
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
