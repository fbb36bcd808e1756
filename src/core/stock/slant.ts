import type { HalfSpace, Point, Vector } from '../geometry/shapes.ts';
import type { Blank, EdgeSide, Feature } from './part.ts';

type Shape = { readonly blank: Blank; readonly features: readonly Feature[] };
type Mitre = Extract<Feature, { readonly kind: 'mitre' }>;
export type Taper = Extract<Feature, { readonly kind: 'taper' }>;

const OUTWARD: Readonly<Record<EdgeSide, Point>> = { left: [-1, 0], right: [1, 0], bottom: [0, -1], top: [0, 1] };

/** The plane a taper leaves: upright to the face, through its two points, the wood on the edge's side gone. */
export function taperCut(taper: Taper): HalfSpace | null {
  const [dx, dy] = [taper.to[0] - taper.from[0], taper.to[1] - taper.from[1]];
  const size = Math.hypot(dx, dy);
  if (size === 0) return null;
  const out = OUTWARD[taper.edge];
  const way = dy * out[0] - dx * out[1] >= 0 ? 1 / size : -1 / size;
  const normal: Vector = [dy * way, -dx * way, 0];
  return { normal, offset: normal[0] * taper.from[0] + normal[1] * taper.from[1] };
}

/** The plane a mitre leaves: full size on its long side, leaning in by thickness / tan(angle). */
export function mitreCut(shape: Shape, mitre: Mitre): HalfSpace {
  const out = OUTWARD[mitre.edge];
  const lean = Math.cos(mitre.angle) / Math.sin(mitre.angle);
  const edge = edgeReach(shape, mitre.edge);
  const up = mitre.long === 'face' ? -lean : lean;
  const offset = edge + (mitre.long === 'face' ? -lean * shape.blank.thickness : 0);
  const size = Math.hypot(1, up);
  return { normal: [out[0] / size, out[1] / size, up / size], offset: offset / size };
}

/** How far out an edge lies along its outward direction, after what is trimmed from it. */
function edgeReach({ blank, features }: Shape, edge: EdgeSide): number {
  const trims = features.reduce((sum, f) => (f.kind === 'trim' && f.edge === edge ? sum + f.by : sum), 0);
  if (edge === 'right') return blank.length - trims;
  if (edge === 'top') return blank.width - trims;
  return -trims;
}

/** Every slanted cut of a part as the half-space it keeps. */
export function slantedCuts(shape: Shape): readonly HalfSpace[] {
  return shape.features.flatMap((feature): readonly HalfSpace[] => {
    if (feature.kind === 'mitre') return [mitreCut(shape, feature)];
    const cut = feature.kind === 'taper' ? taperCut(feature) : null;
    return cut === null ? [] : [cut];
  });
}
