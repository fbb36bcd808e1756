import type { FoundValue } from '../core/track/line.ts';
import { type RadiusRoom, radiusRooms } from '../core/track/radius-room.ts';
import { both, type Html, line, listed, text } from './html.ts';
import { figurePair, lengthPair } from './lengths.ts';
import { foundWords } from './line-words.ts';
import type { Book } from './notebooks.ts';
import type { Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

/** Two found values closer than this are one: mm, or thousandths of a radian. */
const SAME = 0.05;

/** What comes first beyond the largest radius. */
function stopWords({ stop }: RadiusRoom): Html {
  if (stop === null) return text('nothing up to four times as large');
  if (stop.kind === 'closing') return text(`${stop.line} no longer closes`);
  const at = line(text(`${stop.line}, at `), both(lengthPair(stop.at)));
  if (stop.kind === 'deck') return line(text('the edge of the deck: '), at);
  return line(at, text(stop.line === stop.other ? ', comes upon itself' : `, comes upon ${stop.other}`));
}

function isSame(a: FoundValue, b: FoundValue | undefined): boolean {
  const scale = a.what === 'through' ? 1000 : 1;
  return b !== undefined && Math.abs(a.value - b.value) * scale < SAME;
}

/** Values of all lines that closing finds anew. */
function followWords({ lines }: RadiusRoom): Html {
  const found = lines.flatMap(({ id, unknowns: { before, after } }) =>
    after.flatMap((value, i) => (isSame(value, before[i]) ? [] : [line(text(`${id}: `), foundWords(value))])),
  );
  return found.length === 0 ? text('nothing') : listed(found);
}

function largestWords({ largest, radius, stop }: RadiusRoom): Html {
  if (largest === null) return text(stop === null ? 'any' : 'none found');
  if (largest < radius) return line(both(figurePair(largest)), text(', smaller than written'));
  return both(figurePair(largest));
}

/** Every written radius with the largest it can become; null where no radius is written. */
export function radiusTable({ notebook }: Book): Told | null {
  const rooms = notebook.trackPlan === null ? [] : radiusRooms(notebook.trackPlan);
  if (rooms.length === 0) return null;
  return {
    label: 'Room for larger curves',
    caption: line(text('Radii and what stops them, in '), both(UNIT_NAMES)),
    columns: [['Curve'], ['Radius', 'right'], ['Largest', 'right'], ['What follows then'], ['What stops it']],
    rows: rooms.map((room) => [
      text(`${room.line}, piece ${room.piece + 1}`),
      both(figurePair(room.radius)),
      largestWords(room),
      followWords(room),
      stopWords(room),
    ]),
  };
}
