import type { Notebook } from './notebook.ts';
import type { Part } from './stock/part.ts';
import type { Amount } from './units/quantity.ts';

/** What a part can be asked for by name: `strut.along-1.length`; lengths in mm. */
const MEASURES: Readonly<Record<string, (part: Part) => Amount>> = {
  length: ({ blank }) => ({ value: blank.length, dimension: 'length' }),
  width: ({ blank }) => ({ value: blank.width, dimension: 'length' }),
  thickness: ({ blank }) => ({ value: blank.thickness, dimension: 'length' }),
  count: ({ places }) => ({ value: places.length, dimension: 'number' }),
};

/** A number that prose may ask for: a named dimension, or a measure of a part or of one of its pieces; null if none. */
export function valueNamed(notebook: Notebook, name: string): Amount | null {
  const dimension = notebook.dimensions.find((one) => one.name === name);
  if (dimension !== undefined) return dimension.amount;
  const dot = name.lastIndexOf('.');
  const measure = Object.hasOwn(MEASURES, name.slice(dot + 1)) ? MEASURES[name.slice(dot + 1)] : undefined;
  const id = name.slice(0, Math.max(0, dot));
  const part = notebook.parts.find((one) => one.id === id || one.places.some((place) => place.id === id));
  return measure === undefined || part === undefined ? null : measure(part);
}

/** Every name `valueNamed` knows. */
export function valueNames(notebook: Notebook): readonly string[] {
  const ids = notebook.parts.flatMap((part) => [part.id, ...part.places.map((place) => place.id)]);
  const ofParts = [...new Set(ids)].flatMap((id) => Object.keys(MEASURES).map((measure) => `${id}.${measure}`));
  return [...notebook.dimensions.map(({ name }) => name), ...ofParts];
}
