import { difference } from '../../src/core/geometry/booleans.ts';
import { area, holds } from '../../src/core/geometry/polygon.ts';
import { standing } from '../../src/core/geometry/pose.ts';
import { regionArea } from '../../src/core/scenery/clip.ts';
import { contours } from '../../src/core/scenery/contour.ts';
import { type Field, heightField } from '../../src/core/scenery/field.ts';
import { allowedAt, formationIndex } from '../../src/core/scenery/formation.ts';
import type { SceneryModel } from '../../src/core/scenery/model.ts';
import type { offsets } from '../../src/core/scenery/offsets.ts';
import { partOutline } from '../../src/core/stock/outline.ts';
import type { Part } from '../../src/core/stock/part.ts';
import { type Penetrated, penetrated } from '../../src/core/stock/penetrate.ts';
import { around, deck, struts } from '../core/scenery/table.ts';
import type { RandomLand } from './random-land.ts';

/** A land, its model, its field, and the frame's parts once they are cut. */
export type Built = {
  readonly plan: RandomLand;
  readonly model: SceneryModel;
  readonly field: Field;
  readonly cut: Penetrated;
};

/** A law returns what breaks it, in words; nothing when it holds. */
export type Law = (built: Built) => readonly string[];

export function fieldOf({ land, lines }: RandomLand): Field {
  return heightField({ ...land, paths: [...lines, ...land.roads] });
}

export function cutBy(model: SceneryModel): Penetrated {
  return penetrated([struts, deck], model.requests, { table: standing([0, 0], 0) });
}

/** Spots are honoured exactly where no line holds the ground. */
export const spotsHonoured: Law = ({ plan: { land, lines }, field }) => {
  const index = formationIndex(lines, 1000);
  return land.spots.flatMap(({ x, y, height }) => {
    const { low, high } = allowedAt(index, x, y);
    const is = field(x, y);
    return Math.abs(is - Math.min(Math.max(height, low), high)) <= 1e-9 ? [] : [`${is} at ${x}, ${y} for ${height}`];
  });
};

/** On a line's middle the ground is the line's height; where another line is near it may be dug away, never buried. */
export const linesLevelled: Law = ({ plan: { lines }, field }) =>
  lines.flatMap(({ points }) =>
    points.flatMap(({ x, y, z }) => {
      const is = field(x, y);
      const right = lines.length === 1 ? Math.abs(is - z) <= 1e-9 : is <= z + 1e-9;
      return right ? [] : [`${is} on a line at ${z}`];
    }),
  );

/** Every template holds the one it is carved to, and the next template lies on it. */
export const templatesStack: Law = ({ model }) =>
  model.layers.flatMap(({ id, template, carveTo }, i) => {
    const outlines = template.map(({ outline }) => outline);
    const out = carveTo.flatMap(({ outline }) => difference([outline], outlines));
    const over = out.reduce((sum, piece) => sum + area(piece), 0);
    const above = model.layers[i + 1]?.template ?? [];
    const loose = above
      .flatMap(({ outline }) => difference([outline], outlines))
      .reduce((sum, piece) => sum + area(piece), 0);
    // both outlines may lie 0.1 mm off by hand
    const slack = 0.2 * carveTo.reduce((sum, { outline }) => sum + round(outline), 0) + 1;
    return [
      ...(over > slack ? [`${id}: carved to ${over} mm2 outside its template`] : []),
      ...(loose > slack ? [`${id}: ${loose} mm2 of the next layer hang over`] : []),
    ];
  });

function round(loop: readonly (readonly [number, number])[]): number {
  return loop.reduce((sum, [x, y], i) => {
    const [px, py] = loop[(i + loop.length - 1) % loop.length] ?? [x, y];
    return sum + Math.hypot(x - px, y - py);
  }, 0);
}

/** The pieces of a layer are the layer: their true shapes add up to the template. */
export const piecesAddUp: Law = ({ model }) =>
  model.layers.flatMap(({ id, pieces, template }) => {
    const parts = model.parts.filter((part) => pieces.some((piece) => piece.part === part.id));
    const cut = parts.reduce((sum, part) => sum + area(partOutline(part)), 0);
    const whole = regionArea(template);
    return Math.abs(cut - whole) <= 2 + whole * 1e-3 ? [] : [`${id}: pieces of ${cut} for ${whole} mm2`];
  });

/** A template set out by its offsets is the template: foam between each pair of crossings, none between the pairs. */
export const offsetsAreTheOutline =
  (stations: typeof offsets): Law =>
  ({ model }) =>
    model.parts
      .filter(({ role }) => role === 'layer')
      .flatMap((part) => {
        const shape = partOutline(part);
        return stations(shape, 50).flatMap(({ at, crossings }) => {
          const x = Math.min(part.blank.length - 0.01, Math.max(0.01, at));
          const wrong = crossings.slice(1).some((to, i) => {
            const from = crossings[i] ?? to;
            return to - from > 0.01 && holds(shape, [x, (from + to) / 2]) !== (i % 2 === 0);
          });
          return crossings.length % 2 === 1 || wrong ? [`${part.id} at ${at}: ${crossings.join(', ')}`] : [];
        });
      });

/** What is cut is what is carved off and what is left, and none of them is less than nothing. */
export const volumesAddUp: Law = ({ model: { volumes, layers } }) => {
  const { cut, carved, left } = volumes;
  const own = layers.reduce((sum, layer) => sum + layer.area * (layer.to - layer.from), 0);
  return [
    ...(Math.abs(cut - carved - left) <= 1e-6 * cut + 1e-6 ? [] : [`${cut} is not ${carved} and ${left}`]),
    ...(Math.abs(cut - own) <= 1e-6 * cut ? [] : [`${cut} cut of layers of ${own}`]),
    ...(carved >= -1e-6 && left >= 0 ? [] : [`carved ${carved}, left ${left}`]),
  ];
};

/** Foam and water share no ground: no template runs into a water. */
export const waterStaysClear: Law = ({ plan: { land }, model }) =>
  model.layers.flatMap(({ id, template }) =>
    land.water.flatMap(({ outline }) => {
      const dry = template.reduce((sum, piece) => sum + area(piece), 0);
      const left = template
        .flatMap((piece) => difference([piece.outline], [outline, ...piece.holes]))
        .reduce((sum, piece) => sum + area(piece), 0);
      return dry - left > 0.2 * round(outline) + 1 ? [`${id} has ${dry - left} mm2 in the water`] : [];
    }),
  );

/** Cut requests never move a part: every instance keeps its place and blank, none is lost or doubled. */
export const nothingMoved: Law = ({ cut }) => {
  const before = places([struts, deck]);
  const after = places(cut.parts);
  const moved = [...before].flatMap(([id, was]) => (after.get(id) === was ? [] : [`${id} was moved or changed`]));
  return before.size === after.size ? moved : [...moved, `${before.size} instances became ${after.size}`];
};

function places(parts: readonly Part[]): ReadonlyMap<string, string> {
  return new Map(
    parts.flatMap((part) => part.places.map(({ id, pose }) => [id, JSON.stringify([pose, part.blank])] as const)),
  );
}

/** Everything asked for is cut, and nothing else. */
export const askedIsCut: Law = ({ model, cut }) => {
  const added = (id: string) => {
    const part = cut.parts.find(({ places: all }) => all.some((place) => place.id === id));
    const original = [struts, deck].find(({ places: all }) => all.some((place) => place.id === id));
    return (part?.features.length ?? 0) - (original?.features.length ?? 0);
  };
  const missed = cut.findings.filter(({ rule }) => rule === 'request-misses').length;
  const ids = [struts, deck].flatMap((part) => part.places.map(({ id }) => id));
  const made = ids.reduce((sum, id) => sum + added(id), 0);
  return made + missed === model.requests.length ? [] : [`${made} cuts for ${model.requests.length} requests`];
};

/** Moved as its finding says, a water cuts nothing but the deck. */
export type Again = (plan: RandomLand) => SceneryModel;

export function remedyWorks(built: Built, again: Again): readonly string[] {
  return built.model.water.flatMap((water, i) => {
    const move = water.clear?.move ?? null;
    const asked = built.plan.land.water[i];
    if (move === null || asked === undefined) return [];
    const outline = asked.outline.map(([x, y]) => [x + move[0], y + move[1]] as const);
    const after = again({ ...built.plan, land: { ...built.plan.land, water: [{ ...asked, outline }] } });
    const still = after.requests.filter(({ kind }) => kind === 'notch');
    return still.length === 0
      ? []
      : [`moved by ${move.join(', ')} it still cuts ${still.map(({ part }) => part).join(', ')}`];
  });
}

/** How far a line may lie off its height on average: what a cell of 2.5 mm and a simplified line cost; mm. */
const OFF = 1.5;

/** Lines of one height lie at that height on the field itself. */
export const contoursLieRight: Law = ({ model, field }) =>
  model.contours.flatMap(({ level, lines }) => {
    const offs = lines.flatMap(({ points }) => points.map(([x, y]) => Math.abs(field(x, y) - level)));
    const mean = offs.reduce((sum, off) => sum + off, 0) / Math.max(1, offs.length);
    return mean <= OFF ? [] : [`the lines of ${level} lie ${mean} off it`];
  });

/** A plane has straight lines, whatever its slant. */
export function planeIsStraight(slope: readonly [number, number]): readonly string[] {
  const [a, b] = slope;
  const grid = { x0: 0, y0: 0, dx: 3, dy: 5, nx: 40, ny: 30, values: new Float64Array(1200) };
  for (let j = 0; j < 30; j += 1) for (let i = 0; i < 40; i += 1) grid.values[j * 40 + i] = a * i * 3 + b * j * 5;
  return contours(grid, 0.31 * (a * 117 + b * 145)).flatMap(({ points }) =>
    points.flatMap(([x, y]) =>
      Math.abs(a * x + b * y - 0.31 * (a * 117 + b * 145)) > 1e-9 ? [`${x}, ${y} is off its plane's line`] : [],
    ),
  );
}

export { around };
