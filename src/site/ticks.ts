import { createHash } from 'node:crypto';

/** Twelve letters that change when what is to be ticked changes, so that an old tick doesn't vouch for new work. */
export function contentMark(content: unknown): string {
  return createHash('sha256').update(JSON.stringify(content)).digest('hex').slice(0, 12);
}
