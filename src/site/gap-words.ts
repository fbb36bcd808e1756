import { type Gap, gapTag } from '../core/wiring/gap.ts';
import type { LaidUnit } from '../core/wiring/laid-unit.ts';
import { UNIT_NAMES as UNIT_TITLES, unitTag } from '../core/wiring/units.ts';
import { both, line, text } from './html.ts';
import { figurePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import type { Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

/** What a cut is for. */
export function gapWhy({ of, why }: Pick<Gap, 'of' | 'why'>): string {
  const words: Readonly<Record<Gap['why'], string>> = {
    district: `parts district ${of} from its neighbour`,
    reversing: `end of a section that reverses`,
    bridge: `end of ${of}, which lifts`,
    approach: `dead approach of ${of}, while it is up`,
    frog: `keeps what is fed off the live frog of ${of}`,
    written: 'as the chapter says',
  };
  return words[why];
}

/** Where rails swap as a train passes; null where no line comes back on itself the other way round. */
export function reversingTable({ notebook }: Book): Told | null {
  const sections = notebook.wiring?.reversing ?? [];
  const units = notebook.wiring?.units ?? [];
  if (sections.length === 0) return null;
  return {
    label: 'Sections that reverse',
    caption: line(text('Sections that reverse, from the start of their line, in '), both(UNIT_NAMES)),
    columns: [['Section'], ['Line'], ['From', 'right'], ['To', 'right'], ['Length', 'right'], ['Fed through']],
    rows: sections.map(({ from, length, line: own, segment, to }) => [
      text(segment),
      text(own),
      both(figurePair(from)),
      both(figurePair(to)),
      both(figurePair(length)),
      text(unitWords(units, segment)),
    ]),
  };
}

function unitWords(units: readonly LaidUnit[], segment: string): string {
  const unit = units.find(({ of }) => of === segment);
  return unit === undefined ? 'nothing yet' : `${unitTag(units, unit.id)}, ${UNIT_TITLES[unit.kind]}`;
}

/** Every place where rails are cut, named as on the drawings; null where none is. */
export function gapTable({ notebook }: Book): Told | null {
  const gaps = notebook.wiring?.gaps ?? [];
  if (gaps.length === 0) return null;
  return {
    label: 'Cuts through the rails',
    caption: line(text('Cuts through the rails, from the start of their line, in '), both(UNIT_NAMES)),
    columns: [['Cut'], ['Line'], ['At', 'right'], ['Rails'], ['Why']],
    rows: gaps.map((gap) => [
      text(gapTag(gap.id)),
      text(gap.line),
      both(figurePair(gap.at)),
      text(gap.rails === 'both' ? 'both' : "the frog's"),
      text(gapWhy(gap)),
    ]),
  };
}
