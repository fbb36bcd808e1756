import { loopArea } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import type { Fault } from '../units/problem.ts';
import { bothUnits } from '../units/reading.ts';

/** Two sides of an outline, by the number of the corner each starts at, and where they cross. */
export type Crossing = { readonly first: number; readonly second: number; readonly where: Point };

/** The first place where an outline crosses itself; null when it never does. Sides that share a corner may meet there. */
export function selfCrossing(outline: readonly Point[]): Crossing | null {
  const sides = outline.map((from, i) => [from, outline[(i + 1) % outline.length] ?? from] as const);
  for (let first = 0; first < sides.length; first += 1) {
    for (let second = first + 2; second < sides.length; second += 1) {
      if (first === 0 && second === sides.length - 1) continue;
      const [a, b] = [sides[first], sides[second]];
      const where = a === undefined || b === undefined ? null : meeting(a, b);
      if (where !== null) return { first, second, where };
    }
  }
  return null;
}

type Side = readonly [Point, Point];

/** Where two sides meet, by Cramer's rule; null when they don't or run alongside. */
function meeting([a, b]: Side, [c, d]: Side): Point | null {
  const [rx, ry, sx, sy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const cross = rx * sy - ry * sx;
  if (cross === 0) return null;
  const t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / cross;
  const u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / cross;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? [a[0] + t * rx, a[1] + t * ry] : null;
}

/** What is wrong with an outline: it crosses itself, or holds nothing. */
export function outlineFaults(outline: readonly Point[], at: string): readonly Fault[] {
  const crossing = selfCrossing(outline);
  if (crossing !== null) {
    const [x, y] = crossing.where;
    const said = `${bothUnits(tenth(x))}, ${bothUnits(tenth(y))}`;
    return [
      {
        rule: 'outline-crosses',
        at: `${at}.${crossing.second}`,
        what: `the outline crosses itself at ${said}: its side from corner ${crossing.first + 1} and its side from corner ${crossing.second + 1}`,
        mend: `write its corners in order round the edge; try corner ${crossing.second + 1} before corner ${crossing.first + 2}`,
      },
    ];
  }
  if (Math.abs(loopArea(outline)) > 1e-6) return [];
  return [
    {
      rule: 'outline-empty',
      at,
      what: 'the outline holds no area',
      mend: 'move one corner off the line of the others',
    },
  ];
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}
