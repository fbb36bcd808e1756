import type { Finding } from '../finding.ts';
import { intersection } from '../geometry/booleans.ts';
import { grown } from '../geometry/offset.ts';
import { area, bounds } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import { atLeast, atMost, length, say } from '../units/say.ts';
import { alongPath, insideLoop, nearestOnPath } from './distance.ts';
import type { Field } from './field.ts';
import { found } from './found.ts';
import type { Form, Land, Water } from './land.ts';
import { formAt } from './relief.ts';
import { PLAY } from './under-water.ts';

/** Ground this much over a water inside its outline is a slip of plaster; common practice, no source. mm. */
const SLIP = 2;

/** A place of the ground and how high it is over the deck; mm. */
type Place = { readonly at: Point; readonly high: number };

/** Waters that run out over their lowest bank, that lie in a hill, or that run into one another. */
export function bankFindings({ water, forms }: Pick<Land, 'water' | 'forms'>, field: Field): readonly Finding[] {
  return [
    ...water.flatMap((one) => [...runsOut(one, field), ...inGround(one, forms, field)]),
    ...water.flatMap((one, i) => water.slice(i + 1).flatMap((other) => meeting(one, other))),
  ];
}

/** Ground never lies under the deck's top. */
function placeOf(field: Field, at: Point): Place {
  return { at, high: Math.max(0, field(...at)) };
}

/** Places along an outline, at most this far apart, mm. */
const STEP = 5;

function along(outline: readonly Point[]): readonly Point[] {
  return outline.flatMap(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] ?? [ax, ay];
    const count = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / STEP));
    return Array.from({ length: count }, (_, k): Point => [ax + ((bx - ax) * k) / count, ay + ((by - ay) * k) / count]);
  });
}

function runsOut({ id, outline, surface }: Water, field: Field): readonly Finding[] {
  const places = along(outline).map((at) => placeOf(field, at));
  const lowest = places.reduce((low, one) => (one.high < low.high ? one : low), places[0] ?? { at: [0, 0], high: 0 });
  if (surface <= lowest.high + 1e-6) return [];
  const [x, y] = lowest.at;
  return [
    found({
      ...{ rule: 'water-runs-out', level: 'halt', where: id, figure: surface, limit: lowest.high },
      what: say`The surface of ${id} stands ${length(surface)} over the deck, and its bank at ${length(x)}, ${length(y)} is ${length(lowest.high)} high: the water runs out there.`,
      mend: say`Set its surface to ${atMost(lowest.high)} or lower, or raise the ground round it to ${atLeast(surface)}.`,
      source: 'geometry',
    }),
  ];
}

/** Most places looked at along one side of a water. */
const MOST = 60;

/** Places inside an outline and on it. */
function within(outline: readonly Point[]): readonly Point[] {
  const { low, high } = bounds(outline);
  const count = (axis: 0 | 1) => Math.min(MOST, Math.max(2, Math.ceil((high[axis] - low[axis]) / STEP)));
  const stops = (axis: 0 | 1) =>
    Array.from({ length: count(axis) + 1 }, (_, i) => low[axis] + ((high[axis] - low[axis]) * i) / count(axis));
  const ys = stops(1);
  return stops(0).flatMap((x) => ys.map((y): Point => [x, y]).filter((p) => insideLoop(outline, p)));
}

/** The ground's highest place inside a water, and whose it is; the bank of a line or road, which a quay wall holds, is a note. */
function inGround({ id, outline, surface }: Water, forms: readonly Form[], field: Field): readonly Finding[] {
  const places = [...within(outline), ...along(outline)].map((at) => placeOf(field, at));
  const top = places.reduce((most, one) => (one.high > most.high ? one : most), { at: [0, 0], high: 0 } as Place);
  if (top.high <= Math.max(0, surface) + SLIP) return [];
  const [x, y] = top.at;
  const form = highestForm(forms, top.at);
  const away = form === null ? null : Math.ceil(reachOf(form) - gapTo(form, outline));
  return [
    found({
      ...{
        rule: 'water-in-ground',
        level: form === null ? 'note' : 'care',
        where: id,
        figure: top.high,
        limit: Math.max(0, surface),
      },
      what: say`Inside ${id} the ground${form === null ? '' : ` of ${form.id}`} would stand ${length(top.high)} over the deck, at ${length(x)}, ${length(y)}; it is cut off at the water's edge, upright.`,
      mend:
        form === null || away === null || away <= 0
          ? say`Hold it with a quay wall ${length(top.high)} high there, or move ${id} to where the ground is lower.`
          : say`Move ${id} ${atLeast(away)} away from ${form.id}, or raise its surface or lower the ground until they meet.`,
      source: 'geometry',
    }),
  ];
}

function highestForm(forms: readonly Form[], [x, y]: Point): Form | null {
  return forms.reduce<Form | null>((best, form) => {
    const high = formAt(form, x, y);
    return high > (best === null ? 0 : formAt(best, x, y)) ? form : best;
  }, null);
}

/** How far a form's ground reaches from what it is drawn by: a top, a path or an outline. mm. */
function reachOf(form: Form): number {
  if (form.kind === 'hill') return form.footRadius;
  return form.kind === 'ridge' ? form.half : form.height / form.slope;
}

/** From what a form is drawn by to a water, less than nothing where it lies inside; mm. */
function gapTo(form: Form, outline: readonly Point[]): number {
  const base = form.kind === 'hill' ? [form.top] : along(form.kind === 'ridge' ? form.along : form.outline);
  const loop = alongPath(outline);
  const gaps = base.map((p) => nearestOnPath(loop, p).distance * (insideLoop(outline, p) ? -1 : 1));
  return Math.min(...gaps);
}

/** Two waters that share ground, or whose walls do. */
function meeting(a: Water, b: Water): readonly Finding[] {
  const walled = ({ outline, floor }: Water) => grown([outline], floor + PLAY)[0]?.outline ?? outline;
  const shared = intersection([walled(a)], [walled(b)]);
  if (shared.reduce((sum, piece) => sum + area(piece), 0) <= 1) return [];
  const { low, high } = bounds(shared.flatMap(({ outline }) => outline));
  const by = Math.min(high[0] - low[0], high[1] - low[1]);
  const [x, y] = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
  return [
    found({
      ...{ rule: 'waters-meet', level: 'halt', where: a.id, figure: by, limit: 0 },
      what: say`${a.id} and ${b.id}, with the walls of their trays, overlap by ${length(by)} about ${length(x)}, ${length(y)}.`,
      mend: say`Move one of them ${length(Math.ceil(by))} away, or draw them as one outline.`,
      source: 'geometry',
    }),
  ];
}
