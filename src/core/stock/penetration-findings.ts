import type { Finding } from '../finding.ts';
import { intersection } from '../geometry/booleans.ts';
import { area, bounds } from '../geometry/polygon.ts';
import { atMost, length, type Sentence, say } from '../units/say.ts';
import { bite } from './bite.ts';
import { CUT_LIMITS_SOURCE, cutLimits, middleThird } from './cut-limits.ts';
import { nearCuts } from './near-cuts.ts';
import type { Feature, Part, Request } from './part.ts';

/** Shared wood of two features below which they only touch, mm2. */
const TOUCH = 0.01;

type Words = { readonly what: Sentence; readonly mend: Sentence };
type Sizes = Pick<Finding, 'figure' | 'limit' | 'unit'>;

/** A request for a part that is not there, or for wood that it does not have. */
export function missedFinding(request: Request): Finding {
  const { by, part, kind, chapter = 'benchwork' } = request;
  return {
    rule: 'request-misses',
    level: 'halt',
    where: part,
    chapter,
    what: say`${by} asks for a ${kind} in ${part} where that has no wood.`,
    mend: say`Move ${by} back over the wood of ${part}, or take it off.`,
    ...{ figure: null, limit: null, unit: 'mm', source: 'geometry', accepted: null },
  };
}

/** What the holes and notches asked of one instance do to it; only pieces on edge carry, so only they have limits. */
export function penetrationFindings(part: Part, id: string, asked: readonly Feature[]): readonly Finding[] {
  const onEdge = part.role === 'strut' || part.role === 'side' || part.role === 'end';
  return asked.flatMap((feature, i) => [
    ...clashes({ ...part, features: [...part.features, ...asked.slice(0, i)] }, id, feature),
    ...(onEdge && feature.kind === 'hole'
      ? nearCuts(part.blank, id, {
          hole: feature,
          others: [...part.features, ...asked.filter((one) => one !== feature)],
        })
      : []),
    ...(onEdge && feature.kind === 'notch' ? notchFindings(part, id, feature) : []),
    ...(onEdge && feature.kind === 'hole' ? holeFindings(part, id, feature) : []),
  ]);
}

function care(id: string, rule: string, rest: Words & Sizes): Finding {
  return hint('care', { id, rule, ...rest });
}

/** A rule that is only a proxy: never more than a care. */
function hint(level: 'care' | 'note', { id, ...rest }: Check & Sizes): Finding {
  return { level, where: id, chapter: 'benchwork', ...rest, source: CUT_LIMITS_SOURCE, accepted: null };
}

/** A cut into wood that another joint or cut needs. */
function clashes(part: Part, id: string, feature: Feature): readonly Finding[] {
  const mine = bite(part.blank, feature);
  if (mine === null) return [];
  return part.features.flatMap((other) => {
    if (other.kind === 'trim') return [];
    const theirs = bite(part.blank, other);
    if (theirs === null) return [];
    const shared = intersection(mine.loops, theirs.loops).reduce((sum, piece) => sum + area(piece), 0);
    return shared > TOUCH ? [clash(id, feature, other)] : [];
  });
}

function clash(id: string, feature: Feature, other: Feature): Finding {
  const reach = bounds(cornersOf(other));
  return {
    ...{ rule: 'cut-meets-joint', level: 'halt', where: id, chapter: 'benchwork' },
    what: say`The ${feature.kind} for ${feature.for ?? 'a request'} in ${id} runs into its ${other.kind} ${other.id}${other.for === undefined ? '' : ` for ${other.for}`}.`,
    mend: say`Keep it clear of ${length(reach.low[0])} to ${length(reach.high[0])} along ${id}.`,
    ...{ figure: null, limit: null, unit: 'mm', source: 'geometry', accepted: null },
  };
}

function cornersOf(feature: Feature): readonly (readonly [number, number])[] {
  if (feature.kind === 'cut-out') return feature.outline;
  if ('patch' in feature)
    return [
      [feature.patch.x0, feature.patch.y0],
      [feature.patch.x1, feature.patch.y1],
    ];
  return 'at' in feature ? [feature.at] : [[0, 0]];
}

type Notch = Extract<Feature, { readonly kind: 'notch' }>;

function notchFindings(part: Part, id: string, { patch, edge, for: by = 'a request' }: Notch): readonly Finding[] {
  if (edge === 'left' || edge === 'right') return [];
  const { length: long, width: high } = part.blank;
  const atEnd = patch.x0 <= 0 || patch.x1 >= long;
  const limits = cutLimits(high);
  const deepest = atEnd ? limits.endNotchDepth : limits.notchDepth;
  const [deep, run] = [patch.y1 - patch.y0, patch.x1 - patch.x0];
  const [from, to] = middleThird(long);
  const inside = Math.min(patch.x1, to) - Math.max(patch.x0, from);
  return [
    ...over(deep, deepest, {
      id,
      rule: 'notch-deep',
      what: say`The notch for ${by} takes ${length(deep)} of the ${length(high)} of ${id}.`,
      mend: say`Make it no deeper than ${atMost(deepest)}, or move ${by} off ${id}.`,
    }),
    ...over(run, limits.notchLength, {
      id,
      rule: 'notch-long',
      what: say`The notch for ${by} in ${id} is ${length(run)} long; ${length(high - deep)} of its ${length(high)} are left there.`,
      mend: say`Keep it within ${atMost(limits.notchLength)}, glue a strip along ${id} under the notch, or move ${by} off ${id}.`,
    }),
    ...over(inside, 0, {
      id,
      rule: 'notch-in-middle',
      what: say`The notch for ${by} lies ${length(Math.max(0, inside))} inside the middle third of ${id}, where it bends most.`,
      mend: say`Move ${by} to within ${atMost(from)} of an end of ${id}.`,
    }),
  ];
}

type Check = Words & { readonly id: string; readonly rule: string };

function over(figure: number, limit: number, { id, rule, what, mend }: Check): readonly Finding[] {
  return figure > limit + 1e-9 ? [care(id, rule, { what, mend, figure, limit, unit: 'mm' })] : [];
}

type Hole = Extract<Feature, { readonly kind: 'hole' }>;

/** A hole belongs on the middle: what is left over and under it is at least a third of the piece. */
function holeFindings(part: Part, id: string, { diameter, at, for: by = 'a request' }: Hole): readonly Finding[] {
  const high = part.blank.width;
  const limit = cutLimits(high).hole;
  const left = Math.min(at[1], high - at[1]) - diameter / 2;
  const least = (high - diameter) / 2;
  return [
    ...over(diameter, limit, {
      id,
      rule: 'hole-large',
      what: say`The hole for ${by} is ${length(diameter)} of the ${length(high)} of ${id}.`,
      mend: say`Drill no more than ${atMost(limit)}: part what goes through it over two holes.`,
    }),
    ...(left < high / 3 - 1e-9 && least > left + 1e-9
      ? [
          hint(diameter <= high / 6 ? 'note' : 'care', {
            id,
            rule: 'hole-off-middle',
            what: say`The hole for ${by} leaves ${length(left)} to the edge of ${id}.`,
            mend: say`Drill it at ${length(high / 2)}, on the middle of ${id}.`,
            ...{ figure: left, limit: high / 3, unit: 'mm' },
          }),
        ]
      : []),
  ];
}
