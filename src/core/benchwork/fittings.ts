import type { Finding } from '../finding.ts';
import type { Envelope } from '../stock/part.ts';
import { atLeast, atMost, length, say } from '../units/say.ts';
import { fitDrawers } from './drawers/fit.ts';
import { type Fitting, type Site, saying, together } from './fitting.ts';
import type { Grid } from './grid.ts';
import type { BenchInput, BenchworkInput } from './input.ts';
import type { Instance } from './instance.ts';
import { fitLegs } from './legs/fit.ts';
import { tidy } from './machining.ts';
import { fitShelves } from './shelves/fit.ts';
import type { BoardCut } from './side-view.ts';
import { told } from './told.ts';

/** Legs first, then drawers in what bays they leave, then shelves; and a halt where two spaces that move meet. */
export function fittings(site: Site, bench: BenchInput): Fitting {
  const legs = bench.legs == null ? together([]) : fitLegs(site, bench.legs);
  const standing = legs.envelopes.filter(({ kind }) => kind === 'leg');
  const drawers = fitDrawers(site, bench.drawers ?? [], standing);
  const shelves = fitShelves(site, bench.shelves ?? [], [...standing, ...drawers.envelopes]);
  const all = together([legs, drawers, shelves]);
  return together([all, saying(...meetings(all.envelopes))]);
}

export function siteOf(input: BenchworkInput, bench: BenchInput, grid: Grid): Site {
  return {
    grid,
    bench: bench.id,
    materials: input.materials,
    flangeStrips: bench.flangeStrips,
    step: input.machining.step,
    goods: input.goods ?? null,
  };
}

/** A wheel's circle must stay clear of drawers, shelves, other wheels and other legs. */
export function meetings(spaces: readonly Envelope[]): readonly Finding[] {
  const wheels = spaces.filter(({ kind }) => kind === 'caster');
  return wheels.flatMap((wheel, i) => {
    const others = [...spaces.filter(({ kind, of }) => kind !== 'caster' && of !== wheel.of), ...wheels.slice(i + 1)];
    return others.filter((other) => deepest(wheel, other) > 1e-6).map((other) => meeting(wheel, other));
  });
}

function shared(a: Envelope, b: Envelope, axis: 0 | 1 | 2): number {
  return Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]);
}

/** The shortest push that parts two boxes, mm; 0 or less when they are apart. */
function deepest(a: Envelope, b: Envelope): number {
  return Math.min(shared(a, b, 0), shared(a, b, 1), shared(a, b, 2));
}

function meeting(wheel: Envelope, other: Envelope): Finding {
  const by = tidy(Math.min(shared(wheel, other, 0), shared(wheel, other, 1)));
  const radius = tidy((wheel.max[0] - wheel.min[0]) / 2);
  // two circles that meet each give way by half
  const free = Math.max(0, tidy(radius - (other.kind === 'caster' ? by / 2 : by)));
  const what = say`the wheel under ${wheel.of} swings through the space of ${other.of} by ${length(by)}`;
  const mend =
    other.kind === 'drawer'
      ? say`raise the height by ${atLeast(wheel.max[2] - other.min[2])}, or use casters that swing within ${atMost(free)}`
      : say`use casters that swing within ${atMost(free)}`;
  return told('halt', {
    rule: 'caster-hits',
    where: wheel.of,
    what,
    figure: radius,
    limit: free,
    mend,
  });
}

/** Boards of the frame with what their fittings cut into them. */
export function withCuts(boards: readonly Instance[], cuts: readonly BoardCut[]): readonly Instance[] {
  return boards.map((board) => {
    const own = cuts.filter((cut) => cut.board === board.id);
    if (own.length === 0) return board;
    return {
      ...board,
      features: [...board.features, ...own.map(({ feature }) => feature)],
      marks: [...board.marks, ...own.flatMap(({ marks }) => marks)],
    };
  });
}
