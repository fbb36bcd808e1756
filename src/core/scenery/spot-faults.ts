import type { Fault } from '../units/problem.ts';
import { bothUnits } from '../units/reading.ts';
import type { Spot } from './land.ts';

/** Spots this near are one place; mm. */
const SAME_PLACE = 0.5;
const SAME_HEIGHT = 1e-6;

/** Two heights at one spot, and heights under the deck, where there is nothing to build on. */
export function spotFaults(spots: readonly Spot[]): readonly Fault[] {
  const twice = spots.flatMap((spot, i) => {
    const other = spots
      .slice(0, i)
      .find(
        (one) =>
          Math.hypot(one.x - spot.x, one.y - spot.y) < SAME_PLACE && Math.abs(one.height - spot.height) > SAME_HEIGHT,
      );
    return other === undefined ? [] : [twoHeights(spot, other)];
  });
  return [...twice, ...spots.filter(({ height }) => height < 0).map(underDeck)];
}

function twoHeights(spot: Spot, other: Spot): Fault {
  return {
    rule: 'spot-twice',
    at: spot.at,
    what: `two heights at ${bothUnits(spot.x)}, ${bothUnits(spot.y)}: ${bothUnits(other.height)} and ${bothUnits(spot.height)}`,
    mend: 'keep one of the two spots',
  };
}

function underDeck(spot: Spot): Fault {
  return {
    rule: 'spot-under-deck',
    at: spot.at,
    what: `the ground at ${bothUnits(spot.x)}, ${bothUnits(spot.y)} would lie ${bothUnits(-spot.height)} under the deck`,
    mend: 'write a height of 0 or more; a hole in the deck is water with its outline',
  };
}
