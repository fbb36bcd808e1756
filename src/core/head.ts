import type { Finding } from './finding.ts';
import { type Buying, buyingValues } from './head/buying.ts';
import { cuttingValues, piecesInHand } from './head/cutting.ts';
import { type HeadReading, sizeIn } from './head/reading.ts';
import type { Head } from './head.schema.ts';
import type { PieceInHand } from './stock/in-hand.ts';
import type { Saw } from './stock/saw.ts';
import { evaluate } from './units/evaluate.ts';
import { parseQuantity } from './units/parse.ts';
import type { Fault } from './units/problem.ts';
import type { Amount, Quantity } from './units/quantity.ts';
import { length, say } from './units/say.ts';

/** What the cover says of the workshop, as numbers. mm. */
export type HeadValues = {
  readonly saw: Saw;
  /** diameters of the router's bits in hand */
  readonly bits: readonly number[];
  /** diameters of the drills in hand; empty when nobody said */
  readonly drills: readonly number[];
  /** clamps by their opening; null when nobody said */
  readonly clamps: readonly { readonly opening: number; readonly count: number }[] | null;
  /** money put aside; null when nobody said */
  readonly budget: { readonly value: number; readonly currency: string } | null;
  /** sheets, boards and offcuts that are there already */
  readonly pieces: readonly PieceInHand[];
  readonly buying: Buying;
  readonly faults: readonly Fault[];
  readonly findings: readonly Finding[];
};

/** A table saw's usual blade, 1/8 in; common practice, no source. */
const USUAL_KERF = 3.175;

/** The cover's figures evaluated; a kerf nobody gave is assumed and said so. */
export function headValues(head: Head): HeadValues {
  const faults: Fault[] = [];
  const amount = (quantity: Quantity): Amount => {
    const result = evaluate(quantity, {});
    if (result.ok) return result.value;
    faults.push(...result.faults);
    return { value: 0, dimension: quantity.dimension };
  };
  const number = (quantity: Quantity): number => amount(quantity).value;
  const budget = head.budget === undefined ? null : amount(head.budget);
  const { tools } = head;
  const blade = tools?.['table-saw'] ?? tools?.['track-saw'] ?? tools?.['circular-saw'] ?? tools?.['hand-saw'];
  const kerf = blade === undefined ? USUAL_KERF : number(blade.kerf);
  const rip = tools?.['table-saw']?.rip;
  const reading: HeadReading = { number, faults };
  const cutting = cuttingValues(head.cutting, reading);
  return {
    saw: { kerf, rip: rip === undefined ? null : sizeIn(rip, reading, 'some'), ...cutting.saw },
    pieces: piecesInHand(head['in-hand'] ?? [], reading),
    buying: buyingValues(head, reading),
    bits: (tools?.router?.bits ?? []).map(number),
    drills: (tools?.drills ?? []).map((drill) => sizeIn(drill, reading, 'some')),
    clamps: tools?.clamps === undefined ? null : clampsIn(tools.clamps, head.bare ?? null, { number, faults }),
    budget: budget === null ? null : { value: budget.value, currency: budget.currency ?? '' },
    faults,
    findings: [...(blade === undefined && cutting.saw.nest === null ? [kerfAssumed] : []), ...cutting.findings],
  };
}

/** `{ 600 mm: 8 }` as openings and counts; an opening that is no length is told at its key. */
function clampsIn(written: Readonly<Record<string, Quantity>>, bare: 'mm' | null, { number, faults }: HeadReading) {
  return Object.entries(written).flatMap(([text, quantity]) => {
    const at = `notebook.tools.clamps.${text}`;
    const tree = parseQuantity(text, 'length', { bare });
    if (!tree.ok) {
      faults.push(...tree.faults.map((fault) => ({ ...fault, at })));
      return [];
    }
    return [{ opening: number({ dimension: 'length', text, tree: tree.value, at }), count: number(quantity) }];
  });
}

const kerfAssumed: Finding = {
  rule: 'kerf-assumed',
  level: 'note',
  where: 'tools',
  chapter: 'benchwork',
  what: say`no saw is named, so a blade of ${length(USUAL_KERF)} is assumed`,
  figure: USUAL_KERF,
  limit: null,
  unit: 'mm',
  mend: say`write the kerf of your saw under tools in notebook.md`,
  source: 'common practice, no source',
  accepted: null,
};
