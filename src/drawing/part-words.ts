import type { Feature, Part } from '../core/stock/part.ts';
import type { DrawingUnit } from './drawing.ts';
import { lengthText, saidCut, sizeText } from './figures.ts';
import { boundsOf, type FeatureGroup, isBored, isPatch, isPocket, touches } from './part-groups.ts';

const pocketNames = { dado: 'dado', 'stopped-dado': 'stopped dado', rabbet: 'rabbet', groove: 'groove' } as const;

function edgeWords(feature: Feature, part: Part): string {
  const open = touches(boundsOf(feature, part.blank), part.blank);
  if (open.left || open.right) return open.left && open.right ? 'from end to end' : 'at the end';
  if (open.top && open.bottom) return 'across the whole width';
  if (open.top) return 'from the top edge';
  return open.bottom ? 'from the bottom edge' : 'inside the edges';
}

/** An angle in degrees, to a tenth. */
export function degrees(angle: number): string {
  return `${Math.round((angle * 1800) / Math.PI) / 10}°`;
}

/** The angle between a taper's line and the edge it is on, radians. */
function slopeOf({ edge, from, to }: Extract<Feature, { readonly kind: 'taper' }>): number {
  const [along, across] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])];
  return edge === 'top' || edge === 'bottom' ? Math.atan2(across, along) : Math.atan2(along, across);
}

/** What a feature is, in the trade's words, without its sizes. */
export function featureName(feature: Feature, part: Part): string {
  if (isPocket(feature)) return `${pocketNames[feature.kind]} in the ${feature.side}, ${edgeWords(feature, part)}`;
  if (isBored(feature)) {
    const name = feature.kind === 'hole' ? 'hole' : 'counterbore';
    return feature.depth === 'through' ? `${name} through` : `${name} in the ${feature.side}`;
  }
  if (feature.kind === 'notch') return `slot ${edgeWords(feature, part)}`;
  if (feature.kind === 'opening') return 'opening through';
  if (feature.kind === 'cut-out') return 'cut-out through';
  if (feature.kind === 'trim') return `trim the ${feature.edge} edge after machining`;
  if (feature.kind === 'mitre') return `mitre on the ${feature.edge} edge, long on the ${feature.long}`;
  if (feature.kind === 'taper') return `taper on the ${feature.edge} edge, ${degrees(slopeOf(feature))} to it`;
  if (feature.kind === 'roundover') return `roundover on the ${feature.edge} edge of the ${feature.side}`;
  return `rounded corner, ${feature.corner.replace('-', ' ')}`;
}

/** What the features of one group are; rounded corners of one radius are named together, all four without their places. */
export function groupName(features: readonly Feature[], part: Part): string {
  const corners = features.flatMap((one) => (one.kind === 'rounded-corner' ? [one.corner.replace('-', ' ')] : []));
  if (corners.length > 1) return corners.length === 4 ? 'rounded corner' : `rounded corner, ${corners.join(', ')}`;
  const [first] = features;
  return first === undefined ? '' : featureName(first, part);
}

/** Sizes that stand in the notes because no dimension line shows them. */
export type NoteSize = {
  readonly measure: 'diameter' | 'depth' | 'radius' | 'angle' | 'size-x';
  readonly text: string;
  readonly words: string;
};

export function noteSizes(feature: Feature, unit: DrawingUnit): readonly NoteSize[] {
  const show = (mm: number) => sizeText(mm, unit).replaceAll(' ', '\u00a0');
  const text = (mm: number) => sizeText(mm, unit);
  if (isBored(feature)) {
    const across: NoteSize = { measure: 'diameter', text: text(feature.diameter), words: `⌀${show(feature.diameter)}` };
    if (feature.depth === 'through') return [across];
    return [across, { measure: 'depth', text: text(feature.depth), words: `${show(feature.depth)} deep` }];
  }
  if (isPatch(feature)) {
    const relief = isPocket(feature) ? (feature.relief ?? 0) : 0;
    const corner: readonly NoteSize[] =
      feature.corner > 0
        ? [{ measure: 'radius', text: text(feature.corner), words: `corners R\u00a0${show(feature.corner)}` }]
        : [];
    return relief > 0
      ? [...corner, { measure: 'radius', text: text(relief), words: `corners relieved R\u00a0${show(relief)}` }]
      : corner;
  }
  if (feature.kind === 'roundover' || feature.kind === 'rounded-corner') {
    return [{ measure: 'radius', text: text(feature.radius), words: `R\u00a0${show(feature.radius)}` }];
  }
  if (feature.kind === 'mitre')
    return [{ measure: 'angle', text: degrees(feature.angle), words: degrees(feature.angle) }];
  return feature.kind === 'trim'
    ? [{ measure: 'size-x', text: text(feature.by), words: `by ${show(feature.by)}` }]
    : [];
}

function listed(words: readonly string[]): string {
  if (words.length <= 1) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function sizeWords(feature: Feature, part: Part, unit: DrawingUnit): string {
  if (!isPatch(feature))
    return noteSizes(feature, unit)
      .map(({ words }) => words.replace('⌀', 'diameter '))
      .join(', ');
  const { x0, x1, y0, y1 } = boundsOf(feature, part.blank);
  const size = `${saidCut(x1 - x0, unit)} by ${saidCut(y1 - y0, unit)}`;
  return isPocket(feature) ? `${size}, ${saidCut(feature.depth, unit)} deep` : size;
}

function placesWords(features: readonly Feature[], part: Part, unit: DrawingUnit): string {
  const placed = features.filter((feature) => isPatch(feature) || isBored(feature));
  if (placed.every((feature) => touches(boundsOf(feature, part.blank), part.blank).left)) return '';
  const at = placed.map((feature) =>
    lengthText(isBored(feature) ? feature.at[0] : boundsOf(feature, part.blank).x0, unit),
  );
  const how = placed.every(isBored) ? 'middle' : 'starting';
  return `, ${how} ${listed(counted(at))} ${unit} from the left end`;
}

/** Each figure once, with how often it stands where it does more than once. */
function counted(figures: readonly string[]): readonly string[] {
  return [...new Set(figures)].map((figure) => {
    const count = figures.filter((one) => one === figure).length;
    return count === 1 ? figure : `${figure} (${count} times)`;
  });
}

/** One sentence for a group: how many, what, how large and where. */
export function groupSentence({ letter, features }: FeatureGroup, part: Part, unit: DrawingUnit): string {
  const first = features[0];
  if (first === undefined) return '';
  const size = sizeWords(first, part, unit);
  return `${letter}: ${features.length} × ${groupName(features, part)}${size === '' ? '' : `, ${size}`}${placesWords(features, part, unit)}.`;
}
