import { type Fastener, joinsPieces } from '../../stock/fastener.ts';
import { screwHoles } from '../../stock/screw-holes.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import type { Kit } from './assembling.ts';
import { counted, grouped } from './words.ts';

/** Fasteners that hold pieces together and go through an instance whose id begins so, first piece or last. */
export function fastenersOf({ fasteners, frame }: Kit, starts: string): Fastener[] {
  const prefixes = [starts, `${frame.id}.${starts}`];
  return fasteners
    .filter(joinsPieces)
    .filter(({ through }) => through.some((id) => prefixes.some((prefix) => id.startsWith(prefix))));
}

/** Screws and bolts that fix what begins so on one piece each: slides, brackets, casters. */
export function fixingsOf({ fasteners, frame }: Kit, metal: string): Fastener[] {
  return fasteners.filter(
    (one) => !joinsPieces(one) && (one.holds.startsWith(metal) || one.holds.startsWith(`${frame.id}.${metal}`)),
  );
}

/** One line an item: how many, and the holes they need by the table of screw holes. */
export function fastenerLines(fasteners: readonly Fastener[]): Sentence[] {
  return grouped(fasteners, ({ item, form }) => `${form} ${item}`).map((same) => {
    const [first] = same;
    const holes = first?.form === 'screw' ? screwHoles(first.diameter) : null;
    const lead = say`${counted(same.length, first?.form ?? 'screw')}: ${first?.item ?? ''}.`;
    if (holes === null || first === undefined) return lead;
    if (!joinsPieces(first)) return [...lead, ...say` Pilot ${length(holes.hardwood)}.`];
    return [
      ...lead,
      ...say` Clearance hole ${length(holes.clearance)} through the first piece, pilot ${length(holes.hardwood)} in the last.`,
    ];
  });
}

/** Nuts and washers of bolts' own thread, by id: they go on with the bolts. */
export function nutsOf({ stock }: Kit, bolts: readonly Fastener[]): readonly string[] {
  const threads = new Set(bolts.map(({ diameter }) => diameter));
  return stock.flatMap((one) =>
    one.kind === 'hardware' &&
    (one.form === 'nut' || one.form === 'washer') &&
    one.diameter !== null &&
    threads.has(one.diameter)
      ? [one.id]
      : [],
  );
}

/** Of these items, those used at places whose name begins so: `8 nut-m8`. */
export function onlyItems(kit: Kit, starts: string, items: readonly string[]): Sentence[] {
  return itemLine({ ...kit, hardware: kit.hardware.filter(({ item }) => items.includes(item)) }, starts);
}

/** All but these. */
export function otherItems(kit: Kit, starts: string, items: readonly string[]): Sentence[] {
  return itemLine({ ...kit, hardware: kit.hardware.filter(({ item }) => !items.includes(item)) }, starts);
}

/** What else is used at places whose name begins so: `2 catch-ball`. */
export function itemLine({ hardware, frame, fasteners }: Kit, starts: string): Sentence[] {
  const driven = new Set(fasteners.map(({ item }) => item));
  const prefixes = [starts, `${frame.id}.${starts}`];
  const here = hardware.filter(
    ({ where, item }) => !driven.has(item) && prefixes.some((prefix) => where.startsWith(prefix)),
  );
  if (here.length === 0) return [];
  const items = grouped(here, ({ item }) => item).map(
    (same) => `${same.reduce((sum, one) => sum + one.quantity, 0)} ${same[0]?.item ?? ''}`,
  );
  return [say`At hand: ${items.join(', ')}.`];
}
