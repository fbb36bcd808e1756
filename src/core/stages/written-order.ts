import { checkWrittenOrder } from '../assembly/machining/written-order.ts';
import type { Finding } from '../finding.ts';
import type { Deed } from '../steps/deed.ts';
import type { Part } from '../stock/part.ts';

/** Operations by the words of steps, where these differ from the kinds of features. */
const OPERATIONS: Readonly<Record<string, readonly string[]>> = {
  lap: ['slot'],
  notch: ['slot'],
  'cut-out': ['opening'],
  hole: ['counterbore', 'hole'],
};

/** Operations by the kinds of features that they make, where these differ. */
const MADE_BY: Readonly<Record<string, string>> = { 'stopped-dado': 'dado', notch: 'slot', 'cut-out': 'opening' };

/** Halts where the steps, in the order they are to be done, take away what a later cut of a part is set against. */
export function orderFindings(parts: readonly Part[], deeds: readonly Deed[]): readonly Finding[] {
  const wooden = parts.filter(({ chapter }) => chapter === 'benchwork');
  return wooden.flatMap((part) => {
    const cuts = cutsOf(part, deeds);
    // a word that two steps share stands where its last cut is made
    const order = cuts.map(({ kind }) => kind).filter((kind, i, all) => all.lastIndexOf(kind) === i);
    const steps = [...new Set(cuts.map(({ step }) => step))].join(', ');
    return checkWrittenOrder(part, order).map((finding) => ({
      ...finding,
      mend: [...finding.mend, `; the steps that cut it now run ${steps}`],
    }));
  });
}

/** The cuts of a part, step by step: only kinds that it has. */
function cutsOf({ places, features }: Part, deeds: readonly Deed[]) {
  const own = new Set(places.map(({ id }) => id));
  const kinds = new Set(features.map(({ kind }) => MADE_BY[kind] ?? kind));
  return deeds
    .filter(({ makes }) => makes.some((id) => own.has(id)))
    .flatMap(({ step, noun }) => (OPERATIONS[noun] ?? [noun]).map((kind) => ({ step, kind })))
    .filter(({ kind }) => kinds.has(kind));
}
