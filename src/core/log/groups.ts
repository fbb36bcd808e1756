import type { Part } from '../stock/part.ts';
import type { LogRecord } from './record.ts';

/** Names of groups over these instances: `drawer` and `drawer.front-2` over `drawer.front-2.face`. */
export function groupNames(instances: readonly string[]): readonly string[] {
  const groups = instances.flatMap((id) => {
    const words = id.split('.');
    return words.slice(1).map((_, i) => words.slice(0, i + 1).join('.'));
  });
  return [...new Set(groups)];
}

/** Names with each group in the place of its pieces, none of them twice; a name that is no group stays as it is. */
export function spelledOut(names: readonly string[], instances: readonly string[]): readonly string[] {
  const known = new Set(instances);
  const told = new Set(names);
  return names.flatMap((name) => {
    const pieces = known.has(name) ? [] : instances.filter((id) => id.startsWith(`${name}.`));
    if (pieces.length === 0) return [name];
    const more = pieces.filter((id) => !told.has(id));
    for (const id of more) told.add(id);
    return more;
  });
}

/** Records whose pieces are named one by one, for parts as they were or are; an entry may name a whole drawer or leg. */
export function byPiece(records: readonly LogRecord[], parts: readonly Part[]): readonly LogRecord[] {
  const instances = parts.flatMap(({ places }) => places.map(({ id }) => id));
  return records.map((record) => ({
    ...record,
    made: spelledOut(record.made, instances),
    placed: spelledOut(record.placed, instances),
    apart: spelledOut(record.apart, instances),
  }));
}
