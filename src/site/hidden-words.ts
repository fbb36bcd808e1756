import type { HiddenState } from '../core/log/hidden.ts';
import { plainName } from './words.ts';

/** Where a space out of sight is described, on the page of all places. */
export function hiddenAnchor(id: string): string {
  return `behind-${id.replaceAll('.', '-')}`;
}

/** Its name as a heading. */
export function hiddenName(id: string): string {
  return `Behind or under: ${plainName(id)}`;
}

/** How it is reached, or that nobody wrote it down. */
export function accessWords({ access }: HiddenState): string {
  return access ?? 'Nobody has written down how to get at it.';
}

const MISSING = { access: 'how to get at it', photo: 'a photo', test: 'the result of a test' } as const;

/** What the log still lacks of it; null when it has all. */
export function missingWords({ missing }: HiddenState): string | null {
  return missing.length === 0 ? null : `Not in the log: ${missing.map((key) => MISSING[key]).join(', ')}.`;
}

/** When and whether it was closed. */
export function closedWords({ closed, closedBy }: HiddenState): string {
  if (closed !== null) return `Closed on ${closed}.`;
  return closedBy.length > 0 ? 'Still open.' : 'No step closes it.';
}
