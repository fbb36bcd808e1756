import type { Laid, LineSpot, Trial } from '../core/log/record.ts';
import { both, type Html, line, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import { plainName } from './words.ts';

/** A place along a line of track. */
export function spotWords({ at, by, line: of, past }: LineSpot): Html {
  if (past !== null && by !== null)
    return line(text(`${plainName(of)}, `), both(lengthPair(by)), text(` past ${plainName(past)}`));
  return at === null ? text(plainName(of)) : line(text(`${plainName(of)} at `), both(lengthPair(at)));
}

/** How often which train came off. */
export function trialWords({ direction, of, off, vehicle }: Trial): string {
  const train = vehicle === null ? '' : ` with ${plainName(vehicle)}`;
  return `: off ${off} of ${of} times${train}${direction === null ? '' : `, ${direction}`}`;
}

/** What the track measured there. Small lengths stay in mm: gauges have them. */
export function laidWords({ gap, gauge, heightStep, kink, sideStep, twist }: Laid): Html {
  const mm = (name: string, value: number | null) => (value === null ? [] : [`${name} ${Number(value.toFixed(2))} mm`]);
  const angle = kink === null ? [] : [`kink ${Number(((kink * 180) / Math.PI).toFixed(2))}°`];
  const told = [
    ...mm('step in height', heightStep),
    ...mm('step sideways', sideStep),
    ...mm('gap', gap),
    ...mm('gauge', gauge),
    ...angle,
    ...mm('twist', twist),
  ];
  return text(`: ${told.join(', ')}`);
}
