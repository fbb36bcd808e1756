import type { Net } from './nets.ts';
import type { Stretch } from './routing/limbs.ts';

/** The id of a pair's length of bus: `bus-quay`, its branches `bus-quay-2` and on. */
export function busPair({ id, stretches }: Net, stretch: Stretch): string {
  const place = stretches.findIndex(({ limb }) => limb === stretch.limb);
  return place === 0 ? `bus-${id}` : `bus-${id}-${place + 1}`;
}
