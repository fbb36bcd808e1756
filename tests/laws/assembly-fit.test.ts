import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodiesOf } from '../../src/core/assembly/bodies.ts';
import { fits, gapsOf } from '../../src/core/assembly/joint-gaps.ts';
import { overlapsOf } from '../../src/core/assembly/overlaps.ts';
import { frame } from '../../src/core/benchwork/frame.ts';
import type { BenchworkInput, BenchworkModel } from '../../src/core/benchwork/input.ts';
import type { Feature } from '../../src/core/stock/part.ts';
import { randomTable } from './random-table.ts';

const RUNS = 2080;
const PLANTED = 120;

type Plan = { readonly input: BenchworkInput; readonly model: BenchworkModel };

const plans = fc.sample(randomTable, { numRuns: RUNS, seed: 20261128 }).flatMap((input): readonly Plan[] => {
  const result = frame(input);
  return result.ok ? [{ input, model: result.value }] : [];
});

function misfits({ input, model }: Plan): readonly string[] {
  const thicknesses = Object.values(input.materials).map(({ thickness }) => thickness);
  const gaps = gapsOf({ parts: model.parts, joints: model.joints, thicknesses });
  return gaps.filter((gap) => !fits(gap)).map(({ joint, place, gap }) => `${joint} ${place} ${gap}`);
}

function overlapping({ model }: Plan): readonly string[] {
  return overlapsOf(bodiesOf(model.parts)).map(({ between, depth }) => `${between.join(' and ')} ${depth}`);
}

function withFeatures({ input, model }: Plan, change: (feature: Feature) => Feature): Plan {
  const parts = model.parts.map((part) => ({ ...part, features: part.features.map(change) }));
  return { input, model: { ...model, parts } };
}

/** A slot of thickness minus clearance, where thickness plus clearance was meant. */
function tightSlots(plan: Plan): Plan {
  const by = plan.input.dimensions.clearance ?? 0;
  return withFeatures(plan, (one) =>
    one.kind === 'notch' ? { ...one, patch: { ...one.patch, x0: one.patch.x0 + by, x1: one.patch.x1 - by } } : one,
  );
}

function wideDados(plan: Plan): Plan {
  return withFeatures(plan, (one) =>
    one.kind === 'stopped-dado' || one.kind === 'dado' || one.kind === 'rabbet'
      ? { ...one, patch: { ...one.patch, x1: one.patch.x1 + 0.05 } }
      : one,
  );
}

function deepDados(plan: Plan): Plan {
  return withFeatures(plan, (one) =>
    'depth' in one && one.kind !== 'hole' && one.kind !== 'counterbore' ? { ...one, depth: one.depth + 0.01 } : one,
  );
}

function shallowDados(plan: Plan): Plan {
  return withFeatures(plan, (one) =>
    'depth' in one && one.kind !== 'hole' && one.kind !== 'counterbore' ? { ...one, depth: one.depth - 0.01 } : one,
  );
}

function deepLaps(plan: Plan): Plan {
  return withFeatures(plan, (one) =>
    one.kind === 'notch' && one.edge === 'top' ? { ...one, patch: { ...one.patch, y0: one.patch.y0 - 0.1 } } : one,
  );
}

/** Every deck 0.01 above what bears it. */
function liftedDeck({ input, model }: Plan): Plan {
  const parts = model.parts.map((part) =>
    part.role !== 'deck'
      ? part
      : {
          ...part,
          places: part.places.map((place) => {
            const [x, y, z] = place.pose.origin;
            return { ...place, pose: { ...place.pose, origin: [x, y, z + 0.01] as const } };
          }),
        },
  );
  return { input, model: { ...model, parts } };
}

const has = (kind: string) => (plan: Plan) => plan.model.joints.some((joint) => joint.kind === kind);
const even = ({ input }: Plan) => {
  const known = input.materials.frame?.thickness;
  return known !== undefined && known.thickest - known.mean < (input.dimensions.clearance ?? 0) - 0.01;
};
const decked = (plan: Plan) => plan.model.parts.some(({ role }) => role === 'deck');
const FAULTS = [
  {
    says: 'slots of thickness minus clearance',
    plant: tightSlots,
    where: (plan: Plan) => has('lap')(plan) && even(plan),
    law: overlapping,
  },
  { says: 'slots of thickness minus clearance', plant: tightSlots, where: has('lap'), law: misfits },
  { says: 'dados 0.01 too shallow', plant: shallowDados, where: has('rabbet'), law: overlapping },
  { says: 'dados 0.01 too shallow', plant: shallowDados, where: has('rabbet'), law: misfits },
  { says: 'dados 0.01 too deep', plant: deepDados, where: has('rabbet'), law: misfits },
  { says: 'dados 0.05 too wide', plant: wideDados, where: has('rabbet'), law: misfits },
  { says: 'laps 0.1 too deep', plant: deepLaps, where: has('lap'), law: misfits },
  { says: 'a deck 0.01 off its frame', plant: liftedDeck, where: decked, law: misfits },
];

describe('what is built from random plans', () => {
  it('is possible for most of them', () => {
    console.info(`plans that can be built: ${plans.length} of ${RUNS}`);
    expect(plans.length).toBeGreaterThanOrEqual(2000);
  });

  it('never overlaps', () => {
    expect(plans.flatMap(overlapping)).toEqual([]);
  }, 300_000);

  it('has every declared joint within its gap, measured on the solids', () => {
    expect(plans.flatMap(misfits)).toEqual([]);
  }, 300_000);

  for (const { says, plant, where, law } of FAULTS) {
    it(`is caught with ${says} by ${law.name}`, () => {
      const planted = plans.filter(where).slice(0, PLANTED).map(plant);
      expect(planted.length).toBeGreaterThan(PLANTED / 2);
      expect(planted.filter((plan) => law(plan).length === 0).length).toBe(0);
    }, 120_000);
  }
});
