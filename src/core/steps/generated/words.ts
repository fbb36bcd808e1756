import type { Part } from '../../stock/part.ts';
import { length, type Said, type Sentence } from '../../units/say.ts';

/** Lengths with commas between, each once, in rising order, mm. */
export function lengths(values: readonly number[]): Said[] {
  const rising = [...new Set(values.map(tenth))].sort((a, b) => a - b);
  return rising.flatMap((value, i) => (i === 0 ? [length(value)] : [', ', length(value)]));
}

/** mm rounded to 0.1, never -0; only to see which settings are one setting. */
export function tenth(mm: number): number {
  return Math.round(mm * 10) / 10 + 0;
}

/** The instances of parts by name, with commas. */
export function instances(parts: readonly Part[]): string {
  return parts.flatMap((part) => part.places.map((place) => place.id)).join(', ');
}

/** Ids of all instances of these parts. */
export function instanceIds(parts: readonly Part[]): string[] {
  return parts.flatMap((part) => part.places.map((place) => place.id));
}

/** `1 piece`, `3 pieces`. */
export function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

/** Things in groups by a key, groups in order of first sight. */
export function grouped<T>(things: readonly T[], key: (thing: T) => string | number): T[][] {
  const groups = new Map<string | number, T[]>();
  for (const thing of things) {
    const group = groups.get(key(thing));
    if (group === undefined) groups.set(key(thing), [thing]);
    else group.push(thing);
  }
  return [...groups.values()];
}

/** Sentences joined into one. */
export function joined(...pieces: readonly (readonly Said[])[]): Sentence {
  return pieces.flat();
}
