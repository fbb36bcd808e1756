import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frame } from '../../src/core/benchwork/frame.ts';
import type { BenchworkInput, BenchworkModel } from '../../src/core/benchwork/input.ts';
import { cross, dot } from '../../src/core/geometry/vector.ts';
import type { Feature, Part } from '../../src/core/stock/part.ts';
import {
  chainsClose,
  fitsOrSaysSo,
  type Law,
  materialAddsUp,
  matesMatch,
  nothingOverlaps,
  outsideKept,
} from './benchwork-laws.ts';
import { cornersOf, mirrored, sameCorners } from './mirrored-table.ts';
import { randomTable } from './random-table.ts';

const RUNS = 1200;

type Sample = { readonly input: BenchworkInput; readonly model: BenchworkModel };

function samples(): readonly Sample[] {
  return fc.sample(randomTable, { numRuns: RUNS, seed: 20261125 }).flatMap((input) => {
    const result = frame(input);
    return result.ok ? [{ input, model: result.value }] : [];
  });
}

const tables = samples();

function breaches(law: Law, all: readonly Sample[]): readonly string[] {
  return all.flatMap(({ input, model }) => law(model, input));
}

/** A model with the features or blanks of its parts changed. */
function changed(model: BenchworkModel, change: (part: Part) => Part): BenchworkModel {
  return { ...model, parts: model.parts.map(change) };
}

function withFeatures(change: (feature: Feature) => Feature | null): (model: BenchworkModel) => BenchworkModel {
  return (model) =>
    changed(model, (part) => ({ ...part, features: part.features.map(change).filter((feature) => feature !== null) }));
}

/** A slot of thickness minus clearance, where thickness plus clearance was meant. */
function tightSlots({ model, input }: Sample): BenchworkModel {
  const clearance = input.dimensions.clearance ?? 0;
  return withFeatures((f) =>
    f.kind === 'notch' ? { ...f, patch: { ...f.patch, x0: f.patch.x0 + clearance, x1: f.patch.x1 - clearance } } : f,
  )(model);
}

const shallowDados = withFeatures((f) =>
  f.kind === 'stopped-dado' || f.kind === 'rabbet' ? { ...f, depth: f.depth - 0.1 } : f,
);

const deepLaps = withFeatures((f) => {
  if (f.kind !== 'notch') return f;
  return {
    ...f,
    patch: f.edge === 'top' ? { ...f.patch, y0: f.patch.y0 - 0.1 } : { ...f.patch, y1: f.patch.y1 + 0.1 },
  };
});

const noSlots = withFeatures((f) => (f.kind === 'notch' ? null : f));

const unroundedDados = ({ model, input }: Sample): BenchworkModel => {
  const t = input.materials.frame?.thickness.mean ?? 0;
  return changed(model, (part) => {
    if (part.role === 'end' || part.role === 'strut') {
      const outside = input.dimensions[part.id.includes('along') ? 'length' : 'width'] ?? 0;
      return { ...part, blank: { ...part.blank, length: outside - 2 * (t - t / 3) } };
    }
    return { ...part, features: part.features.map((f) => (f.kind === 'rabbet' ? { ...f, depth: t / 3 } : f)) };
  });
};

const sideOutside = (model: BenchworkModel): BenchworkModel =>
  changed(model, (part) => ({
    ...part,
    places: part.places.map((place) => {
      if (place.id !== 'side.back') return place;
      const [x, y, z] = place.pose.origin;
      return { ...place, pose: { ...place.pose, origin: [x, y + 0.01, z] } };
    }),
  }));

const nothingSaid = (model: BenchworkModel): BenchworkModel => ({ ...model, findings: [] });

const LAWS: readonly {
  readonly says: string;
  readonly law: Law;
  readonly faults: Readonly<Record<string, (sample: Sample) => BenchworkModel>>;
}[] = [
  {
    says: 'the outside is what was asked',
    law: outsideKept,
    faults: { 'a side stands 0.01 out': ({ model }) => sideOutside(model) },
  },
  {
    says: 'no two solids overlap',
    law: nothingOverlaps,
    faults: {
      'slots of thickness minus clearance': tightSlots,
      'dados 0.1 too shallow': ({ model }) => shallowDados(model),
      'no slots': ({ model }) => noSlots(model),
    },
  },
  {
    says: 'mates match',
    law: matesMatch,
    faults: {
      'slots of thickness minus clearance': tightSlots,
      'dados 0.1 too shallow': ({ model }) => shallowDados(model),
      'laps 0.1 too deep': ({ model }) => deepLaps(model),
    },
  },
  { says: 'material adds up', law: materialAddsUp, faults: { 'no slots': ({ model }) => noSlots(model) } },
  { says: 'printed chains close', law: chainsClose, faults: { 'dados not rounded before lengths': unroundedDados } },
  {
    says: 'every part fits its stock or is a finding',
    law: fitsOrSaysSo,
    faults: { 'nothing is said': ({ model }) => nothingSaid(model) },
  },
];

describe(`laws of the lapped grid on ${RUNS} random tables`, () => {
  it('can build most of them, at least a thousand', () => {
    const share = tables.length / RUNS;
    console.log(`valid tables: ${tables.length} of ${RUNS}, ${(100 * share).toFixed(1)} %`);
    expect(tables.length).toBeGreaterThanOrEqual(1000);
    expect(share).toBeGreaterThanOrEqual(0.7);
  });

  for (const { says, law, faults } of LAWS) {
    it(says, () => {
      expect(breaches(law, tables).slice(0, 5)).toEqual([]);
    });
    for (const [fault, plant] of Object.entries(faults)) {
      it(`${says}: fails when ${fault}`, () => {
        const planted = tables.slice(0, 40).map((sample) => ({ ...sample, model: plant(sample) }));
        const more = law === fitsOrSaysSo ? tables.map((sample) => ({ ...sample, model: plant(sample) })) : planted;
        expect(breaches(law, more).length).toBeGreaterThan(0);
      });
    }
  }

  it('a mirrored plan gives mirrored parts', () => {
    const broken = tables.filter(({ input, model }) => {
      const other = frame(mirrored(input));
      return !other.ok || !sameCorners(cornersOf(other.value, null), cornersOf(model, input.dimensions.length ?? 0));
    });
    expect(broken.slice(0, 2).map(({ input }) => input.benches[0])).toEqual([]);
  });

  it('a mirrored plan gives mirrored parts: fails when the mirror is forgotten', () => {
    const broken = tables
      .slice(0, 40)
      .filter(
        ({ input, model }) => !sameCorners(cornersOf(model, null), cornersOf(model, input.dimensions.length ?? 0)),
      );
    expect(broken.length).toBeGreaterThan(0);
  });

  it('places every part right-handed; fails when one is mirrored', () => {
    expect(tables.flatMap(({ model }) => mirroredPlaces(model))).toEqual([]);
    const planted = tables.slice(0, 5).map(({ model }) =>
      changed(model, (part) => ({
        ...part,
        places: part.places.map((place) => ({ ...place, pose: { ...place.pose, x: place.pose.y, y: place.pose.x } })),
      })),
    );
    for (const model of planted) expect(mirroredPlaces(model).length).toBeGreaterThan(0);
  });

  it('gives plain JSON: every number finite, none -0, the same bytes for the same input', () => {
    const odd = tables.slice(0, 300).flatMap(({ input, model }) => {
      const again = frame(input);
      const same = again.ok && JSON.stringify(again.value) === JSON.stringify(model);
      return [...oddNumbers(model), ...(same ? [] : ['other bytes'])];
    });
    expect(odd).toEqual([]);
    expect(oddNumbers({ at: [0, Number.NaN, { deep: -0 }] })).toEqual(['NaN', '-0']);
  });
});

/** Places whose axes have a determinant other than 1. */
function mirroredPlaces(model: BenchworkModel): readonly string[] {
  const places = model.parts.flatMap((part) => part.places);
  return places.filter(({ pose: { x, y, z } }) => Math.abs(dot(cross(x, y), z) - 1) > 1e-12).map(({ id }) => id);
}

function oddNumbers(value: unknown): readonly string[] {
  if (typeof value === 'number')
    return Number.isFinite(value) && !Object.is(value, -0) ? [] : [Object.is(value, -0) ? '-0' : `${value}`];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(oddNumbers) : [];
}
