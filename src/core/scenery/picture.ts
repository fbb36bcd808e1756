import type { Point } from '../geometry/shapes.ts';
import { contours } from './contour.ts';
import { insideLoop } from './distance.ts';
import type { Field } from './field.ts';
import type { Grid } from './grid.ts';
import type { Hill, Land } from './land.ts';
import type { LevelLines, Section } from './model.ts';
import { simplifiedLine, simplifiedLoop } from './simplified.ts';
import type { Site } from './site.ts';

/** Lines this far apart in height, mm, with a dozen at most. */
const INTERVAL = 10;
const MOST_LINES = 12;
const BY_EYE = 0.2;

/** Contours at round heights, the lowest at the foot. */
export function levelLines(grid: Grid, highest: number): readonly LevelLines[] {
  if (highest <= 0) return [];
  const interval = INTERVAL * Math.ceil(highest / INTERVAL / MOST_LINES);
  const levels = Array.from({ length: Math.floor(highest / interval) + 1 }, (_, i) => (i === 0 ? FOOT : i * interval));
  return levels.map((level) => ({
    level: level === FOOT ? 0 : level,
    lines: contours(grid, level).map(({ points, closed }) => ({
      points: closed ? simplifiedLoop(points, BY_EYE) : simplifiedLine(points, BY_EYE),
      closed,
    })),
  }));
}

/** The foot of the land is drawn where it is just above the deck, mm. */
const FOOT = 0.01;

/** Points along a section are this far apart, mm. */
const SECTION_STEP = 5;

/** A section across and one along each hill's top, from edge to edge of its bench. */
export function usualSections(land: Land, sites: readonly Site[], field: Field): readonly Section[] {
  return land.forms.flatMap((form) => {
    if (form.kind !== 'hill') return [];
    const site = sites.find(({ loop }) => insideLoop(loop, form.top));
    return site === undefined ? [] : hillSections(form, site, field);
  });
}

function hillSections({ id, top }: Hill, { loop }: Site, field: Field): readonly Section[] {
  const xs = loop.map(([x]) => x);
  const ys = loop.map(([, y]) => y);
  return [
    sectionAlong({ id: `${id}-along`, from: [Math.min(...xs), top[1]], to: [Math.max(...xs), top[1]] }, field),
    sectionAlong({ id: `${id}-across`, from: [top[0], Math.min(...ys)], to: [top[0], Math.max(...ys)] }, field),
  ];
}

/** Heights of the ground along any straight line: distance from its start, then height over the deck; mm. */
export function sectionAlong({ id, from, to }: Omit<Section, 'heights'>, field: Field): Section {
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const count = Math.max(1, Math.ceil(size / SECTION_STEP));
  const heights = Array.from({ length: count + 1 }, (_, i): Point => {
    const share = i / count;
    const [x, y] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    return [size * share, Math.max(0, field(x, y))];
  });
  const peak = heights.reduce((best, [, h], i) => (h > (heights[best]?.[1] ?? 0) ? i : best), 0);
  const [rise, fall] = [heights.slice(0, peak + 1), heights.slice(peak)];
  return { id, from, to, heights: [...simplifiedLine(rise, BY_EYE), ...simplifiedLine(fall, BY_EYE).slice(1)] };
}

/** Light on the ground at a point from the upper left, 0 in shade to 1 in full light (Lambert); for a relief picture. */
export function lightOn(field: Field, [x, y]: Point): number {
  const step = 1;
  const gx = (field(x + step, y) - field(x - step, y)) / (2 * step);
  const gy = (field(x, y + step) - field(x, y - step)) / (2 * step);
  const light = [-0.5, 0.5, Math.SQRT1_2] as const;
  return Math.max(0, (-gx * light[0] - gy * light[1] + light[2]) / Math.hypot(gx, gy, 1));
}
