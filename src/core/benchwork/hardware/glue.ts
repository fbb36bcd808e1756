import type { Box } from '../../geometry/shapes.ts';
import type { HardwareUse } from '../../stock/fastener.ts';
import type { Joint, Part } from '../../stock/part.ts';
import type { Goods } from '../goods.ts';

/** Spread on one face: 150 to 200 g a square metre by makers' guides to white glue, counted as a film; mm. */
const GLUE_FILM = 0.2;
/** Coats of sealer; common practice, no source. */
export const COATS = 2;

type Placed = { readonly id: string; readonly box: Box };

/** Glued area of a joint from the boxes of its two pieces: the faces they share, and the walls of a slot; mm2. */
export function gluedArea(kind: Joint['kind'], a: Box, b: Box): number {
  const shared = ([0, 1, 2] as const).map((i) =>
    Math.max(0, Math.min(a.max[i], b.max[i]) - Math.max(a.min[i], b.min[i])),
  );
  const [least = 0, middle = 0, most = 0] = [...shared].sort((x, y) => x - y);
  if (kind === 'lap') return 2 * (least + middle) * (most / 2);
  return middle * most + (kind === 'dado' || kind === 'rabbet' ? 2 * least * most : 0);
}

type Glued = { readonly joints: readonly Joint[]; readonly boxes: readonly Placed[] };

/** Bottles of glue for all glued joints of a bench, by area. */
export function glueUse(goods: Goods | null, where: string, { joints, boxes }: Glued): readonly HardwareUse[] {
  const by = new Map(boxes.map(({ id, box }) => [id, box]));
  const area = joints.reduce((sum, { kind, held, between }) => {
    const [a, b] = between.map((id) => by.get(id));
    return held === 'glue' && a !== undefined && b !== undefined ? sum + gluedArea(kind, a, b) : sum;
  }, 0);
  const glue = goods?.covers.find(({ id }) => id.includes('glue'));
  if (glue === undefined || area === 0) return [];
  const fills = glue.fillsVolume === null ? null : glue.fillsVolume / GLUE_FILM;
  const covers = glue.coversArea ?? fills;
  return covers === null ? [] : [{ item: glue.id, quantity: Math.ceil(area / covers), length: null, where }];
}

/** Area to be sealed, both faces of every piece; edges are less than what pockets take away. mm2. */
export function sealedArea(parts: readonly Part[]): number {
  return parts.reduce((sum, { blank, places }) => sum + 2 * blank.length * blank.width * places.length, 0);
}

/** Tins of sealer for all parts of a bench, by coats. */
export function finishUse(goods: Goods | null, where: string, parts: readonly Part[]): readonly HardwareUse[] {
  const sealer = goods?.covers.find(({ id }) => id.includes('sealer'));
  if (sealer === undefined || sealer.coversArea === null || parts.length === 0) return [];
  return [
    { item: sealer.id, quantity: Math.ceil((COATS * sealedArea(parts)) / sealer.coversArea), length: null, where },
  ];
}
