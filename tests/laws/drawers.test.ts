import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frame } from '../../src/core/benchwork/frame.ts';
import type { BenchworkModel } from '../../src/core/benchwork/input.ts';
import type { Vector } from '../../src/core/geometry/shapes.ts';
import { dot, minus, plus } from '../../src/core/geometry/vector.ts';
import type { Feature, Part } from '../../src/core/stock/part.ts';
import {
  deckHeightKept,
  drawersClear,
  driversReach,
  hardwareCounted,
  type Law,
  matesMeet,
  metalFixed,
  nothingOverlaps,
  placesCounted,
  type Sample,
  sampleOf,
  screwsStayInside,
} from './fitting-laws.ts';
import { randomFitted } from './random-fittings.ts';

const RUNS = 2000;

type Plant = (sample: Sample) => BenchworkModel;

const changed = (model: BenchworkModel, change: (part: Part) => Part): BenchworkModel => ({
  ...model,
  parts: model.parts.map(change),
});

/** Parts of a role moved by a vector. */
function moved(role: string, by: Vector): Plant {
  return ({ model }) =>
    changed(model, (part) =>
      part.role !== role
        ? part
        : {
            ...part,
            places: part.places.map((place) => {
              const [x, y, z] = place.pose.origin;
              return { ...place, pose: { ...place.pose, origin: [x + by[0], y + by[1], z + by[2]] } };
            }),
          },
    );
}

const withFeatures =
  (role: string, change: (feature: Feature) => Feature | null): Plant =>
  ({ model }) =>
    changed(model, (part) =>
      part.role === role ? { ...part, features: part.features.map(change).filter((one) => one !== null) } : part,
    );

/** The back of each box before its front's screws. */
const backsClose: Plant = ({ model, bodies }) => {
  const front = (id: string) => bodies.find((body) => body.id === id.replace('.back', '.front'))?.box;
  return changed(model, (part) => ({
    ...part,
    places: part.places.map((place) => {
      const at = /^drawer\..*\.back$/.test(place.id) ? front(place.id) : undefined;
      const screw = model.fasteners.find(({ through }) => through[0] === place.id.replace('.back', '.front'));
      if (at === undefined || screw === undefined) return place;
      const [x, y, z] = place.pose.origin;
      const from = screw.head;
      const [dx, dy] = [screw.direction[0], screw.direction[1]];
      const [ax, ay] = [dx === 0 ? x : from[0] - 30 * dx, dy === 0 ? y : from[1] - 30 * dy];
      return { ...place, pose: { ...place.pose, origin: [ax, ay, z] } };
    }),
  }));
};
/** Right spacers where their left ones' screws go in. */
const spacersClose: Plant = ({ model }) =>
  changed(model, (part) => ({
    ...part,
    places: part.places.map((place) => {
      const left = model.fasteners.find(({ through }) => through[0] === place.id.replace('-right', '-left'));
      if (!/^spacer\..*-right$/.test(place.id) || left === undefined) return place;
      const [x, y, z] = place.pose.origin;
      const [dx, dy] = [left.direction[0], left.direction[1]];
      const at = (now: number, head: number, way: number) => (Math.abs(way) < 0.5 ? now : head - 60 * way);
      return { ...place, pose: { ...place.pose, origin: [at(x, left.head[0], dx), at(y, left.head[1], dy), z] } };
    }),
  }));

const noGrooves = withFeatures('drawer-side', (one) => (one.kind === 'groove' ? null : one));
const noMitres = withFeatures('leg-half', (one) => (one.kind === 'mitre' ? null : one));
const openingOfTheFace = withFeatures('side', (one) =>
  one.kind === 'opening' ? { ...one, patch: { ...one.patch, x0: one.patch.x0 + 1 } } : one,
);
const squareFaces = withFeatures('drawer-face', (one) =>
  one.kind === 'rounded-corner' ? { ...one, radius: one.radius + 1 } : one,
);
const fingerGrooveTooDeep = withFeatures('drawer-pull', (one) =>
  one.kind === 'groove' ? { ...one, patch: { ...one.patch, y0: 0 }, depth: 2.2 * one.depth } : one,
);
const longScrews: Plant = ({ model }) => ({
  ...model,
  fasteners: model.fasteners.map((one) => (one.form === 'screw' ? { ...one, length: one.length + 20 } : one)),
});
const withoutUse =
  (word: string): Plant =>
  ({ model }) => ({ ...model, hardware: model.hardware.filter(({ item }) => !item.includes(word)) });
const oneJointBare: Plant = ({ model }) => {
  const joint = model.joints.find(({ held }) => held === 'screws');
  return { ...model, fasteners: model.fasteners.filter(({ holds }) => holds !== joint?.id) };
};

const oneFixingLess: Plant = ({ model }) => {
  const one = model.fasteners.find(({ holds }) => holds.startsWith('slide.'));
  return { ...model, fasteners: model.fasteners.filter((other) => other !== one) };
};
/** A hole in each pad where the first of its bracket's screws goes in. */
const boredAtScrews: Plant = ({ model }) =>
  changed(model, (part) => {
    const screw = model.fasteners.find(
      ({ form, through }) => form === 'screw' && through[0] === part.places[0]?.id && through.length === 1,
    );
    const pose = part.places[0]?.pose;
    if (part.role !== 'leg-pad' || screw === undefined || pose === undefined) return part;
    const from = minus(screw.head, pose.origin);
    const at = [dot(from, pose.x), dot(from, pose.y)] as const;
    const hole: Feature = { id: 'planted', kind: 'hole', at, diameter: 4, side: 'face', depth: 'through' };
    return { ...part, features: [...part.features, hole] };
  });
const boltsAside: Plant = ({ model }) => ({
  ...model,
  fasteners: model.fasteners.map((one) =>
    one.form === 'bolt' && one.through.length === 1 ? { ...one, head: plus(one.head, [3, 0, 0]) } : one,
  ),
});

const LAWS: readonly { readonly says: string; readonly law: Law; readonly faults: Readonly<Record<string, Plant>> }[] =
  [
    {
      says: 'no two solids overlap',
      law: nothingOverlaps,
      faults: {
        'bottoms have no grooves': noGrooves,
        'halves of an angle are not mitred': noMitres,
        'legs stand 0.1 too high': moved('leg-layer', [0, 0, 0.1]),
      },
    },
    {
      says: 'mates meet',
      law: matesMeet,
      faults: {
        'pads hang 0.1 low': moved('leg-pad', [0, 0, -0.1]),
        'pulls stand off': moved('drawer-pull', [-0.1, -0.1, 0]),
        'faces stand off their boxes': moved('drawer-face', [-0.1, -0.1, 0]),
      },
    },
    {
      says: 'floor to deck top is what was asked',
      law: deckHeightKept,
      faults: {
        'the deck lies 0.01 high': moved('deck', [0, 0, 0.01]),
        'pads hang 0.01 low': moved('leg-pad', [0, 0, -0.01]),
      },
    },
    {
      says: 'boxes and faces keep their clearances',
      law: drawersClear,
      faults: {
        'spacers are not flush': moved('drawer-spacer', [0.1, 0.1, 0]),
        'an opening is smaller by 1': openingOfTheFace,
        'faces are rounder by 1': squareFaces,
      },
    },
    {
      says: 'screws never come through',
      law: screwsStayInside,
      faults: { 'screws are 20 longer': longScrews, 'the finger groove reaches the screws': fingerGrooveTooDeep },
    },
    {
      says: 'a driver comes to every screw',
      law: driversReach,
      faults: {
        'the backs of boxes stand close behind their fronts': backsClose,
        'a spacer stands before the other': spacersClose,
      },
    },
    {
      says: 'hardware is counted by joints',
      law: hardwareCounted,
      faults: {
        'nuts are forgotten': withoutUse('nut'),
        'washers are forgotten': withoutUse('washer'),
        'catches are forgotten': withoutUse('catch'),
        'one joint has no screws': oneJointBare,
      },
    },
    {
      says: 'every screw and bolt that is counted has a place',
      law: placesCounted,
      faults: { 'one slide screw has none': oneFixingLess, 'screws are not counted': withoutUse('screw-3.5') },
    },
    {
      says: 'what fixes metal keeps off holes and stands in its inserts',
      law: metalFixed,
      faults: {
        'pads are bored where their brackets are screwed': boredAtScrews,
        'casters are bolted beside their inserts': boltsAside,
      },
    },
  ];

/** Bodies are too many to keep: each plan is judged by all laws and let go. */
function judged() {
  const made: Record<string, number> = {};
  const broken: Record<string, string[]> = {};
  const first: Sample[] = [];
  let valid = 0;
  for (const input of fc.sample(randomFitted, { numRuns: RUNS, seed: 20261126 })) {
    const result = frame(input);
    if (!result.ok) continue;
    valid += 1;
    const sample = sampleOf(input, result.value);
    if (first.length < 40 && kindsOf(sample).length > 2) first.push(sample);
    for (const kind of kindsOf(sample)) made[kind] = (made[kind] ?? 0) + 1;
    for (const { says, law } of LAWS) broken[says] = [...(broken[says] ?? []), ...law(sample)].slice(0, 5);
  }
  return { valid, made, broken, first };
}

/** Kinds of spaces, and the form of legs, that a plan really made. */
function kindsOf({ model, input }: Sample): readonly string[] {
  const kinds = [...new Set(model.envelopes.map(({ kind }) => kind))];
  const form = input.benches[0]?.legs?.form ?? 'none';
  return kinds.includes('leg') ? [...kinds, form] : kinds;
}

const { valid, made, broken, first } = judged();

describe(`laws of drawers, legs and shelves on ${RUNS} random plans`, () => {
  it('can lay out most of them, and makes enough of each kind', () => {
    const share = valid / RUNS;
    const kinds = Object.entries(made).map(([kind, count]) => `${kind} in ${count}`);
    console.log(`valid plans: ${valid} of ${RUNS}, ${(100 * share).toFixed(1)} %; ${kinds.join(', ')}`);
    expect(share).toBeGreaterThanOrEqual(0.7);
    for (const kind of ['drawer', 'leg', 'shelf', 'caster']) expect(made[kind]).toBeGreaterThan(RUNS / 10);
    for (const form of ['angle', 'trestle', 'post']) expect(made[form]).toBeGreaterThan(RUNS / 20);
  });

  for (const { says, law, faults } of LAWS) {
    it(says, () => {
      expect(broken[says]).toEqual([]);
    });
    for (const [fault, plant] of Object.entries(faults)) {
      it(`${says}: fails when ${fault}`, () => {
        const planted = first.map((sample) => sampleOf(sample.input, plant(sample)));
        expect(planted.flatMap(law).length).toBeGreaterThan(0);
      });
    }
  }
});
