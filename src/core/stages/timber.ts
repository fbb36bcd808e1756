import { lotFindings } from '../cutting/lot-findings.ts';
import { cutLots, yardAsks } from '../cutting/lots.ts';
import { savingsOf } from '../cutting/savings.ts';
import { notPlacedFindings } from '../cutting/unplaced.ts';
import type { HeadValues } from '../head.ts';
import type { Plan } from '../plan.ts';
import type { Stock } from '../stock/goods.ts';
import { partMass } from '../stock/mass.ts';
import type { Part } from '../stock/part.ts';

/** Steps and reach of the change that saves a sheet, mm: 1 and 20, or 1/16 in and 3/4 in. */
const WHAT_IF = { mm: { tick: 1, most: 20 }, in: { tick: 25.4 / 16, most: 0.75 * 25.4 } } as const;

/** Stage 8: every part on its sheet, what is kept of it, and what would save one. */
export function cuttingStage(parts: readonly Part[], plan: Pick<Plan, 'stock' | 'head'>, head: HeadValues) {
  const { saw, pieces, buying } = head;
  const all = cutLots(parts, plan.stock, { saw, pieces, prices: buying.prices });
  return {
    sheets: all.sheets,
    bounds: all.bounds,
    offcuts: all.offcuts,
    yard: yardAsks(all),
    whatIf: savingsOf(all.lots, WHAT_IF[plan.head.show]),
    findings: [
      ...all.lots.flatMap(({ answer, lot }) =>
        notPlacedFindings(answer.unplaced).map((finding) => ({ ...finding, chapter: lot.chapter })),
      ),
      ...lotFindings(all.lots, saw.car),
    ],
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

/** The stock of each role a chapter names, by role. */
export function stockOfRoles({ benchwork }: Pick<Plan, 'benchwork'>): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(benchwork.materials).map(([role, material]) => [
      role,
      typeof material === 'string' ? material : material.stock,
    ]),
  );
}
