import { z } from 'zod';
import type { QuantityKit } from './schema.ts';

/** Words of the author's own: anything but nothing. */
export const words = z.string().regex(/\S/, 'some words');

/** A name others may point to: letters, digits, single hyphens: `W1`, `chalk-hill`. */
export const identifier = z.string().regex(/^[A-Za-z0-9]+(?:-[A-Za-z0-9]+)*$/, 'letters, digits and single hyphens');

/** A name made of identifiers with dots between: `post.front-left`, `birch-ply-6.5`, `W1.branch`. */
export const dottedName = z
  .string()
  .regex(/^[A-Za-z0-9]+(?:[-.][A-Za-z0-9]+)*$/, 'letters, digits, single hyphens and dots');

/** Yes or no as YAML writes them. */
export const yesNo = z.enum(['true', 'false']).transform((text) => text === 'true');

/** A chapter's or the notebook's own word for itself. */
export const chapterName = z.enum(['benchwork', 'track', 'wiring', 'scenery']);

/** Old name to new name: a made piece keeps its label when an id changes. */
export const renamed = z.record(dottedName, dottedName);

/** A point in notebook coordinates: x along, y across. */
export function point(kit: QuantityKit) {
  return z.tuple([kit.length, kit.length]);
}

/** A closed outline; the last point joins the first. */
export function outline(kit: QuantityKit) {
  return z.array(point(kit)).min(3, 'three points or more');
}

/** A place along a line of track: past one of its named joints, or from its start. */
export function alongLine(kit: QuantityKit) {
  return z.union([
    z.strictObject({ line: identifier, past: identifier, by: kit.length }),
    z.strictObject({ line: identifier, at: kit.length }),
  ]);
}
