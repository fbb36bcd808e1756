import type { Weakening } from '../stock/part.ts';
import type { Fix, LogRecord } from './record.ts';

/** One line of the register of fixes. */
export type FixLine = Fix & {
  readonly date: string;
  readonly entry: string;
  /** false when the mended piece is no longer there: its part left the plan, or the piece was lost */
  readonly stands: boolean;
};

/** Every fix of a log, oldest first. */
export function fixRegister(records: readonly LogRecord[], instances: ReadonlySet<string>): FixLine[] {
  return records.flatMap((record) =>
    record.fixes.map((fix) => {
      const stands = instances.has(fix.part) && fix.leaves !== 'nothing';
      return { ...fix, date: record.date, entry: record.id, stands };
    }),
  );
}

/**
 * What fixes leave weaker, for the strength of what stands now: a piece that was made anew after a fix carries it no more.
 * Places along the part, mm; one without a place can't be computed and is left to the register.
 */
export function weakenings(register: readonly FixLine[], madeAnew: ReadonlyMap<string, string>): Weakening[] {
  return register.flatMap((fix) => {
    const anew = madeAnew.get(fix.part);
    if (!fix.stands || fix.at === null || fix.leaves === null || (anew !== undefined && anew > fix.date)) return [];
    return [{ place: fix.part, at: fix.at, kind: fix.leaves }];
  });
}
