import type { CutPart } from '../cutting/job.ts';
import type { Part } from '../stock/part.ts';
import type { InstanceState } from './part-state.ts';

/** A line of the cut list of what is still to make; blank sizes in mm. */
export type LeftToMake = {
  readonly part: string;
  readonly label: string;
  readonly stock: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly grain: 'length' | 'width' | 'any';
  readonly quantity: number;
  readonly instances: readonly string[];
};

/** Parts for now that have no sound piece yet. */
export function leftToMake(parts: readonly Part[], states: readonly InstanceState[]): LeftToMake[] {
  const missing = new Set(states.filter((one) => !one.made).map((one) => one.instance));
  return parts
    .filter((part) => part.phase === 'now')
    .map((part) => ({ part, instances: part.places.map((place) => place.id).filter((id) => missing.has(id)) }))
    .filter((one) => one.instances.length > 0)
    .map(({ part, instances }) => ({
      part: part.id,
      label: part.label,
      stock: part.stock,
      ...part.blank,
      quantity: instances.length,
      instances,
    }));
}

/** What is left to make of one stock, as the cutting takes it. */
export function leftToCut(left: readonly LeftToMake[], stock: string): CutPart[] {
  return left
    .filter((one) => one.stock === stock)
    .map(({ part, length, width, quantity, grain }) => ({ id: part, length, width, quantity, grain }));
}
