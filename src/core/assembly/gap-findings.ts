import type { Finding } from '../finding.ts';
import { atLeast, atMost, length, type Sentence, say } from '../units/say.ts';
import { bodiesOf } from './bodies.ts';
import type { Body } from './body.ts';
import { type Fitted, fits, gapsBetween, type JointGap } from './joint-gaps.ts';

/** A halt for every declared joint whose gap, measured on the solids, lies outside its range, or that cannot touch. */
export function jointGaps(fitted: Fitted): readonly Finding[] {
  return gapFindings(bodiesOf(fitted.parts), fitted);
}

/** The same from bodies that are there already. */
export function gapFindings(bodies: readonly Body[], fitted: Fitted): readonly Finding[] {
  return gapsBetween(bodies, fitted)
    .filter((gap) => !fits(gap))
    .filter((gap, i, all) => gap.place !== 'nowhere' || all.findIndex((one) => sameJoint(one, gap)) === i)
    .map(findingOf);
}

/** A joint that cannot touch is told once, whatever else does not fit. */
function sameJoint(a: JointGap, b: JointGap): boolean {
  return a.place === 'nowhere' && a.joint === b.joint;
}

function findingOf(gap: JointGap): Finding {
  return {
    rule: gap.place === 'nowhere' ? 'joint-cannot-touch' : 'joint-gap',
    level: 'halt',
    where: gap.joint,
    chapter: 'benchwork',
    ...words(gap),
    figure: gap.gap,
    limit: gap.gap < gap.least ? gap.least : gap.most,
    unit: 'mm',
    source: 'common practice, no source',
    accepted: null,
  };
}

type Words = { readonly what: Sentence; readonly mend: Sentence };

function words({ between: [a, b], place, gap, least, most }: JointGap): Words {
  if (place === 'nowhere') {
    return {
      what: say`${b} is said to go into ${a}, and the two never meet so; the nearest they come is ${length(gap)}`,
      mend: say`cut the slot, dado or rabbet of ${a} where ${b} stands, or take the joint out of the list`,
    };
  }
  if (place === 'bottom') {
    return {
      what: say`at the bottom of the lap of ${a} and ${b} there is ${length(gap)} where ${length(least)} was meant`,
      mend:
        gap < least
          ? say`cut one of its slots ${length(least - gap)} deeper`
          : say`cut its slots ${length(gap - most)} less deep`,
    };
  }
  const where = place === 'seat' ? 'where their faces meet' : 'across the slot';
  return gap < least
    ? {
        what: say`${b} is ${length(least - gap)} too big for ${a} ${where}`,
        mend: say`give it ${atLeast(least - gap)} to ${atMost(most + least - gap)} more room`,
      }
    : {
        what: say`${b} stands ${length(gap)} off ${a} ${where}, and ${length(most)} is the most`,
        mend: say`take ${atLeast(gap - most)} out of the cut, or pack it with veneer as thick`,
      };
}
