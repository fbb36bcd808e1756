import type { Part } from '../stock/part.ts';

/** As much of a notebook as the impact of a change needs. */
export type Model = {
  readonly parts: readonly Part[];
  readonly bounds?: readonly { readonly stock: string; readonly found: number }[];
};

/** A figure of a part before and after; mm, or words. */
export type Difference = { readonly what: string; readonly before: number | string; readonly after: number | string };

export type PartImpact = {
  readonly part: string;
  readonly differences: readonly Difference[];
  readonly instances: readonly string[];
  /** of these, pieces that exist already and no longer fit the plan */
  readonly alreadyMade: readonly string[];
};

/** What a change does to the parts and the sheets. */
export type Impact = {
  readonly changed: readonly PartImpact[];
  /** instances that were not there before */
  readonly added: readonly string[];
  readonly removed: readonly {
    readonly part: string;
    readonly instances: readonly string[];
    readonly alreadyMade: readonly string[];
  }[];
  readonly sheets: readonly { readonly stock: string; readonly before: number; readonly after: number }[];
};

/** Lengths that differ by less are the same, mm. */
const SAME = 1e-6;

function figures(part: Part): Map<string, number | string> {
  const found = new Map<string, number | string>([
    ['length', part.blank.length],
    ['width', part.blank.width],
    ['thickness', part.blank.thickness],
    ['stock', part.stock],
  ]);
  for (const feature of part.features) {
    for (const [key, value] of numbersOf(feature)) found.set(`${feature.id}.${key}`, value);
  }
  return found;
}

/** Every number of a feature by its path: `patch.x0`, `depth`. */
function numbersOf(value: object): [string, number | string][] {
  return Object.entries(value).flatMap(([key, item]): [string, number | string][] => {
    if (typeof item === 'number' || key === 'kind' || key === 'edge' || key === 'side') return [[key, item]];
    if (typeof item !== 'object' || item === null) return [];
    return numbersOf(item).map(([inner, number]) => [`${key}.${inner}`, number]);
  });
}

function differs(before: number | string | undefined, after: number | string | undefined): boolean {
  if (typeof before === 'number' && typeof after === 'number') return Math.abs(before - after) > SAME;
  return before !== after;
}

function differences(before: Part, after: Part): Difference[] {
  const [old, now] = [figures(before), figures(after)];
  const names = [...new Set([...old.keys(), ...now.keys()])];
  return names
    .filter((what) => differs(old.get(what), now.get(what)))
    .map((what) => ({ what, before: old.get(what) ?? '', after: now.get(what) ?? '' }));
}

/** The part of each instance. Parts are called after their first instance, so a change may part what was one. */
function byInstance(model: Model): Map<string, Part> {
  return new Map(model.parts.flatMap((part) => part.places.map((place): [string, Part] => [place.id, part])));
}

/** Instances under a common name, in order of first sight. */
function gathered(pairs: readonly (readonly [key: string, instance: string])[]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const [key, instance] of pairs) groups.set(key, [...(groups.get(key) ?? []), instance]);
  return groups;
}

function changedParts(old: ReadonlyMap<string, Part>, after: Model, made: ReadonlySet<string>): PartImpact[] {
  return after.parts.flatMap((part) => {
    const pairs = part.places.flatMap(({ id }) => {
      const was = old.get(id);
      return was === undefined ? [] : [[was.id, id] as const];
    });
    return [...gathered(pairs).values()].flatMap((instances): PartImpact[] => {
      const was = old.get(instances[0] ?? '');
      const list = was === undefined ? [] : differences(was, part);
      if (list.length === 0) return [];
      return [{ part: part.id, differences: list, instances, alreadyMade: instances.filter((id) => made.has(id)) }];
    });
  });
}

/** The parts of two models compared instance by instance, with the pieces `made` already that a change leaves wrong. */
export function impact(before: Model, after: Model, made: ReadonlySet<string>): Impact {
  const old = byInstance(before);
  const now = byInstance(after);
  const lost = gathered([...old].filter(([id]) => !now.has(id)).map(([id, part]) => [part.id, id] as const));
  return {
    changed: changedParts(old, after, made),
    added: [...now.keys()].filter((id) => !old.has(id)),
    removed: [...lost].map(([part, instances]) => ({
      part,
      instances,
      alreadyMade: instances.filter((id) => made.has(id)),
    })),
    sheets: sheetsOf(before, after),
  };
}

function sheetsOf(before: Model, after: Model) {
  const count = (model: Model, stock: string) => model.bounds?.find((bound) => bound.stock === stock)?.found ?? 0;
  const stocks = [...new Set([...(before.bounds ?? []), ...(after.bounds ?? [])].map((bound) => bound.stock))];
  return stocks
    .map((stock) => ({ stock, before: count(before, stock), after: count(after, stock) }))
    .filter((one) => one.before !== one.after);
}
