import type { Area, Cut, CutCaution } from './job.ts';
import { exact, SLIVER } from './tick.ts';

/** A cut not yet numbered. */
export type Pass = Omit<Cut, 'number'>;

/** Where the blade goes: `at` is the kerf's near edge, measured like x or y on the sheet. */
export type Blade = {
  readonly kind: Cut['kind'];
  readonly along: 'length' | 'width';
  readonly at: number;
  readonly kerf: number;
};

/** Rips under this want a push stick, mm; common practice, no source. */
const NARROW = 150;
/** Pieces longer than this want a second person or stands, mm; common practice, no source. */
const LONG = 1500;
/** Shorter than this a piece is neither held by hand at a crosscut nor led along a fence, mm; common practice, no source. */
const SHORT = 300;

/** What one pass does to a piece: the part of the kerf that meets wood, and the pieces left, nearest the fence first. */
export function pass(from: Area, blade: Blade): Pass {
  const ripped = blade.along === 'length';
  const start = ripped ? from.y : from.x;
  const end = exact(start + (ripped ? from.width : from.length));
  const near = Math.max(start, blade.at);
  const far = Math.min(end, exact(blade.at + blade.kerf));
  const band = (low: number, high: number): Area =>
    ripped ? { ...from, y: low, width: exact(high - low) } : { ...from, x: low, length: exact(high - low) };
  const yields = [band(start, near), band(far, end)].filter((area) => (ripped ? area.width : area.length) > SLIVER);
  const setting = exact(blade.kind === 'trim' && near - start < end - far ? end - far : near - start);
  return {
    ...{ kind: blade.kind, from, setting, kerf: band(near, far), yields },
    ...{ stage: 0, cautions: cautions(from, { blade, setting }) },
  };
}

function cautions(from: Area, cut: { readonly blade: Blade; readonly setting: number }): readonly CutCaution[] {
  const ripped = cut.blade.along === 'length';
  const rest = (ripped ? from.width : from.length) - cut.setting - cut.blade.kerf;
  const found: CutCaution[] = [];
  if (from.width === 0) return found;
  // what a trim takes off falls free: only what runs along the fence counts
  const least = cut.blade.kind === 'trim' || rest <= 0 ? cut.setting : Math.min(cut.setting, rest);
  // a piece wider than it is long turns at the fence; common practice, no source
  const short = from.length < SHORT || from.length < from.width;
  if (ripped && short) found.push('short-rip');
  if (ripped && !short && least < NARROW) found.push('narrow-rip');
  if (Math.max(from.length, from.width) > LONG && Math.min(from.length, from.width) > SHORT) found.push('two-people');
  if (!ripped && from.length < SHORT) found.push('short-crosscut');
  return found;
}
