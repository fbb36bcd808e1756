import type { Mark } from './mark.ts';
import { outwardText, type Rule, ruleSpot } from './rule.ts';
import { spread } from './spread.ts';
import { smallText, textWidth } from './text.ts';

/** A position measured from the datum: u along the side and the depth at which its feature begins, paper mm. */
export type Ordinate = {
  readonly u: number;
  /** how far inwards from the side's base the feature's edge starts, mm */
  readonly inwards: number;
  readonly text: string;
  readonly bold: string;
};

/** Room one ordinate's figure takes along the side, mm. */
export const ordinatePitch = smallText * 1.46 + 0.5;

const straight = 3;

/** Height of the fan, more where figures move far, so that its lines stay apart. */
function slantOf(planned: readonly { readonly ordinate: Ordinate; readonly u: number }[]): number {
  return Math.max(4, ...planned.map(({ ordinate, u }) => Math.abs(u - ordinate.u) * 0.25));
}

/** Where the figures stand along the side, in order of u. */
export function planOrdinates(
  ordinates: readonly Ordinate[],
  bounds: { readonly from: number; readonly to: number },
): readonly { readonly ordinate: Ordinate; readonly u: number }[] {
  const ordered = ordinates.toSorted((a, b) => a.u - b.u);
  const us = spread(
    ordered.map(({ u }) => ({ at: u, half: ordinatePitch / 2 })),
    bounds,
  );
  return ordered.map((ordinate, i) => ({ ordinate, u: us[i] ?? ordinate.u }));
}

function figureMarks(
  rule: Rule,
  ordinate: Ordinate,
  { u, v }: { readonly u: number; readonly v: number },
): readonly Mark[] {
  const after = v + textWidth(ordinate.text, smallText) + (ordinate.text === '' ? 0 : 1.2);
  const figure = outwardText(rule, { text: ordinate.text, u, v });
  const letter = outwardText(rule, { text: ordinate.bold, u, v: after }, { role: 'label', weight: 'bold' });
  return [figure, letter].filter((mark) => mark.text !== '');
}

/** Positions from one datum: an extension line each, fanned out where they crowd, and the figure at its end. */
export function ordinateMarks(
  rule: Rule,
  ordinates: readonly Ordinate[],
  bounds: { readonly from: number; readonly to: number },
): readonly Mark[] {
  const planned = planOrdinates(ordinates, bounds);
  const out = straight + slantOf(planned);
  return planned.flatMap(({ ordinate, u }): readonly Mark[] => [
    {
      kind: 'polyline',
      points: [
        ruleSpot(rule, ordinate.u, 1 - ordinate.inwards),
        ruleSpot(rule, ordinate.u, straight),
        ruleSpot(rule, u, out),
        ruleSpot(rule, u, out + 1),
      ],
      pen: 'dimension',
      role: 'extension',
    },
    ...figureMarks(rule, ordinate, { u, v: out + 1.6 }),
  ]);
}
