import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reversingSections, shortedSegments } from '../../src/core/wiring/polarity.ts';
import type { RailEdge, RailGraph } from '../../src/core/wiring/rail-graph.ts';

const SEED = 20261125;

function graphs({ most, edges }: { readonly most: number; readonly edges: number }): fc.Arbitrary<RailGraph> {
  return fc.integer({ min: 1, max: most }).chain((count) =>
    fc
      .array(
        fc.record({
          a: fc.nat(count - 1),
          b: fc.nat(count - 1),
          same: fc.boolean(),
          length: fc.integer({ min: 100, max: 3000 }),
        }),
        {
          minLength: 1,
          maxLength: edges,
        },
      )
      .map((all) => ({
        vertices: Array.from({ length: count }, (_, i) => `v${i}`),
        edges: all.map(
          ({ a, b, same, length }, i): RailEdge => ({ id: `e${i}`, a: `v${a}`, b: `v${b}`, same, length }),
        ),
      })),
  );
}

const small = fc.sample(graphs({ most: 6, edges: 8 }), { numRuns: 400, seed: SEED });
const large = fc.sample(graphs({ most: 30, edges: 40 }), { numRuns: 60, seed: SEED });

/** The fewest segments to leave out, by trying every set of them and following the metal. */
function fewest(graph: RailGraph): number {
  let best = graph.edges.length;
  for (let set = 0; set < 2 ** graph.edges.length; set += 1) {
    const out = graph.edges.filter((_, i) => ((set >> i) & 1) === 1).map(({ id }) => id);
    if (out.length < best && shortedSegments(graph, new Set(out)).length === 0) best = out.length;
  }
  return best;
}

function isClear(graph: RailGraph, sections: readonly RailEdge[]): boolean {
  return shortedSegments(graph, new Set(sections.map(({ id }) => id))).length === 0;
}

describe('rails with random joints', () => {
  it('conflict in a good share of samples', () => {
    const conflicts = small.filter((graph) => !isClear(graph, [])).length;
    console.log(`random rails: ${small.length} valid of ${small.length}, ${conflicts} with a conflict`);
    expect(conflicts / small.length).toBeGreaterThan(0.5);
  });

  it('the fewest sections are what trying every set finds', () => {
    expect(small.filter((graph) => reversingSections(graph).sections.length !== fewest(graph))).toEqual([]);
  });

  it('no rail meets its opposite once the sections are isolated, large ones too', () => {
    expect([...small, ...large].filter((graph) => !isClear(graph, reversingSections(graph).sections))).toEqual([]);
  });

  it('planted fault: a section forgotten is seen', () => {
    const forgetful = small.filter(
      (graph) =>
        reversingSections(graph).sections.length > 0 && !isClear(graph, reversingSections(graph).sections.slice(1)),
    );
    expect(forgetful.length).toBe(small.filter((graph) => reversingSections(graph).sections.length > 0).length);
  });

  it('turning a line round changes nothing', () => {
    const turned = (graph: RailGraph) => ({
      ...graph,
      edges: graph.edges.map((edge) => ({ ...edge, a: edge.b, b: edge.a })),
    });
    expect(
      small.filter(
        (graph) => reversingSections(turned(graph)).sections.length !== reversingSections(graph).sections.length,
      ),
    ).toEqual([]);
  });
});
