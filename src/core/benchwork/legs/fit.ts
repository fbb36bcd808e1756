import { type Fitting, NOTHING, type Site, saying, together } from '../fitting.ts';
import type { LegsInput } from '../input.ts';
import { angleLeg } from './angle.ts';
import { legHalts, standFindings } from './checks.ts';
import { CORNERS, type CornerName } from './corners.ts';
import { type LegFigures, legFigures } from './figures.ts';
import { post } from './post.ts';
import { trestle } from './trestle.ts';

/** The legs of a bench, each in its corner, and a halt for each that has no room. */
export function fitLegs(site: Site, input: LegsInput): Fitting {
  const legs = legFigures(site, input);
  if (legs === null) return NOTHING;
  const all =
    input.form === 'trestle'
      ? trestles(site, legs)
      : CORNERS.map((name, i) => fitLeg(site, legs, { name, number: i + 1 }));
  const made = together(all);
  return together([made, saying(...standFindings(site, legs, made.envelopes))]);
}

function fitLeg(site: Site, legs: LegFigures, corner: { readonly name: CornerName; readonly number: number }): Fitting {
  const halts = legHalts(site, legs, corner.name);
  if (halts.length > 0) return saying(...halts);
  return legs.input.form === 'post' ? post(site, legs, corner) : angleLeg(site, legs, corner);
}

function trestles(site: Site, legs: LegFigures): readonly Fitting[] {
  return (['left', 'right'] as const).map((end, i) => {
    const halts = (['front', 'back'] as const).flatMap((foot) => legHalts(site, legs, `${foot}-${end}`));
    return halts.length > 0 ? saying(...halts) : trestle(site, legs, { end, number: i + 1 });
  });
}
