import { showNumber } from '../../core/units/show.ts';
import type { LineVoltage } from '../../core/wiring/layout-circuit.ts';
import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import { saidLength } from '../figures.ts';
import type { Mark, Spot } from '../mark.ts';
import { lettering, smallText, textWidth, wrapped } from '../text.ts';
import type { WiringAsk } from './wiring-stage.ts';
import { filledDot } from './wiring-stage.ts';

/** The graph's own size on paper, and how long its ticks are, mm. */
const WIDE = 110;
const HIGH = 42;
const TICK = 1.2;
/** Distances on the axis stand in steps of these, the least that gives at most so many; mm. */
const STEPS = {
  mm: [20, 50, 100, 200, 500, 1000, 2000, 5000],
  in: [25.4, 50.8, 152.4, 304.8, 609.6, 1219.2, 3048],
} as const;
const MOST = 6;

/** Voltage along each line while a train draws all its district gives, with what common practice still allows. */
export function voltageBlocks(ask: WiringAsk): readonly Block[] {
  const { wiring } = ask;
  const least = wiring.volts * (1 - wiring.mayLose);
  const drawn = wiring.voltage.filter(({ points }) => points.length > 1);
  const all = drawn.flatMap(({ points }) => points.map(([, volts]) => volts));
  const low = Math.floor(Math.min(least, ...all) * 2 - 0.2) / 2;
  return drawn.map((one) => lineBlock(ask, one, { least, low }));
}

type Range = { readonly least: number; readonly low: number };

function lineBlock(ask: WiringAsk, { line, points }: LineVoltage, { least, low }: Range): Block {
  const { options, wiring } = ask;
  const long = points.reduce((most, [at]) => Math.max(most, at), 0);
  const spot = ([at, volts]: readonly [number, number]): Spot => [
    (at / long) * WIDE,
    HIGH * (1 - (volts - low) / (wiring.volts - low)),
  ];
  const level = (volts: number) => spot([0, volts])[1];
  const worst = points.reduce<readonly [number, number]>(
    (one, other) => (other[1] < one[1] ? other : one),
    [0, Infinity],
  );
  const [x, y] = spot(worst);
  const marks: readonly Mark[] = [
    straight([0, 0], [0, HIGH], 'feature'),
    straight([0, HIGH], [WIDE, HIGH], 'feature'),
    straight([0, level(least)], [WIDE, level(least)], 'hidden'),
    { kind: 'polyline', points: points.map(spot), pen: 'edge', role: 'feature' },
    filledDot([x, y], 0.9),
    ...axisWords([wiring.volts, least, low], level),
    ...distances(ask, long),
  ];
  const district = wiring.districts.find(({ lines }) => lines.includes(line)) ?? wiring.districts.at(-1);
  const draws =
    district === undefined
      ? ''
      : `, where a train draws the ${showNumber(district.forTrains, 2)} A that are left for trains`;
  const said = [
    `Volts at each place${draws}, by its distance from the start of ${line}.`,
    `Dot: lowest, ${showNumber(worst[1], 2)} V at ${saidLength(worst[0], options.unit)}. Dashed: the least that common practice allows.`,
  ];
  const words = said.flatMap((one) => wrapped(one, WIDE + 12, { size: smallText, weight: 'regular' }));
  return headedBlock({ marks, views: [], dimensions: [] }, `Volts along ${line}`, words);
}

function straight(from: Spot, to: Spot, pen: 'feature' | 'hidden'): Mark {
  return { kind: 'line', from, to, pen, role: pen };
}

/** Ticks and distances below the axis, the line's own length at its end. */
function distances({ options }: WiringAsk, long: number): readonly Mark[] {
  const step = STEPS[options.unit].find((one) => long / one <= MOST) ?? long;
  const end = saidLength(long, options.unit);
  const free = WIDE - textWidth(end, smallText) - 2;
  const stops = Array.from({ length: Math.ceil(long / step - 1e-9) }, (_, i) => i * step);
  const ticked = stops.flatMap((at): readonly Mark[] => {
    const x = (at / long) * WIDE;
    const text = at === 0 ? '0' : saidLength(at, options.unit);
    const half = textWidth(text, smallText) / 2;
    const word = x + half > free ? [] : [lettering(text, [x, HIGH + 5], { anchor: 'middle' })];
    return [straight([x, HIGH], [x, HIGH + TICK], 'feature'), ...word];
  });
  return [
    ...ticked,
    straight([WIDE, HIGH], [WIDE, HIGH + TICK], 'feature'),
    lettering(end, [WIDE, HIGH + 5], { anchor: 'end' }),
  ];
}

function axisWords(volts: readonly number[], level: (volts: number) => number): readonly Mark[] {
  const taken: number[] = [];
  return volts.flatMap((one): readonly Mark[] => {
    const y = level(one);
    if (taken.some((other) => Math.abs(other - y) < 3.4)) return [];
    taken.push(y);
    return [lettering(`${showNumber(one, 2)} V`, [-1.5, y + 1.2], { anchor: 'end' })];
  });
}
