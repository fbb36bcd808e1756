import type { Finding } from '../finding.ts';
import { type Convex, convexPieces } from '../geometry/convex.ts';
import { depth, TOUCH } from '../geometry/overlap.ts';
import { rectangle } from '../geometry/polygon.ts';
import { standing } from '../geometry/pose.ts';
import type { Box, Pose } from '../geometry/shapes.ts';
import type { Envelope } from '../stock/part.ts';
import { atLeast, atMost, length, say } from '../units/say.ts';
import type { Bench } from './bench.ts';
import { tidy } from './machining.ts';
import { told } from './told.ts';

/** A bench with the spaces its drawers, legs and wheels need, in its own coordinates. */
export type Neighbour = { readonly bench: Bench; readonly envelopes: readonly Envelope[] };

type Space = { readonly of: string; readonly body: Convex };

/** Where drawers of one bench come into another that stands beside it, and wheels into its wheels, with what is free. */
export function neighbourFindings(benches: readonly Neighbour[]): readonly Finding[] {
  return benches.flatMap((one, i) => {
    const others = benches.filter(({ bench }) => bench.id !== one.bench.id);
    return [
      ...of(one, 'drawer').flatMap((drawer) => opening(one, drawer, others)),
      ...of(one, 'caster').flatMap((wheel) => swinging(one, wheel, benches.slice(i + 1))),
    ];
  });
}

function of({ envelopes }: Neighbour, wanted: Envelope['kind']): readonly Envelope[] {
  return envelopes.filter(({ kind }) => kind === wanted);
}

function poseOf({ place }: Bench): Pose {
  return standing([place.x, place.y], place.turn);
}

function bodyOf({ min, max }: Box, pose: Pose): readonly Convex[] {
  const polygon = { outline: rectangle([min[0], min[1]], [max[0], max[1]]), holes: [] };
  return convexPieces({ prisms: [{ polygon, from: min[2], to: max[2] }], cuts: [] }, pose);
}

/** What of a bench is always in the way: its frame up to the deck, and its legs. */
function solidsOf({ bench, envelopes }: Neighbour): readonly Space[] {
  const frame: Box = { min: [0, 0, bench.sideUnderside], max: [bench.length, bench.width, bench.deckTop] };
  const legs = envelopes.filter(({ kind }) => kind === 'leg');
  return [
    ...bodyOf(frame, poseOf(bench)).map((body) => ({ of: bench.id, body })),
    ...legs.flatMap((leg) => bodyOf(leg, poseOf(bench)).map((body) => ({ of: leg.of, body }))),
  ];
}

function meets(box: Box, pose: Pose, others: readonly Space[]): Space | undefined {
  const own = bodyOf(box, pose);
  return others.find(({ body }) => own.some((one) => depth(one, body) > TOUCH));
}

/** A drawer is a care when a neighbour stands where it opens: how far it comes. */
function opening({ bench }: Neighbour, drawer: Envelope, others: readonly Neighbour[]): readonly Finding[] {
  const pose = poseOf(bench);
  const solids = others.flatMap(solidsOf);
  if (meets(drawer, pose, solids) === undefined) return [];
  const out = overhang(bench, drawer);
  const free = tidy(mostFree(out, (by) => meets(pulled(bench, drawer, by), pose, solids) === undefined));
  const first = meets(pulled(bench, drawer, free + STEP), pose, solids);
  const what = say`${drawer.of} reaches ${length(out)} out when it is open, and ${first?.of ?? 'a bench'} stands there after ${length(free)}`;
  const mend = say`move the bench ${atLeast(tidy(out - free))} away, or live with a drawer that opens less`;
  return [told('care', { rule: 'drawer-meets-bench', where: drawer.of, what, figure: out, limit: free, mend })];
}

/** How far a space reaches out of its bench, mm. */
function overhang({ length: long, width }: Bench, { min, max }: Box): number {
  return tidy(Math.max(-min[0], -min[1], max[0] - long, max[1] - width));
}

/** The part of a drawer's space that lies within its bench and this far out of it. */
function pulled({ length: long, width }: Bench, { min, max }: Box, by: number): Box {
  return {
    min: [Math.max(min[0], -by), Math.max(min[1], -by), min[2]],
    max: [Math.min(max[0], long + by), Math.min(max[1], width + by), max[2]],
  };
}

/** Free ways are told to this, mm. */
const STEP = 0.1;

/** The most up to `all` that is free; what is free for more is free for less. */
function mostFree(all: number, isFree: (by: number) => boolean): number {
  let [low, high] = [0, all];
  while (high - low > STEP / 100) {
    const middle = (low + high) / 2;
    if (isFree(middle)) low = middle;
    else high = middle;
  }
  return Math.round(low / STEP) * STEP;
}

/** Two wheels of benches side by side that can turn into each other are a care, with the circle that is free. */
function swinging({ bench }: Neighbour, wheel: Envelope, others: readonly Neighbour[]): readonly Finding[] {
  return others.flatMap((other) =>
    of(other, 'caster').flatMap((second) => {
      const isFree = (radius: number) => {
        const body = bodyOf(circle(second, radius), poseOf(other.bench)).map((one) => ({ of: second.of, body: one }));
        return meets(circle(wheel, radius), poseOf(bench), body) === undefined;
      };
      const radius = Math.max(radiusOf(wheel), radiusOf(second));
      if (isFree(radius)) return [];
      const free = tidy(mostFree(radius, isFree));
      const what = say`the wheels under ${wheel.of} and ${second.of} turn into each other`;
      const mend = say`use casters that swing within ${atMost(free)}, move the benches ${atLeast(tidy(2 * (radius - free)))} apart, or turn the wheels inward before they meet`;
      return [told('care', { rule: 'caster-meets-caster', where: wheel.of, what, figure: radius, limit: free, mend })];
    }),
  );
}

function radiusOf({ min, max }: Box): number {
  return tidy((max[0] - min[0]) / 2);
}

/** A wheel's space with a circle no wider than this. */
function circle(wheel: Box, most: number): Box {
  const less = Math.max(0, radiusOf(wheel) - most);
  const { min, max } = wheel;
  return { min: [min[0] + less, min[1] + less, min[2]], max: [max[0] - less, max[1] - less, max[2]] };
}
