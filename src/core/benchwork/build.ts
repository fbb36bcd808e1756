import type { Finding } from '../finding.ts';
import { placedBox } from '../geometry/solid.ts';
import type { Joint, Part } from '../stock/part.ts';
import { partSolid } from '../stock/solid.ts';
import type { Bench, Seam } from './bench.ts';
import { flangeFindings, gridFindings, seamFindings } from './checks.ts';
import { deckJoints, deckPieces, seamLines, seams } from './deck.ts';
import { flangeStrips } from './flanges.ts';
import { gathered } from './gather.ts';
import { type Grid, lappedGrid } from './grid.ts';
import type { BenchInput, BenchworkInput } from './input.ts';
import type { Instance } from './instance.ts';
import { frameJoints } from './joints.ts';
import { ends, sides } from './rails.ts';
import { grainFor, stockFitFindings } from './stock-fit.ts';
import { acrossStruts, alongStruts } from './struts.ts';

/** One bench, computed; ids and labels still without their bench. */
export type Built = {
  readonly bench: Bench;
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly seams: readonly Seam[];
  readonly findings: readonly Finding[];
};

/** A lapped grid from inputs without faults; null when an input it needs is missing. */
export function lappedBench(input: BenchworkInput, at: BenchInput): Built | null {
  const grid = lappedGrid(input, at);
  if (grid === null) return null;
  const frame = [...sides(grid), ...ends(grid), ...acrossStruts(grid), ...alongStruts(grid)];
  const flanges = at.flangeStrips === null ? { instances: [], joints: [] } : flangeStrips(grid, at.flangeStrips);
  const lines = at.deck === null ? [] : seamLines(grid, at.deck);
  const deck = at.deck === null ? [] : deckPieces(grid, at.deck, lines);
  const borne = seams(grid, lines, at.id);
  const parts = gathered(withGrain([...frame, ...flanges.instances, ...deck], grid), cutting(grid, at));
  return {
    bench: benchOf(grid, at),
    parts,
    joints: [...frameJoints(grid), ...flanges.joints, ...deckJoints(boxes(deck), boxes(frame))],
    seams: borne,
    findings: [
      ...gridFindings(grid, at.id),
      ...(at.flangeStrips === null ? [] : flangeFindings(grid, at.id)),
      ...seamFindings(borne, grid),
      ...parts.flatMap((part) =>
        stockFitFindings(part, part.role === 'deck' && grid.deck !== null ? grid.deck.stock : grid.frame.stock),
      ),
    ],
  };
}

/** Gives every blank the grain its stock allows. */
function withGrain(instances: readonly Instance[], grid: Grid): readonly Instance[] {
  return instances.map((instance) => {
    const stock = instance.material === 'deck' && grid.deck !== null ? grid.deck.stock : grid.frame.stock;
    return { ...instance, blank: { ...instance.blank, grain: grainFor(stock, instance.blank) } };
  });
}

function cutting(grid: Grid, at: BenchInput): Parameters<typeof gathered>[1] {
  const waits = ({ dated, measured }: { readonly dated?: boolean; readonly measured: boolean }) => !(dated ?? measured);
  const frame = waits(grid.frame.thickness);
  const deck =
    grid.deck === null
      ? { id: '', cutAfterMeasuring: false }
      : { id: grid.deck.stock.id, cutAfterMeasuring: waits(grid.deck.thickness) };
  return {
    bench: at.id,
    phase: at.phase,
    stock: { frame: { id: grid.frame.stock.id, cutAfterMeasuring: frame }, deck },
  };
}

function boxes(instances: readonly Instance[]) {
  return instances.map((instance) => ({ id: instance.id, box: placedBox(partSolid(instance), instance.pose) }));
}

function benchOf(grid: Grid, at: BenchInput): Bench {
  const { length, width, deckTop, sideTop, sideUnderside, strutUnderside } = grid;
  const { id, construction, place, phase } = at;
  return { id, construction, place, phase, length, width, deckTop, sideTop, sideUnderside, strutUnderside };
}
