import type { Fault } from './problem.ts';

/** Stops the reading of one value at its first fault; caught where the reading began, never seen outside the room. */
export class Misread extends Error {
  readonly fault: Fault;

  constructor(fault: Fault) {
    super(fault.what);
    this.fault = fault;
  }
}

/** A fault inside a value's text; the reader of the file knows the place. */
export function faultAt(offset: number, rule: string, [what, mend]: readonly [what: string, mend: string]): Fault {
  return { rule, at: '', offset, what, mend };
}

export function misread(offset: number, rule: string, words: readonly [what: string, mend: string]): Misread {
  return new Misread(faultAt(offset, rule, words));
}

/** How a text is quoted in a fault: whole when short, its beginning when long. */
export function quoted(text: string): string {
  const trimmed = text.trim();
  return `\`${trimmed.length > 40 ? `${trimmed.slice(0, 37)}...` : trimmed}\``;
}
