import type { Block } from '../block.ts';
import type { Mark, Spot, TextMark } from '../mark.ts';

const ANCHORS: Readonly<Record<TextMark['anchor'], TextMark['anchor']>> = {
  start: 'end',
  middle: 'middle',
  end: 'start',
};

/**
 * A block with left and right changed about x = 0: every mark mirrored, words still written the right way round over the
 * mirrored place of their box. Only lettering that is read from below may be in it; views and figures are left off.
 */
export function mirrored({ marks }: Block): Block {
  return { marks: marks.map(mirroredMark), views: [], dimensions: [] };
}

function flip([x, y]: Spot): Spot {
  return [-x + 0, y];
}

function mirroredMark(mark: Mark): Mark {
  switch (mark.kind) {
    case 'line':
      return { ...mark, from: flip(mark.from), to: flip(mark.to) };
    case 'polyline':
      return { ...mark, points: mark.points.map(flip) };
    case 'polygon':
      return { ...mark, rings: mark.rings.map((ring) => ring.map(flip)) };
    case 'circle':
      return { ...mark, centre: flip(mark.centre) };
    case 'arc':
      return { ...mark, centre: flip(mark.centre), from: Math.PI - mark.to, to: Math.PI - mark.from };
    case 'text':
      return { ...mark, at: flip(mark.at), anchor: ANCHORS[mark.anchor] };
  }
}
