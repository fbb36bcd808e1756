import { bounds } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import { insideLoop } from './distance.ts';
import type { Land, Path, SectionAsk } from './land.ts';
import { type Ground, type Section, sectionAlong } from './section.ts';
import type { Site } from './site.ts';
import { straightWay, type Way, wayAlong } from './way.ts';

/** A section across and one along each hill's top, one across each water, and those the author asks for. */
export function landSections(land: Land, sites: readonly Site[], ground: Ground): readonly Section[] {
  const asked = land.sections.flatMap((ask) => askedWay(ask, ground.paths) ?? []);
  const own = new Set(asked.map(({ id }) => id));
  const usual = [...hillWays(land, sites), ...waterWays(land, sites)].filter(({ id }) => !own.has(id));
  return [...usual, ...asked].filter(({ points }) => points.length > 1).map((way) => sectionAlong(way, ground));
}

/** The way an author asks for; null along a line that was not laid. */
function askedWay({ id, way }: SectionAsk, paths: readonly Path[]): Way | null {
  if (way.kind === 'cut') return straightWay(id, way.from, way.to);
  const path = paths.find((one) => one.id === way.line);
  if (path === undefined) return null;
  const end = path.points[path.points.length - 1]?.at ?? 0;
  const [from, to] = [way.from ?? 0, way.to ?? end];
  return wayAlong(id, path, [Math.min(from, to), Math.max(from, to)]);
}

function hillWays({ forms }: Land, sites: readonly Site[]): readonly Way[] {
  return forms.flatMap((form) => (form.kind === 'hill' ? fullWays(form.id, form.top, sites) : []));
}

/** Across through the middle of its box. */
function waterWays({ water }: Land, sites: readonly Site[]): readonly Way[] {
  return water.flatMap(({ id, outline }) => {
    const { low, high } = bounds(outline);
    return fullWays(id, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2], sites).slice(1);
  });
}

/** From edge to edge of the bench that holds a place: along it, then across it. */
function fullWays(id: string, [x, y]: Point, sites: readonly Site[]): readonly Way[] {
  const site = sites.find(({ loop }) => insideLoop(loop, [x, y]));
  if (site === undefined) return [];
  const { low, high } = bounds(site.loop);
  return [
    straightWay(`${id}-along`, [low[0], y], [high[0], y]),
    straightWay(`${id}-across`, [x, low[1]], [x, high[1]]),
  ];
}
