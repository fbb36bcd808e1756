import { describe, expect, test } from 'vitest';
import { CAUTIONS, cautionsFor } from '../../../src/core/steps/cautions.ts';
import { childAt, toolNotForChild } from '../../../src/core/steps/child-tools.ts';

describe('cautions', () => {
  test.each([
    ['table-saw', 'table-saw'],
    ['router', 'router'],
    ['circular-saw', 'circular-saw'],
    ['track-saw', 'circular-saw'],
    ['disc-sander', 'disc-sander'],
    ['sandpaper', 'wood-dust'],
    ['mdf', 'mdf'],
    ['epoxy', 'epoxy'],
    ['resin', 'resin'],
    ['hot-wire', 'hot-wire'],
    ['soldering-iron', 'soldering'],
    ['razor-saw', 'hand-saws'],
    ['razor-saw', 'flying-ends'],
    ['rail-cutter', 'flying-ends'],
    ['keyhole-saw', 'hand-saws'],
    ['water', 'wet-by-wires'],
    ['sealer', 'finish'],
    ['power-supply', 'unplug'],
    ['power-supply', 'mains'],
    ['casters', 'tip-over'],
    ['drawer', 'drawer-fingers'],
    ['small-parts', 'small-parts'],
    ['full-sheet', 'lifting'],
    ['frame-turning', 'frame-turning'],
    ['plaster-cloth', 'plaster'],
    ['button-cell', 'magnets'],
    ['superglue', 'superglue'],
    ['craft-knife', 'knives'],
    ['spray-paint', 'spray-paint'],
    ['static-grass', 'static-grass'],
  ])('%s brings %s', (word, id) => {
    expect(cautionsFor([word]).map((caution) => caution.id)).toContain(id);
  });

  test('say something, name a body, and come once each', () => {
    for (const caution of CAUTIONS) {
      expect(caution.text.length).toBeGreaterThan(20);
      expect(caution.source.length).toBeGreaterThan(5);
    }
    expect(new Set(CAUTIONS.map((caution) => caution.id)).size).toBe(CAUTIONS.length);
    expect(cautionsFor(['pencil'])).toEqual([]);
  });

  // NIOSH Pocket Guide to Chemical Hazards: recommended limit for wood dust 1 mg/m3.
  test('carry the published figure', () => {
    expect(cautionsFor(['table-saw']).find((caution) => caution.id === 'wood-dust')?.text).toContain(
      '1 mg in a cubic metre',
    );
  });

  test('keep a child from machines where nobody says otherwise', () => {
    expect(childAt(['pencil', 'table-saw'])).toBe('away');
    expect(childAt(['pencil'])).toBe('watches');
    expect(toolNotForChild('does with an adult', ['pencil', 'router'])).toEqual({ tool: 'router', most: 'watches' });
    expect(toolNotForChild('watches', ['router'])).toBeNull();
    expect(toolNotForChild('does alone', ['pencil'])).toBeNull();
  });
});
