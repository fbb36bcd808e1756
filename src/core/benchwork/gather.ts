import type { Feature, Part, Placement } from '../stock/part.ts';
import type { Instance } from './instance.ts';
import { tidy } from './machining.ts';
import { TURNS, type Turn, turnedFeature, turnedMark, turnedPose } from './turn.ts';

/** What every part of a bench shares. */
export type Cutting = {
  readonly bench: string;
  readonly phase: 'now' | 'later';
  /** stock and whether it waits for a reading, by material role */
  readonly stock: Readonly<Record<string, { readonly id: string; readonly cutAfterMeasuring: boolean }>>;
};

/** Instances of one shape become one part with a place each; a half turn may bring them to lie alike, a mirror never. */
export function gathered(instances: readonly Instance[], cutting: Cutting): readonly Part[] {
  const groups = new Map<string, Instance[]>();
  for (const instance of instances) {
    const key = canonical(instance);
    groups.set(key, [...(groups.get(key) ?? []), instance]);
  }
  return [...groups.values()].map((group) => partOf(group, cutting)).filter((part) => part !== null);
}

function partOf(group: readonly Instance[], cutting: Cutting): Part | null {
  const first = group[0];
  if (first === undefined) return null;
  const { id, cutAfterMeasuring } = cutting.stock[first.material] ?? { id: '', cutAfterMeasuring: false };
  return {
    id: first.id,
    label: shared(group.map(({ label }) => label)),
    role: first.role,
    chapter: 'benchwork',
    bench: cutting.bench,
    stock: id,
    ...(first.from === undefined ? {} : { from: first.from }),
    blank: first.blank,
    features: named(group.length === 1 ? first.features : first.features.map(withoutMate)),
    places: group.map((instance) => placement(first, instance)),
    cutAfterMeasuring,
    phase: cutting.phase,
  };
}

/** The labels of a shape's places: all of up to four, else the first and the last. */
function shared(labels: readonly string[]): string {
  return labels.length <= 4 ? labels.join(', ') : `${labels[0]} to ${labels[labels.length - 1]}`;
}

/** A shape made for several places names no single mate. */
function withoutMate(feature: Feature): Feature {
  const { for: _mate, ...rest } = feature;
  return rest;
}

function placement(first: Instance, instance: Instance): Placement {
  const turn = TURNS.find((one) => shapeKey(instance, one) === shapeKey(first, 'none')) ?? 'none';
  return {
    id: instance.id,
    label: instance.label,
    pose: turnedPose(instance.blank, turn, instance.pose),
    marks: instance.marks.map((mark) => turnedMark(instance.blank, turn, mark)),
  };
}

/** The same text for every way the shape can be turned. */
function canonical(instance: Instance): string {
  const keys = TURNS.map((turn) => shapeKey(instance, turn)).sort(byCodeUnit);
  return keys[0] ?? '';
}

function shapeKey(instance: Instance, turn: Turn): string {
  const features = instance.features.map((feature) => featureKey(turnedFeature(instance.blank, turn, feature)));
  return JSON.stringify(
    [instance.role, instance.material, instance.from ?? '', instance.blank, features.sort(byCodeUnit)],
    rounded,
  );
}

function featureKey(feature: Feature): string {
  return JSON.stringify({ ...feature, id: '', for: '' }, rounded);
}

/** Shapes within a thousandth of a micron are the same. */
function rounded(_key: string, value: unknown): unknown {
  return typeof value === 'number' ? Math.round(value * 1e6) / 1e6 || 0 : value;
}

function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

const NAMES: Readonly<Partial<Record<Feature['kind'], string>>> = { notch: 'slot', 'stopped-dado': 'dado' };

/** Features from left to right, numbered by kind: `rabbet-1`, `dado-1`, `slot-2`. */
function named(features: readonly Feature[]): readonly Feature[] {
  const seen = new Map<string, number>();
  return [...features]
    .sort((a, b) => tidy(leftOf(a) - leftOf(b)))
    .map((feature) => {
      const name = NAMES[feature.kind] ?? feature.kind;
      const number = (seen.get(name) ?? 0) + 1;
      seen.set(name, number);
      return { ...feature, id: `${name}-${number}` };
    });
}

function leftOf(feature: Feature): number {
  if ('patch' in feature) return feature.patch.x0;
  return feature.kind === 'hole' ? feature.at[0] : 0;
}
