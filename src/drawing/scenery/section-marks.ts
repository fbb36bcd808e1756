import type { Point } from '../../core/geometry/shapes.ts';
import { spansWithout } from '../../core/geometry/spans.ts';
import type { SceneryModel } from '../../core/scenery/model.ts';
import type { Section } from '../../core/scenery/section.ts';
import type { Mark } from '../mark.ts';
import type { Seen } from '../scene.ts';
import { onPaper, type View } from '../view.ts';
import { areaMark, loopMark } from './land-stage.ts';

/** A section being drawn: heights on paper stand `deckTop` over the floor; mm. */
export type CutGround = {
  readonly section: Section;
  readonly land: SceneryModel;
  readonly deckTop: number;
  readonly view: View;
  /** where profile boards stand, from and to along the section: no foam is there */
  readonly boards: readonly Point[];
};

/** The ground's own line, the layers under it, roadbeds, tunnels and water. */
export function groundMarks(cut: CutGround): readonly Mark[] {
  return [...layerMarks(cut), ...waterMarks(cut), ...lineMarks(cut), ...surfaceMarks(cut)];
}

/** Layers as dashed lines where the ground stands over them. */
function layerMarks({ section, land, deckTop, view, boards }: CutGround): readonly Mark[] {
  return land.layers.flatMap(({ to }) =>
    spansWithout(spansOver(section.heights, to), boards).map(([from, end]): Mark => {
      const [a, b] = [onPaper(view, [from, deckTop + to]), onPaper(view, [end, deckTop + to])];
      return { kind: 'line', from: a, to: b, pen: 'hidden', role: 'hidden' };
    }),
  );
}

/** The line of the ground, left out over water. */
function surfaceMarks({ section, deckTop, view }: CutGround): readonly Mark[] {
  return dry(section).map((points) => ({
    kind: 'polyline',
    points: points.map(([s, h]) => onPaper(view, [s, deckTop + h])),
    pen: 'cut-edge',
    role: 'outline',
  }));
}

/** Stretches of a section's ground between its waters. */
function dry({ heights, water }: Section): readonly (readonly Point[])[] {
  const end = heights[heights.length - 1]?.[0] ?? 0;
  const banks = [0, ...water.flatMap(({ from, to }) => [from, to]), end];
  return banks.flatMap((from, i) => {
    const to = banks[i + 1];
    if (i % 2 === 1 || to === undefined || to - from < 1e-6) return [];
    const inside = heights.filter(([s]) => s > from && s < to);
    return [[[from, heightAt(heights, from)] as const, ...inside, [to, heightAt(heights, to)] as const]];
  });
}

function heightAt(heights: readonly Point[], s: number): number {
  const after = heights.findIndex(([at]) => at >= s);
  const [b, a] = [heights[after], heights[after - 1]];
  if (b === undefined) return 0;
  if (a === undefined || b[0] === a[0]) return b[1];
  return a[1] + ((b[1] - a[1]) * (s - a[0])) / (b[0] - a[0]);
}

/** Roadbeds from underneath, and the room trains keep free in tunnels. */
function lineMarks({ section, deckTop, view }: CutGround): readonly Mark[] {
  const up = ([s, h]: Point): Point => [s, deckTop + h];
  return [
    ...section.bores.map((loop) => loopMark(view, loop.map(up), { pen: 'phantom', role: 'hidden' })),
    ...section.beds.map(
      ({ points }): Mark => ({
        kind: 'polyline',
        points: points.map((point) => onPaper(view, up(point))),
        pen: 'edge',
        role: 'feature',
      }),
    ),
  ];
}

/** The stretches of water a section crosses, with their heights from deck top. */
export function waterStretches({ section, land }: Pick<CutGround, 'section' | 'land'>) {
  return section.water.flatMap(({ id, from, to }) =>
    land.water
      .filter((water) => water.id === id)
      .map(({ surface, bottom, underside }) => ({ id, from, to, surface, bottom, underside })),
  );
}

/** Water shaded down to its floor, and the sheet under it. */
function waterMarks({ section, land, deckTop, view }: CutGround): readonly Mark[] {
  return waterStretches({ section, land }).flatMap(({ from, to, surface, bottom, underside }) => {
    const box = (low: number, high: number) => ({
      outline: boxOf([from, to], [deckTop + low, deckTop + high]),
      holes: [],
    });
    return [
      areaMark(view, box(bottom, surface), { pen: 'feature', fill: 'shade' }),
      areaMark(view, box(underside, bottom), { pen: 'cut-edge', fill: 'none' }),
    ];
  });
}

function boxOf([s0, s1]: Point, [z0, z1]: Point): readonly Point[] {
  return [
    [s0, z0],
    [s1, z0],
    [s1, z1],
    [s0, z1],
  ];
}

/** What is named besides the pieces of the frame: waters, and the lines of track that cross. */
export function nameSpots({ section, land, deckTop }: CutGround): readonly Seen[] {
  const spot = (label: string, outline: readonly Point[]): Seen => ({
    ...{ id: label, label, role: 'land', near: 0, far: 0 },
    areas: [{ outline, holes: [] }],
  });
  const waters = waterStretches({ section, land }).map(({ id, from, to, surface, bottom }) =>
    spot(id, boxOf([from, to], [deckTop + bottom, deckTop + surface])),
  );
  const lines = section.beds.map(({ line, points }) =>
    spot(
      line,
      points.map(([s, h]): Point => [s, deckTop + h]),
    ),
  );
  return [...waters, ...lines];
}

/** Stretches along a section whose ground is higher than a level. */
function spansOver(heights: readonly Point[], level: number): readonly (readonly [number, number])[] {
  const ends = heights.slice(1).flatMap(([s, h], i): readonly number[] => {
    const [ps, ph] = heights[i] ?? [s, h];
    return ph > level === h > level ? [] : [ps + ((level - ph) * (s - ps)) / (h - ph)];
  });
  // ground that is over the level from the very start begins there
  const starts = (heights[0]?.[1] ?? 0) > level ? [heights[0]?.[0] ?? 0, ...ends] : ends;
  const last = heights[heights.length - 1];
  const all = last !== undefined && last[1] > level ? [...starts, last[0]] : starts;
  return all.flatMap((from, i) => (i % 2 === 1 ? [] : [[from, all[i + 1] ?? from] as const]));
}
