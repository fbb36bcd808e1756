import { layOut } from '../cutting/layout.ts';
import { cutJobs } from '../cutting/parts-job.ts';
import { notPlacedFindings } from '../cutting/unplaced.ts';
import type { HeadValues } from '../head.ts';
import type { Stock } from '../stock/goods.ts';
import { partMass } from '../stock/mass.ts';
import type { Part } from '../stock/part.ts';

/** Stage 8: every part on its sheet. */
export function cuttingStage(parts: readonly Part[], stock: readonly Stock[], head: HeadValues) {
  const answers = cutJobs(parts, stock, head.saw).map(layOut);
  return {
    sheets: answers.flatMap(({ sheets }) => sheets),
    bounds: answers.flatMap(({ bounds }) => bounds),
    findings: notPlacedFindings(answers.flatMap(({ unplaced }) => unplaced)),
  };
}

/** Stage 9: kg of one piece of each part. */
export function massesOf(parts: readonly Part[], stock: readonly Stock[]): Readonly<Record<string, number>> {
  const known = parts.flatMap((part) => {
    const goods = stock.find((one) => one.id === part.stock);
    const solid = goods?.kind === 'sheet' || goods?.kind === 'board';
    return solid ? [[part.id, partMass(part, goods.density)] as const] : [];
  });
  return Object.fromEntries(known);
}
