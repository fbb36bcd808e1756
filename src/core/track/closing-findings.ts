import type { Finding } from '../finding.ts';
import { length, type Said, type Sentence, say } from '../units/say.ts';
import { isClosed } from './closing.ts';
import type { LineClosing } from './laid.ts';
import { type Change, smallestChange } from './smallest-change.ts';
import { degrees, tell } from './tell.ts';

const SOURCE = 'plane geometry: a line closes when place and heading meet';

/** Lines that do not arrive, each with its gap, its kink and the smallest change that closes it. */
export function closingFindings(closings: readonly LineClosing[]): readonly Finding[] {
  return closings.flatMap((one) =>
    isClosed(one.closing.miss) && one.closing.short.length === 0 ? [] : [openFinding(one)],
  );
}

function openFinding(one: LineClosing): Finding {
  const { line, target, chain, closing, first } = one;
  const { along, across, turn } = closing.miss;
  const gap = Math.hypot(along, across);
  const changes = smallestChange(chain, closing);
  const isTurned = Math.abs(turn) > 1e-9;
  return tell({
    rule: 'line-open',
    level: 'halt',
    where: line,
    what: [
      ...say`${line} misses ${target} by a gap of ${length(gap)} (${length(Math.abs(along))} ${along > 0 ? 'too far' : 'short'}, ${length(Math.abs(across))} to the ${across > 0 ? 'left' : 'right'})`,
      ...(isTurned ? [` and a kink of ${degrees(Math.abs(turn))}`] : []),
      ...shortWords(one),
    ],
    figure: gap > 1e-6 ? gap : (Math.abs(turn) * 180) / Math.PI,
    limit: 0,
    unit: gap > 1e-6 ? 'mm' : 'deg',
    mend: changes === null ? say`no three values of it close it: change its plan` : mendWords(changes, first),
    source: SOURCE,
  });
}

/** What would have had to be less than nothing. */
function shortWords({ closing, first }: LineClosing): readonly Said[] {
  return closing.short.flatMap(({ slot, value }): readonly Said[] =>
    slot.what === 'through'
      ? [`; piece ${first + slot.piece + 1} would have to turn ${degrees(value)}`]
      : [
          `; the ${slot.what === 'length' ? 'straight' : 'radius'} of piece ${first + slot.piece + 1} would have to be `,
          length(value),
        ],
  );
}

/** Printed values are rounded; a line closes on exact ones. */
function exactly(count: number): Sentence {
  return say`, which is exact when you write 'to close' for ${count === 1 ? 'it' : 'them'}`;
}

/** The changed values of a mend, in words. */
export function mendWords(changes: readonly Change[], first: number): Sentence {
  const parts = changes.map(({ piece, what, from, to }): readonly Said[] => {
    const name = `${what === 'length' ? 'straight' : what} of piece ${first + piece + 1}`;
    return what === 'through'
      ? [`make the ${name} ${degrees(to)} instead of ${degrees(from)}`]
      : [`make the ${name} `, length(to), ' instead of ', length(from)];
  });
  return [...parts.flatMap((part, i) => (i === 0 ? part : [' and ', ...part])), ...exactly(parts.length)];
}
