import { describe, expect, test } from 'vitest';
import { type LandWork, landDrafts } from '../../../src/core/steps/generated/land.ts';
import { planSteps } from '../../../src/core/steps/plan.ts';
import type { Step } from '../../../src/core/steps/step.ts';
import { spoken } from '../../../src/core/units/say.ts';

const work: LandWork = {
  layers: [
    {
      id: 'layer.1',
      pieces: ['layer.1-1', 'layer.1-2'],
      from: 0,
      to: 25,
      room: [{ tunnel: 'bore', takes: 'top', deep: 7 }],
    },
    { id: 'layer.2', pieces: ['layer.2'], from: 25, to: 50, room: [{ tunnel: 'bore', takes: 'all', deep: 25 }] },
  ],
  boards: [
    { id: 'board.back', label: 'P-back', lifts: true },
    { id: 'board.left', label: 'P-left', lifts: false },
  ],
  waters: [
    {
      id: 'pond',
      cuts: ['strut.across-1'],
      tray: ['tray.pond-floor', 'tray.pond-wall-1'],
      mass: 1.43,
      pours: 4,
      each: 2.5,
      wait: 4 * 1440,
      litres: 0.165,
      dam: 14.9,
      deeper: 1.9,
      length: 180,
    },
  ],
  covers: ['plaster-cloth', 'ground-foam'],
  tunnels: ['bore'],
  lines: true,
  ballast: 'fine-ballast',
  trees: 5,
  before: { track: ['track.draw'], wiring: ['wiring.trip-test'] },
};

const written = (id: string) => ({ id, do: id });
const planned = (land: LandWork, scenery: readonly ReturnType<typeof written>[] = []) =>
  planSteps({
    ...{ parts: [], joints: [], frames: [], fasteners: [], hardware: [], stock: [], scope: {}, land },
    chapters: [
      { chapter: 'track', steps: [written('draw')] },
      { chapter: 'wiring', steps: [written('trip-test')] },
      { chapter: 'scenery', steps: scenery },
    ],
  });

const ids = (steps: readonly Step[]) => steps.map(({ id }) => id);
const named = (steps: readonly Step[], id: string) => steps.find((step) => step.id === id);

describe('the order of work on the land', () => {
  const { steps, faults } = planned(work);
  const before = (first: string, then: string) => ids(steps).indexOf(first) < ids(steps).indexOf(then);

  test('what a tunnel takes off a layer is carved while it still lies on the bench', () => {
    const says = JSON.stringify(named(steps, 'scenery.cut-layers'));
    expect(says).toContain('off its ');
    expect(says.match(/bore/g)).toHaveLength(1);
  });

  test("a tray is sawn and glued in its own step, with its mass told and the saw's cautions", () => {
    const step = named(steps, 'scenery.pond-tray');
    expect(step?.makes).toEqual(['tray.pond-floor', 'tray.pond-wall-1']);
    expect(step?.child).toBe('away');
    expect(step?.cautions.length).toBeGreaterThan(named(steps, 'scenery.cover-ground')?.cautions.length ?? 0);
    expect(JSON.stringify(step)).toContain('1.4 kg');
  });

  test('the board that is the way in stands on dowels, the other is glued and screwed', () => {
    const says = (named(steps, 'scenery.profile-boards')?.lines ?? []).map((line) => spoken(line, (mm) => `${mm} mm`));
    expect(says).toHaveLength(3);
    expect(says[1]).toBe('Glue and screw P-left from under the deck, the outer face flush with the frame.');
    expect(says[2]).toMatch(/^No glue and no screw under P-back, .* dowels of 6 mm/);
    const fast = planned({ ...work, boards: [{ id: 'board.back', label: 'P-back', lifts: false }] }).steps;
    expect(JSON.stringify(named(fast, 'scenery.profile-boards'))).not.toContain('dowel');
  });

  test('a step that closes a hill behind glued boards and names no piece is told, and not once a board lifts', () => {
    const closer = [{ ...written('wall'), closes: 'hill' }];
    const rules = (lifts: boolean) =>
      planned({ ...work, boards: [{ id: 'board.back', label: 'P-back', lifts }] }, closer).findings.map(
        ({ rule }) => rule,
      );
    expect(rules(false)).toContain('way-in-glued');
    expect(rules(true)).not.toContain('way-in-glued');
  });

  test('no hill before tunnel track is proved, no ballast before trials and trip tests, rails masked before plaster', () => {
    expect(faults).toEqual([]);
    for (const [first, then] of [
      ['track.draw', 'scenery.prove-tunnel-track'],
      ['wiring.trip-test', 'scenery.prove-tunnel-track'],
      ['scenery.prove-tunnel-track', 'scenery.cut-layers'],
      ['scenery.cut-layers', 'scenery.stack-layers'],
      ['scenery.mask-rails', 'scenery.plaster'],
      ['wiring.trip-test', 'scenery.ballast'],
      ['scenery.pond-tray', 'scenery.pond-pour'],
    ] as const) {
      expect(before(first, then), `${first} before ${then}`).toBe(true);
    }
  });

  test('cautions stand where the material is: fume, plaster, resin', () => {
    const cautions = (id: string) => named(steps, id)?.cautions.map((caution) => caution.id);
    expect(cautions('scenery.cut-layers')).toContain('hot-wire');
    expect(cautions('scenery.plaster')).toContain('plaster');
    expect(cautions('scenery.pond-pour')).toContain('resin');
    expect(named(steps, 'scenery.pond-pour')).toMatchObject({ wait: 4 * 1440, child: 'away', where: 'room' });
  });

  test('the figures are in the words, and the glue that melts foam is named', () => {
    const words = steps.flatMap(({ lines }) => lines.map((line) => spoken(line, (mm) => `${mm} mm`))).join('\n');
    expect(words).toContain('4 pours of 2.5 mm');
    expect(words).toContain('layer.2: 1 piece, from 25 mm to 50 mm');
    expect(words).toMatch(/never polyurethane or PIR/);
    expect(words).toMatch(/melt foam/);
  });

  test("a written step takes over the generated one of its name, and others come before the chapter's work", () => {
    const own = planned(work, [written('mock-up'), written('plaster')]).steps;
    expect(ids(own).filter((id) => id === 'scenery.plaster')).toHaveLength(1);
    expect(named(own, 'scenery.plaster')).toMatchObject({ generated: false, wait: 1440 });
    expect(ids(own).indexOf('scenery.mock-up')).toBeLessThan(ids(own).indexOf('scenery.cut-layers'));
  });

  test('nothing to build makes no step', () => {
    const nothing = { ...work, layers: [], boards: [], waters: [], covers: [], tunnels: [], ballast: null, trees: 0 };
    expect(landDrafts(nothing)).toEqual([]);
  });
});
