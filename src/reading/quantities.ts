import type { Quantity } from '../core/units/quantity.ts';
import { joined } from './tree.ts';

export function isQuantity(value: object): value is Quantity {
  return 'dimension' in value && 'tree' in value && 'text' in value && 'at' in value;
}

/** Fills in the place of every quantity inside a value that was read; nothing else changes. */
export function placed<T>(value: T, path: string): T {
  return placedAny(value, path) as T;
}

function placedAny(value: unknown, path: string): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((item, i) => placedAny(item, joined(path, i)));
  if (isQuantity(value)) return { ...value, at: path };
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, placedAny(item, joined(path, key))]));
}
