import type { Dimension, Quantity } from '../units/quantity.ts';

/** A value a `change` may set: a quantity, or words such as a stock's id. */
export type Settable = Pick<Quantity, 'dimension' | 'text' | 'tree' | 'at'> | string;

/** Settable values by their dotted path, chapter first: `benchwork.dimensions.width`. */
export type Settables = Readonly<Record<string, Settable>>;

const DIMENSIONS: readonly Dimension[] = [
  ...(['number', 'length', 'angle', 'grade', 'duration', 'months', 'money', 'current'] as const),
  ...(['voltage', 'resistance', 'power', 'mass', 'density', 'stress', 'volume'] as const),
];

function isQuantity(value: object): value is Quantity {
  return (
    'tree' in value &&
    'text' in value &&
    'at' in value &&
    'dimension' in value &&
    DIMENSIONS.some((one) => one === value.dimension)
  );
}

/** All values below a chapter that a change may name; a thing in a list goes by its place and, if it has one, its id. */
export function settablesOf(chapter: string, value: unknown): Settables {
  const found: Record<string, Settable> = {};
  gather(chapter, value, found);
  return found;
}

function gather(path: string, value: unknown, found: Record<string, Settable>): void {
  if (typeof value === 'string') found[path] = value;
  if (typeof value === 'number') found[path] = String(value);
  if (typeof value !== 'object' || value === null) return;
  if (isQuantity(value)) {
    found[path] = value;
    return;
  }
  for (const [key, item] of Object.entries(value)) {
    gather(`${path}.${key}`, item, found);
    const id = Array.isArray(value) ? idOf(item) : null;
    if (id !== null) gather(`${path}.${id}`, item, found);
  }
}

function idOf(item: unknown): string | null {
  if (typeof item !== 'object' || item === null || !('id' in item)) return null;
  return typeof item.id === 'string' ? item.id : null;
}
