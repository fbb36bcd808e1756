import type { Finding } from '../finding.ts';
import { say } from '../units/say.ts';
import type { Body, Link } from './body.ts';
import { connected, leavers } from './leavers.ts';
import { names, type Scene, scene } from './scene.ts';
import { detourOf } from './two-leg.ts';

/** Pieces that one step puts in their places; `title` is how the step is called, `after` what its author set before it. */
export type PuttingIn = {
  readonly step: string;
  readonly title: string;
  readonly parts: readonly string[];
  readonly after?: readonly string[];
};

/** A bench, the steps that build it in their order, and the order in which it was proved to go together. */
export type BuiltBySteps = {
  readonly bodies: readonly Body[];
  readonly links: readonly Link[];
  readonly steps: readonly PuttingIn[];
  /** instances, first to last */
  readonly proved: readonly string[];
  /** instances that are said to be tilted in */
  readonly tilts: readonly string[];
};

/** Pieces that have no free way in any more, and what stands in it. */
type Shut = { readonly out: readonly string[]; readonly by: readonly string[] };

/**
 * A halt for every step that puts pieces in when others, put there by steps before it, leave them no free way; with what
 * is in the way and the order that works. Pieces of one step may go in one after the other or together.
 */
export function checkPlacingOrder(built: BuiltBySteps): readonly Finding[] {
  const at = scene(built.bodies, built.links);
  const index = new Map(built.bodies.map(({ id }, i) => [id, i]));
  const tilted = new Set(built.tilts.flatMap((id) => index.get(id) ?? []));
  const standing = new Set<number>();
  const found: Finding[] = [];
  for (const one of built.steps) {
    const going = new Set(one.parts.flatMap((id) => index.get(id) ?? []).filter((i) => !standing.has(i)));
    const shut = standing.size === 0 ? null : shutOut(at, { standing, going, tilted });
    if (shut !== null) found.push(shutFinding(one, shut, built));
    for (const i of going) standing.add(i);
  }
  return found;
}

type Step = {
  readonly standing: ReadonlySet<number>;
  readonly going: ReadonlySet<number>;
  readonly tilted: ReadonlySet<number>;
};

/** Takes out again what goes in, piece by piece or together; what stays is shut out. A way out is a way in, backwards. */
function shutOut(at: Scene, { standing, going, tilted }: Step): Shut | null {
  const left = new Set([...going].filter((i) => !tilted.has(i)));
  for (let out = oneOut(at, standing, left); out !== null; out = oneOut(at, standing, left)) {
    for (const i of out) left.delete(i);
  }
  return left.size === 0 ? null : { out: names(at, left), by: names(at, inTheWayOf(at, standing, left)) };
}

function oneOut(at: Scene, standing: ReadonlySet<number>, left: ReadonlySet<number>): readonly number[] | null {
  if (left.size === 0) return null;
  const present = new Set([...standing, ...left]);
  for (const graph of at.graphs) {
    const free = leavers(graph, present).find((group) => group.every((i) => left.has(i)) && connected(at, group));
    if (free !== undefined) return free;
  }
  const member = [...left].find((i) => detourOf(at, present, i) !== null);
  return member === undefined ? null : [member];
}

/** Of all directions the one in which the fewest pieces stand in the way of what is left. */
function inTheWayOf(at: Scene, standing: ReadonlySet<number>, left: ReadonlySet<number>): readonly number[] {
  const ways = at.graphs.map(({ blocks }) => {
    const met = new Set([...left].flatMap((i) => blocks[i] ?? []));
    return [...met].filter((i) => standing.has(i)).sort((a, b) => a - b);
  });
  return ways.reduce(
    (least, way) => (way.length > 0 && (least.length === 0 || way.length < least.length) ? way : least),
    [],
  );
}

function shutFinding(one: PuttingIn, { out, by }: Shut, { steps, proved }: BuiltBySteps): Finding {
  const earlier = steps.filter(({ parts }) => parts.some((id) => by.includes(id)));
  const concerned = new Set([...out, ...earlier.flatMap(({ parts }) => parts)]);
  const order = proved.filter((id) => concerned.has(id));
  const said = earlier.filter(({ step }) => one.after?.includes(step) === true);
  const taken = said.map(({ title }) => `take '${title}' out of the after of '${one.title}'; `).join('');
  return {
    rule: 'placed-too-late',
    level: 'halt',
    where: one.step,
    chapter: 'benchwork',
    what: say`'${one.title}' puts in ${out.join(', ')} when ${by.join(', ')} ${by.length === 1 ? 'stands' : 'stand'} already, and no straight way is left past ${by.length === 1 ? 'it' : 'them'}`,
    figure: out.length,
    limit: 0,
    unit: 'count',
    mend: say`${taken}what this step and ${earlier.map(({ title }) => `'${title}'`).join(', ')} put in goes together in this order: ${order.join(', ')}`,
    source: 'Wilson and Latombe, Artificial Intelligence 71, 1994: blocking graphs along each direction',
    accepted: null,
  };
}
