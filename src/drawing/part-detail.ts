import type { Block } from './block.ts';
import { cornerDetail } from './corner-detail.ts';
import type { DetailAsk } from './detail-frame.ts';
import { edgeDetail } from './edge-detail.ts';
import { faceDetail } from './face-detail.ts';
import { outlineDetail } from './outline-detail.ts';
import { boundsOf } from './part-groups.ts';
import { sectionDetail } from './section-detail.ts';

/** The enlarged detail that gives a group its sizes; null when the view itself does. */
export function detailBlock(ask: DetailAsk): Block | null {
  const first = ask.sizing.features[0];
  if (first === undefined || ask.sizing.detail === 'none') return null;
  if (ask.sizing.detail === 'edge') return edgeDetail(ask);
  if (ask.sizing.detail === 'corner') return cornerDetail(ask);
  const box = boundsOf(first, ask.part.blank);
  if (first.kind === 'cut-out') return outlineDetail(ask, box, first.outline);
  return ask.sizing.detail === 'face' ? faceDetail(ask, box) : sectionDetail(ask, box);
}
