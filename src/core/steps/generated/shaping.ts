import { bounds, isAskew, loopSize } from '../../geometry/polygon.ts';
import type { Feature, Part } from '../../stock/part.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import { type Draft, draft, type Work } from './draft.ts';
import { slotTest } from './slot.ts';
import { counted, grouped, instanceIds, instances, joined, lengths, tenth } from './words.ts';

type Of<K extends Feature['kind']> = Extract<Feature, { kind: K }>;
type Cut<F> = { readonly part: Part; readonly feature: F };

function cuts<K extends Feature['kind']>(parts: readonly Part[], kind: K): Cut<Of<K>>[] {
  const wanted = (feature: Feature): feature is Of<K> => feature.kind === kind;
  return parts.flatMap((part) => part.features.filter(wanted).map((feature) => ({ part, feature })));
}

function partsOf(found: readonly { readonly part: Part }[]): Part[] {
  return [...new Set(found.map((one) => one.part))];
}

function openingLine({ part, feature }: Cut<Of<'opening'>>): Sentence {
  const { x0, x1, y0, y1 } = feature.patch;
  return say`${instances([part])}: opening ${length(x1 - x0)} by ${length(y1 - y0)}, corners ${length(feature.corner)}, its left edge at ${length(x0)} and its lower edge at ${length(y0)}.`;
}

function notchLine({ part, feature }: Cut<Of<'notch'>>): Sentence {
  const { x0, x1, y0, y1 } = feature.patch;
  return say`${instances([part])}: notch ${length(x1 - x0)} wide and ${length(y1 - y0)} deep in the ${feature.edge} edge, beginning at ${length(x0)}.`;
}

/** A face that falls out of its opening is cut with one bit in one run, so that nothing of it is lost. */
function keptLines(parts: readonly Part[], found: readonly Cut<Of<'opening'>>[]): Sentence[] {
  return parts.flatMap((part) => {
    const out = found.find(
      ({ part: board, feature }) => board.places.some(({ id }) => id === part.from) && isOf(feature, part),
    );
    if (part.from === undefined || out === undefined) return [];
    const { x0, x1 } = out.feature.patch;
    const bit = (x1 - x0 - part.blank.length) / 2;
    return [
      say`${instances([part])}: what falls out is kept. Write both labels and which way is up first. A bit of ${length(bit)}, its middle ${length(bit / 2)} inside the opening's edge, once round in passes; leave four bridges of wood and saw them last.`,
    ];
  });
}

function isOf(feature: Of<'opening'>, part: Part): boolean {
  return feature.for !== undefined && part.places.some(({ id }) => id === feature.for);
}

function cutOutLine({ part, feature: { outline } }: Cut<Of<'cut-out'>>): Sentence {
  const [wide, high] = loopSize(outline);
  const { low } = bounds(outline);
  const [[x, y] = low] = outline;
  if (isAskew(outline)) {
    return say`${instances([part])}: cut-out ${length(wide)} by ${length(high)}, askew, a corner ${length(x)} from the left end and ${length(y)} from the bottom edge; the drawing has all corners.`;
  }
  return say`${instances([part])}: cut-out ${length(wide)} by ${length(high)}, its left at ${length(low[0])} and its lower edge at ${length(low[1])}.`;
}

function openings(parts: readonly Part[]): Draft[] {
  const isSlot = slotTest(parts);
  const found = cuts(parts, 'opening');
  const notches = cuts(parts, 'notch').filter((cut) => !isSlot(cut.feature));
  const outs = cuts(parts, 'cut-out');
  const works: Work[] = [
    {
      kind: 'machining',
      noun: 'opening',
      makes: instanceIds(partsOf(found)),
      lines: [...found.map(openingLine), ...keptLines(parts, found)],
    },
    { kind: 'machining', noun: 'notch', makes: instanceIds(partsOf(notches)), lines: notches.map(notchLine) },
    { kind: 'machining', noun: 'cut-out', makes: instanceIds(partsOf(outs)), lines: outs.map(cutOutLine) },
  ];
  const work = works.filter((one) => one.lines.length > 0);
  if (work.length === 0) return [];
  const [title, tools] = ['Cut the openings', ['router', 'template']];
  return [draft({ id: 'openings', title, work, tools, child: 'away', after: ['crosscut', 'panels', 'mark'] })];
}

function drillLines(found: readonly Cut<Of<'hole'>>[]): Sentence[] {
  const bit = found[0]?.feature.diameter ?? 0;
  const each = grouped(found, (cut) => cut.part.id).map((same) => {
    const across = same.map((cut) => cut.feature.at[0]);
    return joined(
      say`${instances(partsOf(same))}: ${counted(same.length, 'hole')} at `,
      lengths(across),
      say` from the left end.`,
    );
  });
  return [say`Drill ${length(bit)}.`, ...each];
}

function drilling(parts: readonly Part[]): Draft[] {
  const found = cuts(parts, 'hole');
  if (found.length === 0) return [];
  const lines = grouped(found, (cut) => tenth(cut.feature.diameter)).flatMap(drillLines);
  const work = [{ kind: 'machining', noun: 'hole', makes: instanceIds(partsOf(found)), lines } as const];
  return [
    draft({
      id: 'holes',
      title: 'Drill the holes',
      work,
      tools: ['drill', 'square'],
      after: ['rout', 'slots', 'openings'],
    }),
  ];
}

/** `45°`, to a tenth. */
function degrees(angle: number): string {
  return `${Math.round((angle * 1800) / Math.PI) / 10}°`;
}

/** Mitres and tapers take away edges that everything before was measured from, so they come last. */
function edges(parts: readonly Part[]): Draft[] {
  const mitres = cuts(parts, 'mitre');
  const tapers = cuts(parts, 'taper');
  if (mitres.length + tapers.length === 0) return [];
  const mitred = mitres.map(
    ({ part, feature }) =>
      say`${instances([part])}: mitre on the ${feature.edge} edge at ${degrees(feature.angle)} to the face, full size on the ${feature.long}: saw tilted ${degrees(Math.PI / 2 - feature.angle)}.`,
  );
  const tapered = tapers.map(
    ({ part, feature }) =>
      say`${instances([part])}: taper on the ${feature.edge} edge from ${length(feature.from[0])}, ${length(feature.from[1])} to ${length(feature.to[0])}, ${length(feature.to[1])}.`,
  );
  const work: Work[] = [
    { kind: 'machining', noun: 'mitre', makes: instanceIds(partsOf(mitres)), lines: mitred },
    { kind: 'machining', noun: 'taper', makes: instanceIds(partsOf(tapers)), lines: tapered },
  ];
  return [
    draft({
      id: 'edges',
      title: 'Cut mitres, then tapers',
      work: work.filter((one) => one.lines.length > 0),
      tools: ['circular-saw', 'straightedge'],
      child: 'away',
      after: ['rout', 'slots', 'openings', 'holes'],
    }),
  ];
}

/** Openings, holes, then mitres and tapers. */
export function shaping(parts: readonly Part[]): Draft[] {
  return [...openings(parts), ...drilling(parts), ...edges(parts)];
}
