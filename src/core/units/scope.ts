import { evaluate } from './evaluate.ts';
import { namesIn } from './names.ts';
import { done, type Fault, failed, type Result } from './problem.ts';
import type { Amount, Quantity, Scope } from './quantity.ts';

type Named = ReadonlyMap<string, Quantity>;

/** For each name, the names among the same dimensions that its value needs. */
function needs(named: Named): ReadonlyMap<string, readonly string[]> {
  return new Map([...named].map(([name, { tree }]) => [name, namesIn(tree).filter((one) => named.has(one))]));
}

/** Names in an order in which each comes after what it needs, as written otherwise; names on a loop or behind one are left out. */
function inOrder(needed: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const waiting = new Map([...needed].map(([name, before]) => [name, before.length]));
  const users = new Map<string, string[]>();
  for (const [name, before] of needed) {
    for (const one of before) {
      const known = users.get(one);
      if (known === undefined) users.set(one, [name]);
      else known.push(name);
    }
  }
  const order = [...needed.keys()].filter((name) => waiting.get(name) === 0);
  for (let i = 0; i < order.length; i += 1) {
    for (const user of users.get(order[i] ?? '') ?? []) {
      const left = (waiting.get(user) ?? 0) - 1;
      waiting.set(user, left);
      if (left === 0) order.push(user);
    }
  }
  return order;
}

/** Loops among names that wait for one another, each once, from its first name as met. */
function loops(
  needed: ReadonlyMap<string, readonly string[]>,
  stuck: ReadonlySet<string>,
): readonly (readonly string[])[] {
  const seen = new Set<string>();
  const found: (readonly string[])[] = [];
  for (const start of stuck) {
    const path: string[] = [];
    const places = new Map<string, number>();
    let name: string | undefined = start;
    while (name !== undefined && !seen.has(name)) {
      seen.add(name);
      places.set(name, path.length);
      path.push(name);
      name = needed.get(name)?.find((one) => stuck.has(one));
    }
    const from = name === undefined ? undefined : places.get(name);
    if (from !== undefined) found.push(path.slice(from));
  }
  return found;
}

function loopFault(loop: readonly string[], named: Named): Fault {
  const [first = ''] = loop;
  const said = loop.length > 12 ? [...loop.slice(0, 12), '...'] : loop;
  return {
    rule: 'dimension-loop',
    at: named.get(first)?.at ?? '',
    offset: 0,
    what: `\`${first}\` needs itself: ${[...said, first].join(' -> ')}`,
    mend: 'write one of them as a value of its own',
  };
}

function takenFaults(named: Named, given: Scope): readonly Fault[] {
  return [...named]
    .filter(([name]) => Object.hasOwn(given, name))
    .map(([name, { at }]) => ({
      rule: 'name-taken',
      at,
      what: `\`${name}\` already has a value here`,
      mend: 'give the dimension another name',
    }));
}

/** Amounts in order, and the names whose values failed; a value behind a failed one is left out, it would only repeat it. */
function amountsInOrder(order: readonly string[], named: Named, given: Scope) {
  const amounts: Record<string, Amount> = Object.create(null);
  Object.assign(amounts, given);
  const broken: Quantity[] = [];
  for (const name of order) {
    const quantity = named.get(name);
    if (quantity === undefined) continue;
    if (namesIn(quantity.tree).some((one) => named.has(one) && !Object.hasOwn(amounts, one))) continue;
    const amount = evaluate(quantity, amounts);
    if (amount.ok) amounts[name] = amount.value;
    else broken.push(quantity);
  }
  return { amounts, broken };
}

/** Faults of broken values, told when all names are known, so that the nearest name is the nearest of all. */
function faultsOf(broken: readonly Quantity[], amounts: Scope): readonly Fault[] {
  return broken.flatMap((quantity) => {
    const amount = evaluate(quantity, amounts);
    return amount.ok ? [] : amount.faults;
  });
}

/**
 * All named dimensions with their amounts, beside those given; they may be written in any order.
 * Faults: a loop, naming it; a name given twice; whatever evaluating finds.
 */
export function resolveScope(dimensions: Readonly<Record<string, Quantity>>, given: Scope): Result<Scope> {
  const named: Named = new Map(Object.entries(dimensions));
  const needed = needs(named);
  const order = inOrder(needed);
  const known = new Set(order);
  const stuck = new Set([...named.keys()].filter((name) => !known.has(name)));
  const { amounts, broken } = amountsInOrder(order, named, given);
  const looped = loops(needed, stuck).map((loop) => loopFault(loop, named));
  const all = [...takenFaults(named, given), ...looped, ...faultsOf(broken, amounts)];
  return all.length === 0 ? done(Object.fromEntries(Object.entries(amounts))) : failed(...all);
}
