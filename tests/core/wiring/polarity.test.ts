import { describe, expect, it } from 'vitest';
import { metalOf } from '../../../src/core/wiring/metal.ts';
import { reversingSections, shortedSegments } from '../../../src/core/wiring/polarity.ts';
import { graphOf } from '../../../src/core/wiring/rail-graph.ts';
import { knownGraphs } from './rail-graphs.ts';

describe('reversing sections', () => {
  for (const { name, sections, graph } of knownGraphs) {
    it(`${name} needs ${sections}`, () => {
      const answer = reversingSections(graph);
      expect(answer.sections).toHaveLength(sections);
      expect(answer.proved).toBe(true);
    });

    it(`${name}, gapped there, has no rail that meets its opposite`, () => {
      const { sections: found } = reversingSections(graph);
      expect(shortedSegments(graph, new Set(found.map(({ id }) => id)))).toEqual([]);
      expect(shortedSegments(graph, new Set()).length > 0).toBe(sections > 0);
    });
  }

  it('one gap too few leaves a short: the check sees a planted fault', () => {
    for (const { graph } of knownGraphs.filter(({ sections }) => sections > 0)) {
      const [, ...rest] = reversingSections(graph).sections;
      expect(shortedSegments(graph, new Set(rest.map(({ id }) => id))).length).toBeGreaterThan(0);
    }
  });

  it('of equal answers takes the longest section', () => {
    const metal = metalOf('W', [
      { from: 'points', to: 'straight' },
      { from: 'points', to: 'branch' },
    ]);
    const joint = { id: 'J', inlets: ['J.in'], outlets: ['J.out'] };
    const graph = graphOf(
      [...metal, joint],
      [
        { id: 'short', from: 'W.straight', to: 'J.in', length: 300 },
        { id: 'long', from: 'J.out', to: 'W.branch', length: 2000 },
      ],
    );
    expect(reversingSections(graph).sections.map(({ id }) => id)).toEqual(['long']);
  });
});

describe('the metal of a turnout', () => {
  it('of a slip is one piece, of a crossing two', () => {
    const across = [
      { from: 'points', to: 'straight' },
      { from: 'cross', to: 'branch' },
    ];
    expect(metalOf('C', across).map(({ id }) => id)).toEqual(['C', 'C/2']);
    const slip = metalOf('S', [...across, { from: 'points', to: 'branch' }]);
    expect(slip).toEqual([{ id: 'S', inlets: ['S.points', 'S.cross'], outlets: ['S.straight', 'S.branch'] }]);
  });

  it('throws for rail laid to an end that nobody has', () => {
    expect(() => graphOf([], [{ id: 'x', from: 'A.points', to: 'B.points', length: 1 }])).toThrow('no end A.points');
  });
});
