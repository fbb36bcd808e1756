import type { Plan } from '../../../src/core/plan.ts';
import { loadWithShipped } from '../../../src/reading/disk.ts';
import { readContent } from '../../../src/reading/read.ts';

/** A piece of a chapter's text and what stands there instead. */
export type Change = { readonly file: string; readonly from: string; readonly to: string };

const shipped = await loadWithShipped('content', 'content');

/** The plan of the demo notebook with pieces of its chapters' text changed, read anew; each of them has to be there. */
export function changedPlan(...changes: readonly Change[]): Plan {
  const again = shipped.map((file) => {
    if (!('bytes' in file)) return file;
    const mine = changes.filter((one) => file.path === `notebooks/bittern-basin/${one.file}.md`);
    const text = mine.reduce((before, { from, to }) => {
      if (!before.includes(from)) throw new Error(`${file.path} has no ${from}`);
      return before.replace(from, to);
    }, new TextDecoder().decode(file.bytes));
    return mine.length === 0 ? file : { ...file, bytes: new TextEncoder().encode(text) };
  });
  const plan = readContent(again).plans.find(({ slug }) => slug === 'bittern-basin');
  if (plan === undefined) throw new Error('the changed notebook cannot be read');
  return plan;
}
