import type { Finding } from '../finding.ts';
import type { Point } from '../geometry/shapes.ts';
import { length, say } from '../units/say.ts';
import { insideLoop } from './distance.ts';
import { found } from './found.ts';
import type { Land, Path, SectionAsk } from './land.ts';
import type { Site } from './site.ts';

/** Shares of a cut at which it is looked whether it lies on a bench. */
const LOOKS = [0.02, 0.25, 0.5, 0.75, 0.98];

/** Sections that run past the end of their line, or over no bench at all. */
export function sectionFindings(land: Land, paths: readonly Path[], sites: readonly Site[]): readonly Finding[] {
  return land.sections.flatMap((ask) => [...pastLine(ask, paths), ...offDeck(ask, sites)]);
}

function pastLine({ id, way }: SectionAsk, paths: readonly Path[]): readonly Finding[] {
  const path = way.kind === 'line' ? paths.find((one) => one.id === way.line) : undefined;
  if (way.kind !== 'line' || path === undefined) return [];
  const end = path.points[path.points.length - 1]?.at ?? 0;
  const [low, high] = [Math.min(way.from ?? 0, way.to ?? end), Math.max(way.from ?? 0, way.to ?? end)];
  if (low >= 0 && high <= end) return [];
  return [
    found({
      ...{
        rule: 'section-past-line',
        level: 'care',
        where: id,
        figure: low < 0 ? low : high,
        limit: low < 0 ? 0 : end,
      },
      what: say`Section ${id} asks for ${way.line} from ${length(low)} to ${length(high)}, and the line runs from 0 to ${length(end)}; it is drawn as far as the line goes.`,
      mend: say`Keep from: and to: between 0 and ${length(end)}.`,
      source: 'geometry',
    }),
  ];
}

function offDeck({ id, way }: SectionAsk, sites: readonly Site[]): readonly Finding[] {
  if (way.kind !== 'cut') return [];
  const { from, to } = way;
  const looked = LOOKS.map(
    (share): Point => [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share],
  );
  if (looked.some((place) => sites.some(({ loop }) => insideLoop(loop, place)))) return [];
  return [
    found({
      ...{ rule: 'section-off-deck', level: 'care', where: id },
      what: say`Section ${id} crosses no bench, so it shows nothing.`,
      mend: say`Move its ends so that the cut runs over a deck.`,
      source: 'geometry',
    }),
  ];
}
