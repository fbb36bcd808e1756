import type { Finding } from '../finding.ts';
import { say } from '../units/say.ts';
import type { Tilt } from './assembly.ts';
import type { Knot } from './knot.ts';

const METHOD = 'Wilson and Latombe, Artificial Intelligence 71, 1994: blocking graphs along each direction';

/** A halt for every set of parts that nothing takes apart, with what would free it. */
export function knotFinding({ bodies, freedBy }: Knot): Finding {
  const pairs = freedBy.slice(0, 3).map(([a, b]) => `${a} to ${b}`);
  const all = bodies.join(', ');
  return {
    rule: 'no-straight-path',
    level: 'halt',
    where: bodies[0] ?? 'bench',
    chapter: 'benchwork',
    what: say`no straight path found; a tilt is not tried: ${all} hold each other, whichever comes first`,
    figure: bodies.length,
    limit: null,
    unit: 'count',
    mend:
      pairs.length > 0
        ? say`leave one joint open at the end and the rest goes together: ${pairs.join(', or ')}`
        : say`no single joint frees them: make one of the parts in two, or say how it is tilted in`,
    source: METHOD,
    accepted: null,
  };
}

/** A care for every part that the builder says goes in by tilting. */
export function tiltFinding({ part, because }: Tilt): Finding {
  return {
    rule: 'path-not-proved',
    level: 'care',
    where: part,
    chapter: 'benchwork',
    what: say`${part} has no straight way in and is said to be tilted in: ${because}`,
    figure: null,
    limit: null,
    unit: 'count',
    mend: say`try it dry with the real pieces before any glue is spread`,
    source: METHOD,
    accepted: null,
  };
}

/** A note for a tilt that nothing calls for, since a straight way was found. */
export function needlessTilt({ part }: Tilt): Finding {
  return {
    rule: 'tilt-not-needed',
    level: 'note',
    where: part,
    chapter: 'benchwork',
    what: say`${part} is said to be tilted in, but it has a straight way in; the pages show that one`,
    figure: null,
    limit: null,
    unit: 'count',
    mend: say`take it out of tilts`,
    source: METHOD,
    accepted: null,
  };
}
