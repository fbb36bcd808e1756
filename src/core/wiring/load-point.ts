import type { Point } from '../geometry/shapes.ts';
import { onLine } from './gaps.ts';
import type { LoadPlace, WiringInput } from './input.ts';

/** Where a load stands; null for a turnout or a place on a line that is not there. */
export function loadPoint({ rails }: Pick<WiringInput, 'rails'>, place: LoadPlace): Point | null {
  if (place.kind === 'place') return place.at;
  if (place.kind === 'turnout') return rails.turnouts.find(({ id }) => id === place.turnout)?.at ?? null;
  const line = rails.lines.find(({ id }) => id === place.line);
  if (line === undefined || place.at < 0 || place.at > line.length) return null;
  return line.place(onLine(rails, line.id, place.at)?.at ?? place.at);
}
