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
    ['count', part.places.length],
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

function instances(part: Part): string[] {
  return part.places.map((place) => place.id);
}

/** The parts of two models compared by id, with the pieces `made` already that a change leaves wrong. */
export function impact(before: Model, after: Model, made: ReadonlySet<string>): Impact {
  const old = new Map(before.parts.map((part) => [part.id, part]));
  const now = new Map(after.parts.map((part) => [part.id, part]));
  const changed = after.parts.flatMap((part): PartImpact[] => {
    const was = old.get(part.id);
    const list = was === undefined ? [] : differences(was, part);
    if (list.length === 0) return [];
    const ids = [...new Set([...(was === undefined ? [] : instances(was)), ...instances(part)])];
    return [{ part: part.id, differences: list, instances: ids, alreadyMade: ids.filter((id) => made.has(id)) }];
  });
  const removed = before.parts
    .filter((part) => !now.has(part.id))
    .map((part) => ({
      part: part.id,
      instances: instances(part),
      alreadyMade: instances(part).filter((id) => made.has(id)),
    }));
  const added = after.parts.filter((part) => !old.has(part.id)).map((part) => part.id);
  return { changed, added, removed, sheets: sheetsOf(before, after) };
}

function sheetsOf(before: Model, after: Model) {
  const count = (model: Model, stock: string) => model.bounds?.find((bound) => bound.stock === stock)?.found ?? 0;
  const stocks = [...new Set([...(before.bounds ?? []), ...(after.bounds ?? [])].map((bound) => bound.stock))];
  return stocks
    .map((stock) => ({ stock, before: count(before, stock), after: count(after, stock) }))
    .filter((one) => one.before !== one.after);
}
