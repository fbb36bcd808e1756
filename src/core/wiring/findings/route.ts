import type { Finding } from '../../finding.ts';
import { CUT_LIMITS_SOURCE, HOLE_FROM_EDGE } from '../../stock/cut-limits.ts';
import { atLeast, length, say } from '../../units/say.ts';
import { belowAt } from '../comes-down.ts';
import type { WiringInput } from '../input.ts';
import type { LaidBus } from '../laid-bus.ts';
import { TAIL_LIMIT } from '../protection.ts';
import { type Limb, pathLength } from '../routing/limbs.ts';
import { nearestOnLimbs } from '../routing/written.ts';
import { listed, PRACTICE, tell } from '../tell.ts';
import { outward } from '../under.ts';
import { spaceLength } from '../wire.ts';

/** A hole this near to the middle counts as in it, mm. */
const OFF_MIDDLE = 1;

/** Where the bus runs, what it meets and what it misses. */
export function routeFindings(input: WiringInput, laid: LaidBus): readonly Finding[] {
  return [
    ...clashFindings(laid),
    ...looseFindings(laid),
    ...overBoardFindings(laid),
    ...missedFindings(laid),
    ...feederFindings(laid),
    ...tailFindings(laid),
    ...ringFindings(input, laid),
    ...drillFindings(laid),
    ...offMiddleFindings(laid),
    ...moreFindings(laid),
  ];
}

function clashFindings({ clashes, run }: LaidBus): readonly Finding[] {
  return clashes.map(({ with: id }) =>
    tell({
      rule: 'bus-clash',
      level: 'halt',
      where: id,
      what: say`The bus, ${length(run.z)} above the floor, runs into ${id}.`,
      mend:
        run.found === 'written'
          ? say`Lead its route round ${id}, through a strut only square to it and clear of its joints, or write 'route: auto'.`
          : say`Move ${id}, or write a route round it.`,
      ...{ figure: run.z, unit: 'mm', source: 'geometry' },
    }),
  );
}

/** Branches as written that hang in the air. */
function looseFindings({ route, wired }: LaidBus): readonly Finding[] {
  return route.loose.map(({ at, branch, near, off }) => {
    const [[x, y], [nx, ny]] = [outward(wired.under, at, 0), outward(wired.under, near, 0)];
    return tell({
      rule: 'branch-off-bus',
      level: 'halt',
      where: 'bus',
      what: say`Branch ${String(branch + 1)} of the bus begins at [${length(x)}, ${length(y)}], ${length(off)} beside it, and is left out.`,
      mend: say`Begin it on the bus, at [${length(nx)}, ${length(ny)}].`,
      ...{ figure: off, limit: 0, unit: 'mm', source: 'geometry' },
    });
  });
}

/** Loads whose wires would come down into a board, or into what hangs there. */
function overBoardFindings({ wired }: LaidBus): readonly Finding[] {
  return wired.loads.flatMap(({ at, down, id, turnout }) => {
    const below = turnout ? null : belowAt(wired.under, at);
    if (below === null) return [];
    const off = Math.hypot(down[0] - at[0], down[1] - at[1]);
    const [x, y] = down;
    return [
      tell({
        rule: 'load-over-board',
        level: 'care',
        where: id,
        what: say`${id} stands over ${below}: no hole goes straight down there for its wires.`,
        mend:
          off === 0
            ? say`Move ${id} off ${below}: no place near it is clear.`
            : say`Lead its wires over the deck to [${length(x)}, ${length(y)}], ${length(off)} beside it, as they are drawn; or move ${id} there.`,
        ...{ figure: off, limit: 0, unit: 'mm', source: 'geometry' },
      }),
    ];
  });
}

function missedFindings({ route, wired }: LaidBus): readonly Finding[] {
  return route.unreached.map((drop) => {
    const feeder = wired.feeders.find(({ id }) => id === drop);
    const place =
      feeder === undefined ? say`${drop.replace('load.', '')}` : say`${feeder.line} at ${length(feeder.at)}`;
    return tell({
      rule: 'feeder-unreached',
      level: 'halt',
      where: feeder?.line ?? drop.replace('load.', ''),
      what: [...place, ' lies over a bay that the bus does not get to.'],
      mend: say`Leave a way of ${atLeast(2 * wired.under.site.radius)} and a little into that bay, or write a route that passes it.`,
      ...{ figure: null, source: 'geometry' },
    });
  });
}

/** Feeders that have no clear way down through the deck. */
function feederFindings({ wired }: LaidBus): readonly Finding[] {
  return wired.feeders
    .filter(({ clear }) => !clear)
    .map(({ id, line, at }) =>
      tell({
        rule: 'feeder-blocked',
        level: 'care',
        where: line,
        what: say`The wires of ${id} find no clear way down from ${line} near ${length(at)}: a strut, a motor or water is below.`,
        mend: say`Solder them at the next clear place along ${line}, or lead them over the deck to its edge.`,
        ...{ figure: at, unit: 'mm', source: 'geometry' },
      }),
    );
}

/** Long tails carry their share of a short for as long as the bus does, but are thinner. */
function tailFindings({ tails, wired }: LaidBus): readonly Finding[] {
  return wired.feeders.flatMap(({ id, line, at, lead }) => {
    const tail = tails.find(({ tap }) => tap.drop === id);
    if (tail === undefined || lead || tail.length < TAIL_LIMIT) return [];
    return [
      tell({
        rule: 'tail-long',
        level: 'care',
        where: line,
        what: say`The wires from the bus to ${line} at ${length(at)} are ${length(tail.length)} long.`,
        mend: say`Bring the bus ${atLeast(tail.length - TAIL_LIMIT)} nearer, or move what keeps it off.`,
        ...{ figure: tail.length, limit: TAIL_LIMIT, unit: 'mm' },
      }),
    ];
  });
}

/** A digital bus that comes back to its start carries echoes of its own signal. */
function ringFindings({ supply }: WiringInput, { route, run }: LaidBus): readonly Finding[] {
  const [first, last] = [run.path[0], run.path[run.path.length - 1]];
  const closed =
    run.path.length > 2 &&
    first !== undefined &&
    last !== undefined &&
    Math.hypot(last[0] - first[0], last[1] - first[1]) < 1;
  if (supply.control !== 'digital') return [];
  if (!closed) return rejoined(route.limbs);
  const lastStretch = run.path.slice(-2);
  return [
    tell({
      rule: 'bus-ring',
      level: 'care',
      where: 'bus',
      what: say`The bus comes back to where it starts: a digital bus is not closed into a ring.`,
      mend: say`Leave off its last ${length(spaceLength(lastStretch))}.`,
      ...{ figure: spaceLength(run.path), unit: 'mm' },
    }),
  ];
}

/** A branch that comes back to the bus closes it as well. */
function rejoined(limbs: readonly Limb[]): readonly Finding[] {
  return limbs.flatMap(({ path }, i) => {
    const end = path[path.length - 1];
    const near =
      i === 0 || end === undefined
        ? null
        : nearestOnLimbs(
            limbs.filter((_, k) => k !== i),
            end,
          );
    if (near === null || near.off >= 1) return [];
    const last = pathLength(path.slice(-2));
    return [
      tell({
        rule: 'bus-ring',
        level: 'care',
        where: 'bus',
        what: say`A branch of the bus ends on the bus again: a digital bus is not closed into a ring.`,
        mend: say`Leave off its last ${length(last)}.`,
        ...{ figure: pathLength(path), unit: 'mm' },
      }),
    ];
  });
}

function drillFindings({ holes }: LaidBus): readonly Finding[] {
  const late = holes.filter(({ access }) => access !== 'in place');
  if (late.length === 0) return [];
  const least = late.reduce((low, { room }) => Math.min(low, room), Number.POSITIVE_INFINITY);
  return [
    tell({
      rule: 'hole-before-assembly',
      level: 'note',
      where: 'bus',
      what: say`Between the struts no drill gets to ${listed(late.map(({ part }) => part))}: ${length(least)} are clear along the hole.`,
      mend: say`Drill these holes with the parts still flat, as their drawings show.`,
      ...{ figure: least, limit: 250, unit: 'mm' },
    }),
  ];
}

/** Off the middle of its height a board on edge is weakened more by a hole of the same size. */
function offMiddleFindings({ holes, run }: LaidBus): readonly Finding[] {
  const off = holes.filter((hole) => Math.abs(hole.off) > OFF_MIDDLE);
  const worst = off.toSorted((a, b) => a.wood - b.wood)[0];
  if (worst === undefined) return [];
  const thin = worst.wood < worst.diameter;
  return [
    tell({
      rule: 'hole-off-middle',
      level: thin ? 'care' : 'note',
      where: worst.part,
      what: say`The bus runs ${length(run.z)} above the floor, off the middle of ${listed([...new Set(off.map(({ part }) => part))])}: in ${worst.part} ${length(Math.abs(worst.off))} ${worst.off > 0 ? 'above' : 'below'} it, ${length(worst.wood)} of wood left.`,
      mend: thin
        ? say`Leave at least ${atLeast(worst.diameter)} of wood: move what keeps the bus off the middle, or take a thinner bus.`
        : say`Keep to holes of ${length(worst.diameter)}, under the ${length(worst.limit)} that a board so high may lose, and off its ends and joints; house joists keep ${length(HOLE_FROM_EDGE)} of wood.`,
      ...{
        figure: worst.wood,
        limit: thin ? worst.diameter : HOLE_FROM_EDGE,
        unit: 'mm',
        source: thin ? `${PRACTICE}: as much wood as the hole is wide` : CUT_LIMITS_SOURCE,
      },
    }),
  ];
}

function moreFindings({ route, run }: LaidBus): readonly Finding[] {
  if (route.proved) return [];
  return [
    tell({
      rule: 'bus-not-proved',
      level: 'note',
      where: 'bus',
      what: say`The bus passes many places; its order was mended, not proved the shortest.`,
      mend: say`Write a route if you see a shorter one than ${length(spaceLength(run.path))}.`,
      ...{ figure: spaceLength(run.path), unit: 'mm', source: 'search' },
    }),
  ];
}
