import { bounds, isAskew, loopSize } from '../core/geometry/polygon.ts';
import type { Point } from '../core/geometry/shapes.ts';
import type { EdgeSide, Feature, Patch } from '../core/stock/part.ts';
import { cutPair, figurePair, type Pair } from './lengths.ts';

/** One row of a part's table: what is made, where it starts, how large, how deep. Lengths in mm. */
export type FeatureRow = {
  readonly what: string;
  readonly side: string;
  readonly at: Pair;
  readonly size: Pair;
  readonly depth: Pair;
  readonly for: string | null;
};

const NONE: Pair = { mm: '–', in: '–' };
const THROUGH: Pair = { mm: 'through', in: 'through' };
const EDGES: Readonly<Record<EdgeSide, string>> = {
  left: 'left end',
  right: 'right end',
  bottom: 'bottom edge',
  top: 'top edge',
};

function both(a: number, b: number, between: string): Pair {
  return across(figurePair(a), figurePair(b), between);
}

function across(first: Pair, second: Pair, between: string): Pair {
  return { mm: `${first.mm}${between}${second.mm}`, in: `${first.in}${between}${second.in}` };
}

function from(patch: Patch): Pair {
  return both(patch.x0, patch.y0, ', ');
}

function sizeOf(patch: Patch): Pair {
  return across(cutPair(patch.x1 - patch.x0), cutPair(patch.y1 - patch.y0), ' × ');
}

function diameter(mm: number): Pair {
  const pair = figurePair(mm);
  return { mm: `⌀ ${pair.mm}`, in: `⌀ ${pair.in}` };
}

type Told = Omit<FeatureRow, 'for' | 'what'>;

/** A cut-out by its lower left corner, or by its first corner where it stands askew. */
function cutOutTold(outline: readonly Point[]): Told {
  const [wide, high] = loopSize(outline);
  const { low } = bounds(outline);
  const [first = low] = outline;
  const askew = isAskew(outline);
  const at = askew ? both(first[0], first[1], ', ') : both(low[0], low[1], ', ');
  return {
    side: askew ? 'face, askew' : 'face',
    at,
    size: across(cutPair(wide), cutPair(high), ' × '),
    depth: THROUGH,
  };
}

function told(feature: Feature): Told {
  switch (feature.kind) {
    case 'trim':
      return { side: EDGES[feature.edge], at: NONE, size: figurePair(feature.by), depth: THROUGH };
    case 'notch':
      return { side: EDGES[feature.edge], at: from(feature.patch), size: sizeOf(feature.patch), depth: THROUGH };
    case 'dado':
    case 'stopped-dado':
    case 'rabbet':
    case 'groove':
      return {
        side: feature.side,
        at: from(feature.patch),
        size: sizeOf(feature.patch),
        depth: cutPair(feature.depth),
      };
    case 'opening':
      return { side: 'face', at: from(feature.patch), size: sizeOf(feature.patch), depth: THROUGH };
    case 'cut-out':
      return cutOutTold(feature.outline);
    case 'hole':
    case 'counterbore': {
      const depth = feature.depth === 'through' ? THROUGH : cutPair(feature.depth);
      return {
        side: feature.side,
        at: both(feature.at[0], feature.at[1], ', '),
        size: diameter(feature.diameter),
        depth,
      };
    }
    case 'mitre':
      return { side: EDGES[feature.edge], at: NONE, size: NONE, depth: THROUGH };
    case 'taper':
      return {
        side: EDGES[feature.edge],
        at: both(feature.from[0], feature.from[1], ', '),
        size: both(feature.to[0], feature.to[1], ', '),
        depth: THROUGH,
      };
    case 'roundover':
      return {
        side: `${feature.side}, ${EDGES[feature.edge]}`,
        at: NONE,
        size: figurePair(feature.radius),
        depth: NONE,
      };
    case 'rounded-corner':
      return {
        side: `${feature.corner.replace('-', ' ')} corner`,
        at: NONE,
        size: figurePair(feature.radius),
        depth: THROUGH,
      };
  }
}

/** A part's machining in words and figures: the drawing's table. `at` counts from the lower left corner. */
export function featureRows(features: readonly Feature[]): readonly FeatureRow[] {
  return features.map((feature) => ({
    what: feature.kind.replace('-', ' '),
    ...told(feature),
    for: feature.for ?? null,
  }));
}
