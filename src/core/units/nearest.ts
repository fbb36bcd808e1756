/** Longest word compared: what is longer is no slip of the pen. */
const LONGEST = 80;

/** Edits between two words: letters put in, left out, changed or swapped with a neighbour (Damerau 1964, restricted). */
export function editDistance(a: string, b: string): number {
  let before: readonly number[] = [];
  let above: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const least = Math.min(change, (above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row.push(swapped ? Math.min(least, (before[j - 2] ?? 0) + 1) : least);
    }
    before = above;
    above = row;
  }
  return above[b.length] ?? 0;
}

/** Edits a word may be away and still be meant: one in three letters, one at least; none in a single letter. */
function allowed(word: string): number {
  return word.length < 2 ? 0 : Math.max(1, Math.floor(word.length / 3));
}

/** Edits, and among as many edits: capitals cost next to nothing, the first letter and the length are seldom wrong. */
function distance(a: string, b: string): number {
  const first = a.charAt(0).toLowerCase() === b.charAt(0).toLowerCase() ? 0 : 0.2;
  const grown = Math.min(3, Math.abs(a.length - b.length)) * 0.1;
  return editDistance(a.toLowerCase(), b.toLowerCase()) + Math.min(0.2, 0.01 * editDistance(a, b)) + first + grown;
}

/** The candidate nearest to a word, or null when none is near enough; ties go to the first by code unit. */
export function nearest(word: string, candidates: readonly string[]): string | null {
  if (word.length > LONGEST) return null;
  let best: string | null = null;
  let least = allowed(word) + 0.99;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) > allowed(word)) continue;
    const far = distance(word, candidate);
    if (far < least || (far === least && best !== null && candidate < best)) {
      best = candidate;
      least = far;
    }
  }
  return best;
}
