import type { Finding } from '../../finding.ts';
import type { Point } from '../../geometry/shapes.ts';
import { length, say } from '../../units/say.ts';
import type { LiftInput, WiringInput } from '../input.ts';
import { nearestOnBenches } from '../on-bench.ts';
import { PRACTICE, tell } from '../tell.ts';

/** Steps in which it is looked what lies under a line, mm. */
const LOOK = 10;

/** Bridges that lift though no water and no gap between benches is below: their cuts, switch and lead serve nothing. */
export function liftFindings(input: WiringInput): readonly Finding[] {
  return input.lifts.flatMap((lift) => {
    const line = input.rails.lines.find(({ id }) => id === lift.line);
    const open = (at: number) => line !== undefined && isOpen(input, line.place(at));
    if (line === undefined || steps(lift.from, lift.to).some(open)) return [];
    const middle = (lift.from + lift.to) / 2;
    const way = (at: number) => Math.abs(at - middle);
    const near = steps(0, line.length)
      .filter(open)
      .toSorted((a, b) => way(a) - way(b))[0];
    return [overNothing(lift, near ?? null)];
  });
}

function overNothing({ from, id, line, to }: LiftInput, near: number | null): Finding {
  return tell({
    rule: 'lift-over-nothing',
    level: 'care',
    where: id,
    what: say`${id} lifts from ${length(from)} to ${length(to)} of ${line}, where only the deck is below: nothing goes through there.`,
    mend:
      near === null
        ? say`Leave out its 'lifts', and its cuts, switch and lead go.`
        : say`Move it to ${length(near)} of ${line}, the nearest place with a way through, or leave out its 'lifts'.`,
    ...{ figure: near, unit: 'mm', source: PRACTICE },
  });
}

function steps(from: number, to: number): readonly number[] {
  return Array.from({ length: Math.floor((to - from) / LOOK) + 1 }, (_, i) => from + i * LOOK);
}

/** Whether a point lies over water or off all benches. */
function isOpen({ ground }: WiringInput, point: Point): boolean {
  const [x, y] = point;
  const wet = ground.spaces.some(
    ({ box: { max, min }, kind }) => kind === 'water' && x > min[0] && x < max[0] && y > min[1] && y < max[1],
  );
  return wet || (nearestOnBenches(ground.benches, point)?.off ?? 0) > 1e-6;
}
