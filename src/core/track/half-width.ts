import type { TrackInput } from './input.ts';
import { gaugeOf } from './scale.ts';

/** Sleepers reach so many gauges to each side of the middle; common practice, no source. */
const SLEEPER = 0.9;

/** Half of what has to lie on the deck: the roadbed's width, or the sleepers' without one; mm. */
export function halfWidthOf({ roadbed, scale }: TrackInput): number {
  return roadbed === null ? SLEEPER * gaugeOf(scale) : roadbed.width / 2;
}
