import { editDistance, nearest } from '../units/nearest.ts';

/** A name with every number left open: `strut.across-2` and `strut.across-9` look alike. */
function withoutNumbers(name: string): string {
  return name.replace(/\d+/g, '#');
}

/** Edits a slip of the pen makes at most; farther off it is another thing's name. */
const SLIP = 2;

/**
 * The known name an unknown one is a slip of the pen for, else null. A name that differs only in a number is no slip:
 * it may be a part that was there when the entry was written.
 */
export function slipOf(name: string, known: readonly string[]): string | null {
  const near = nearest(name, known);
  if (near === null || withoutNumbers(near) === withoutNumbers(name)) return null;
  return editDistance(name, near) <= SLIP ? near : null;
}

/** Names told of at most. */
const MOST_ALIKE = 6;

/** Known names that differ from a name in its numbers alone, the first few: `drawer.front-2` for `drawer.front-9`. */
export function alikeNames(name: string, known: readonly string[]): readonly string[] {
  const shape = withoutNumbers(name);
  return shape === name ? [] : known.filter((one) => withoutNumbers(one) === shape).slice(0, MOST_ALIKE);
}

/** Today's name of something that was renamed, perhaps more than once; a ring of names stops where it began. */
export function currentName(name: string, renamed: Readonly<Record<string, string>>): string {
  const seen = new Set<string>();
  let now = name;
  while (Object.hasOwn(renamed, now) && !seen.has(now)) {
    seen.add(now);
    now = renamed[now] ?? now;
  }
  return now;
}

/** Names looked up for what was meant; a log with more unknown names than this has another trouble. */
const LOOKED_UP = 200;

/** For each unknown name the known one it is a slip for, else null; only the first are looked up, so that any log ends. */
export function slipsOf(names: readonly string[], known: readonly string[]): ReadonlyMap<string, string | null> {
  const distinct = [...new Set(names)];
  return new Map(distinct.map((name, i) => [name, i < LOOKED_UP ? slipOf(name, known) : null]));
}
