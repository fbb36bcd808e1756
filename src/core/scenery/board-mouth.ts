import { rectangle } from '../geometry/polygon.ts';
import type { Feature } from '../stock/part.ts';
import { edgeLine } from './board.ts';
import { crossedBy } from './crossing.ts';
import type { Field } from './field.ts';
import type { BoardAsk, Path } from './land.ts';
import { LEAST_ROOF } from './line-findings.ts';
import { type Site, toNotebook } from './site.ts';
import { straightWay } from './way.ts';

/** Where a line passes through a board: from and to along the edge, and the heights kept free over the deck; mm. */
export type Mouth = { readonly from: number; readonly to: number; readonly bed: number; readonly top: number };

/** Ground this little over a roadbed is scraped off, mm. */
const SCRAPE = 0.5;

export type MouthAsk = {
  readonly ask: BoardAsk;
  readonly site: Site;
  readonly field: Field;
  readonly paths: readonly Path[];
  /** height trains keep free over a roadbed, mm */
  readonly train: number;
};

/** The mouths a board on an edge needs: wherever a line runs through it with the ground over its roadbed. */
export function boardMouths({ ask, site, field, paths, train }: MouthAsk): readonly Mouth[] {
  const { start, along, length } = edgeLine(site, ask.edge);
  // a hair inside the edge, so that a line that starts there is met
  const inward = ask.edge === 'front' || ask.edge === 'left' ? SCRAPE : -SCRAPE;
  const on = (s: number) =>
    toNotebook(site.pose, [start[0] + along[0] * s + along[1] * inward, start[1] + along[1] * s + along[0] * inward]);
  return crossedBy(straightWay(ask.id, on(0), on(length)), paths).flatMap(({ s, z, half }): readonly Mouth[] => {
    const ground = field(...on(s));
    if (ground - z <= SCRAPE) return [];
    return [{ from: s - half, to: s + half, bed: Math.max(0, z), top: z + train }];
  });
}

type Board = { readonly first: number; readonly length: number; readonly width: number };

/** Mouths as cut-outs of a board that starts `first` along its edge; open to the top where the roof would be thin. */
export function mouthFeatures(mouths: readonly Mouth[], { first, length, width }: Board): readonly Feature[] {
  return mouths.flatMap(({ from, to, bed, top }, i): readonly Feature[] => {
    const [x0, x1] = [Math.max(0, from - first), Math.min(length, to - first)];
    if (x1 - x0 <= 0 || bed >= width) return [];
    const high = width - top < LEAST_ROOF ? width : top;
    return [{ id: `mouth-${i + 1}`, kind: 'cut-out', outline: rectangle([x0, bed], [x1, high]) }];
  });
}
