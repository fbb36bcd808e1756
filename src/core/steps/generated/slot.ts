import type { Feature, Part } from '../../stock/part.ts';
import { instanceIds } from './words.ts';

type Notch = Extract<Feature, { kind: 'notch' }>;

/** Tells half of a lap, a notch that a part enters, from a notch that answers a request such as a motor's. */
export function slotTest(parts: readonly Part[]): (feature: Feature) => feature is Notch {
  const ids = new Set(instanceIds(parts));
  return (feature): feature is Notch => feature.kind === 'notch' && (feature.for === undefined || ids.has(feature.for));
}
