import { difference } from '../geometry/booleans.ts';
import type { Prism, Solid } from '../geometry/shapes.ts';
import { type Bite, bite } from './bite.ts';
import { blankLoop, type Shape } from './outline.ts';
import type { Blank } from './part.ts';
import { slantedCuts } from './slant.ts';

/** The body of a part in its own coordinates, mm; roundovers are left square, mitres and tapers are half-spaces. */
export function partSolid(part: Shape): Solid {
  const bites = part.features.map((feature) => bite(part.blank, feature)).filter((taken) => taken !== null);
  const levels = layers(part.blank, bites);
  const prisms = levels.slice(1).flatMap((to, i) => slice(part.blank, bites, { from: levels[i] ?? 0, to }));
  return { prisms, cuts: slantedCuts(part) };
}

/** Heights at which some feature begins or ends, from the back to the face. */
function layers(blank: Blank, bites: readonly Bite[]): readonly number[] {
  const all = [0, blank.thickness, ...bites.flatMap(({ from, to }) => [from, to])];
  return [...new Set(all)].sort((a, b) => a - b);
}

type Layer = { readonly from: number; readonly to: number };

function slice(blank: Blank, bites: readonly Bite[], { from, to }: Layer): readonly Prism[] {
  const here = bites.filter((taken) => taken.from <= from && taken.to >= to).flatMap((taken) => taken.loops);
  if (here.length === 0) return [{ polygon: { outline: blankLoop(blank), holes: [] }, from, to }];
  return difference([blankLoop(blank)], here).map((polygon) => ({ polygon, from, to }));
}
