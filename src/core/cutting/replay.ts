import type { Area, Cut, CutPlace, CutSheet } from './job.ts';
import { exact } from './tick.ts';

/** Two rectangles that differ by less are the same to the saw, mm. */
const SAME = 1e-4;

/**
 * What the saw gives when the printed cuts are made one by one: the parts found among the pieces, the pieces that are no
 * part, and every way in which the cuts or the parts went wrong. No faults: the cuts give exactly the parts.
 */
export type Replay = {
  readonly parts: readonly CutPlace[];
  readonly left: readonly Area[];
  readonly faults: readonly string[];
};

/** Replays a sheet's cuts on a whole sheet. It reads `from`, `kerf` and `setting`, and never believes `yields`. */
export function replay(sheet: CutSheet): Replay {
  const faults: string[] = [];
  let pieces: readonly Area[] = [{ x: 0, y: 0, length: sheet.length, width: sheet.width }];
  for (const cut of sheet.cuts) {
    const from = pieces.find((piece) => same(piece, cut.from));
    if (from === undefined) {
      faults.push(`cut ${cut.number}: no such piece at this point`);
      continue;
    }
    const made = sawn(from, cut);
    faults.push(...wrong(cut, { from, made, kerf: sheet.kerf }).map((what) => `cut ${cut.number}: ${what}`));
    pieces = [...pieces.filter((piece) => piece !== from), ...made];
  }
  return sorted(sheet, { pieces, faults });
}

function sorted(
  sheet: CutSheet,
  sawed: { readonly pieces: readonly Area[]; readonly faults: readonly string[] },
): Replay {
  const left = [...sawed.pieces];
  const parts: CutPlace[] = [];
  const missing: string[] = [];
  for (const part of sheet.parts) {
    const index = left.findIndex((piece) => same(piece, part));
    if (index < 0) missing.push(`${part.part} at ${part.x}, ${part.y}: no piece of this size and place`);
    else parts.push(part);
    if (index >= 0) left.splice(index, 1);
  }
  return { parts, left, faults: [...sawed.faults, ...missing] };
}

/** The pieces beyond the kerf on both sides; a kerf that does not cross the whole piece parts nothing. */
function sawn(from: Area, cut: Cut): readonly Area[] {
  const ripped = close(cut.kerf.length, from.length) && !(cut.kind === 'crosscut');
  const rest = (low: number, high: number): Area =>
    ripped
      ? { ...from, y: exact(low), width: exact(high - low) }
      : { ...from, x: exact(low), length: exact(high - low) };
  const [start, end] = ripped ? [from.y, from.y + from.width] : [from.x, from.x + from.length];
  const [near, far] = ripped ? [cut.kerf.y, cut.kerf.y + cut.kerf.width] : [cut.kerf.x, cut.kerf.x + cut.kerf.length];
  return [rest(start, near), rest(far, end)].filter((area) => (ripped ? area.width : area.length) > SAME / 10);
}

type Sawn = { readonly from: Area; readonly made: readonly Area[]; readonly kerf: number };

function wrong(cut: Cut, { from, made, kerf }: Sawn): readonly string[] {
  const ripped = close(cut.kerf.length, from.length) && cut.kind !== 'crosscut';
  const [size, thick] = ripped ? [from.width, cut.kerf.width] : [from.length, cut.kerf.length];
  const [start, at] = ripped ? [from.y, cut.kerf.y] : [from.x, cut.kerf.x];
  const crosses = ripped ? close(cut.kerf.x, from.x) : close(cut.kerf.y, from.y) && close(cut.kerf.width, from.width);
  const found: string[] = [];
  if (!crosses || at < start - SAME || at + thick > start + size + SAME)
    found.push('the kerf does not cross the piece from edge to edge');
  const atEdge = close(at + thick, start + size) || close(at, start);
  if (!(close(thick, kerf) || (thick < kerf && atEdge))) found.push('the kerf is not as wide as the saw cuts');
  const set =
    cut.kind === 'trim'
      ? made.some((area) => close(ripped ? area.width : area.length, cut.setting))
      : close(at - start, cut.setting);
  if (!set) found.push('the setting is not the distance from fence to blade');
  if (made.length !== cut.yields.length || made.some((area, i) => !same(area, cut.yields[i])))
    found.push('what falls off is not what is printed');
  return found;
}

function close(a: number, b: number): boolean {
  return Math.abs(a - b) < SAME;
}

function same(a: Area, b: Area | undefined): boolean {
  return b !== undefined && close(a.x, b.x) && close(a.y, b.y) && close(a.length, b.length) && close(a.width, b.width);
}
