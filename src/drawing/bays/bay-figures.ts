import { type Block, emptyBlock } from '../block.ts';
import type { Dimension } from '../dimension.ts';
import type { DrawingUnit } from '../drawing.ts';
import { lengthText, onGrid } from '../figures.ts';
import { type Ordinate, ordinateMarks } from '../ordinates.ts';
import { type Rule, ruleSpot } from '../rule.ts';
import { paperY, type View } from '../view.ts';

/** A height above the floor with what lies there. */
export type Height = { readonly at: number; readonly name: string };

type Ask = {
  readonly view: View;
  readonly unit: DrawingUnit;
  readonly rule: Rule;
  /** the height that is called 0 */
  readonly datum: number;
  readonly heights: readonly Height[];
};

/** Heights printed alike as one, with all their names. */
function merged({ heights, datum, unit }: Ask): readonly Height[] {
  const sorted = heights.toSorted((a, b) => a.at - b.at);
  const steps = (at: number) => onGrid(at - datum, unit);
  return sorted.flatMap((one, i): readonly Height[] => {
    if (i > 0 && steps(one.at) === steps(sorted[i - 1]?.at ?? Number.NaN)) return [];
    const alike = sorted.filter(({ at }) => steps(at) === steps(one.at)).map(({ name }) => name);
    return [{ at: one.at, name: [...new Set(alike)].join(', ') }];
  });
}

/** Heights from the datum up one side of a view, each with its figure and its name. */
export function heightBlock(ask: Ask): Block {
  const { view, unit, rule, datum } = ask;
  const rows = merged(ask);
  if (rows.length === 0) return emptyBlock;
  const ordinates = rows.map(
    ({ at, name }): Ordinate => ({ u: paperY(view, at), inwards: 0, text: lengthText(at - datum, unit), bold: name }),
  );
  const us = ordinates.map(({ u }) => u);
  const marks = ordinateMarks(rule, ordinates, { from: Math.min(...us) - 8, to: Math.max(...us) + 8 });
  const dimensions = rows.flatMap(({ at }): readonly Dimension[] => {
    if (at === datum) return [];
    const ends = [ruleSpot(rule, paperY(view, datum), 0), ruleSpot(rule, paperY(view, at), 0)] as const;
    const text = lengthText(at - datum, unit);
    return [{ measure: 'span', of: [], text, view: view.name, between: [datum, at], ends, chain: null }];
  });
  return { marks, views: [], dimensions };
}
