import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import { saidLength } from '../figures.ts';
import type { Mark, Spot } from '../mark.ts';
import { lettering } from '../text.ts';
import type { WiringAsk } from './wiring-stage.ts';

/** The graph's own size on paper, mm. */
const WIDE = 110;
const HIGH = 45;

/** Voltage along each line while a train draws all its district gives, with what common practice still allows. */
export function voltageBlocks(ask: WiringAsk): readonly Block[] {
  const { wiring } = ask;
  const least = wiring.volts * (1 - wiring.mayLose);
  const drawn = wiring.voltage.filter(({ points }) => points.length > 1);
  const all = drawn.flatMap(({ points }) => points.map(([, volts]) => volts));
  const low = Math.floor(Math.min(least, ...all) * 2 - 0.2) / 2;
  return drawn.map(({ line, points }) => {
    const long = points.reduce((most, [at]) => Math.max(most, at), 0);
    const spot = ([at, volts]: readonly [number, number]): Spot => [
      (at / long) * WIDE,
      HIGH * (1 - (volts - low) / (wiring.volts - low)),
    ];
    const level = (volts: number) => spot([0, volts])[1];
    const marks: readonly Mark[] = [
      { kind: 'line', from: [0, 0], to: [0, HIGH], pen: 'feature', role: 'feature' },
      { kind: 'line', from: [0, HIGH], to: [WIDE, HIGH], pen: 'feature', role: 'feature' },
      { kind: 'line', from: [0, level(least)], to: [WIDE, level(least)], pen: 'hidden', role: 'hidden' },
      { kind: 'polyline', points: points.map(spot), pen: 'edge', role: 'feature' },
      ...axisWords([wiring.volts, least, low], level),
      lettering('0', [0, HIGH + 4]),
      lettering(saidLength(long, ask.options.unit), [WIDE, HIGH + 4], { anchor: 'end' }),
    ];
    return headedBlock({ marks, views: [], dimensions: [] }, `Volts along ${line}`, [
      'Dashed: the least that common practice allows.',
    ]);
  });
}

function axisWords(volts: readonly number[], level: (volts: number) => number): readonly Mark[] {
  const taken: number[] = [];
  return volts.flatMap((one): readonly Mark[] => {
    const y = level(one);
    if (taken.some((other) => Math.abs(other - y) < 3.4)) return [];
    taken.push(y);
    return [lettering(`${Math.round(one * 100) / 100} V`, [-1.5, y + 1.2], { anchor: 'end' })];
  });
}
