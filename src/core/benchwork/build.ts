import type { Finding } from '../finding.ts';
import { placedBox } from '../geometry/solid.ts';
import { type Fastener, type HardwareUse, joinsPieces } from '../stock/fastener.ts';
import type { Envelope, Joint, Part } from '../stock/part.ts';
import { partSolid } from '../stock/solid.ts';
import type { Bench, Seam } from './bench.ts';
import { flangeFindings, gridFindings, seamFindings } from './checks.ts';
import { deckJoints, deckPieces, seamLines, seams } from './deck.ts';
import { fittings, siteOf, withCuts } from './fittings.ts';
import { flangeStrips } from './flanges.ts';
import { gathered } from './gather.ts';
import { type Grid, lappedGrid } from './grid.ts';
import { counted } from './hardware/count.ts';
import { deckScrews } from './hardware/deck-screws.ts';
import { finishUse, glueUse } from './hardware/glue.ts';
import { reachFindings } from './hardware/reach.ts';
import type { BenchInput, BenchworkInput, Material } from './input.ts';
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
  readonly envelopes: readonly Envelope[];
  readonly fasteners: readonly Fastener[];
  readonly hardware: readonly HardwareUse[];
  readonly findings: readonly Finding[];
};

/** A lapped grid from inputs without faults; null when an input it needs is missing. */
export function lappedBench(input: BenchworkInput, at: BenchInput): Built | null {
  const grid = lappedGrid(input, at);
  if (grid === null) return null;
  const fitted = fittings(siteOf(input, at, grid), at);
  const frame = withCuts([...sides(grid), ...ends(grid), ...acrossStruts(grid), ...alongStruts(grid)], fitted.cuts);
  const flanges = at.flangeStrips === null ? { instances: [], joints: [] } : flangeStrips(grid, at.flangeStrips);
  const lines = at.deck === null ? [] : seamLines(grid, at.deck);
  const deck = at.deck === null ? [] : deckPieces(grid, at.deck, lines);
  const borne = seams(grid, lines, at.id);
  const instances = [...frame, ...flanges.instances, ...deck, ...fitted.instances];
  const parts = gathered(withGrain(instances, input.materials), cutting(input.materials, at));
  const joints = [...frameJoints(grid), ...flanges.joints, ...deckJoints(boxes(deck), boxes(frame)), ...fitted.joints];
  const held = holding(input, at, { fitted, joints, instances, parts });
  return {
    bench: benchOf(grid, at),
    parts,
    joints,
    seams: borne,
    envelopes: fitted.envelopes,
    fasteners: held.fasteners,
    hardware: held.hardware,
    findings: [
      ...gridFindings(grid, at.id),
      ...(at.flangeStrips === null ? [] : flangeFindings(grid, at.id)),
      ...seamFindings(borne, grid),
      ...fitted.findings,
      ...held.findings,
      ...fitsStock(parts, input.materials),
    ],
  };
}

type Holding = {
  readonly fitted: ReturnType<typeof fittings>;
  readonly joints: readonly Joint[];
  readonly instances: readonly Instance[];
  readonly parts: readonly Part[];
};

/** Screws, bolts, glue and finish of the whole bench, counted where stock is known. */
function holding(input: BenchworkInput, at: BenchInput, { fitted, joints, instances, parts }: Holding) {
  const goods = input.goods ?? null;
  if (goods === null) return { fasteners: fitted.fasteners, hardware: fitted.hardware, findings: [] };
  const placed = boxes(instances);
  const deck = deckScrews(goods, joints, placed);
  const fasteners = [...deck.flatMap((one) => one.fasteners), ...fitted.fasteners];
  const spread = [...glueUse(goods, at.id, { joints, boxes: placed }), ...finishUse(goods, at.id, parts)];
  return {
    fasteners,
    hardware: counted(fasteners, [...fitted.hardware, ...spread]),
    findings: [...deck.flatMap((one) => one.findings), ...reachFindings(fasteners.filter(joinsPieces), placed)],
  };
}

function fitsStock(parts: readonly Part[], materials: BenchworkInput['materials']): readonly Finding[] {
  const goods = new Map(Object.values(materials).map(({ stock }) => [stock.id, stock]));
  return parts.flatMap((part) => {
    const stock = goods.get(part.stock);
    return stock === undefined || part.from !== undefined ? [] : stockFitFindings(part, stock);
  });
}

/** Gives every blank the grain its stock allows. */
function withGrain(instances: readonly Instance[], materials: BenchworkInput['materials']): readonly Instance[] {
  return instances.map((instance) => {
    const stock = materials[instance.material]?.stock;
    return stock === undefined
      ? instance
      : { ...instance, blank: { ...instance.blank, grain: grainFor(stock, instance.blank) } };
  });
}

function cutting(materials: BenchworkInput['materials'], at: BenchInput): Parameters<typeof gathered>[1] {
  const waits = ({ dated, measured }: Material['thickness']) => !(dated ?? measured);
  const stock = Object.entries(materials).map(
    ([
      role,
      {
        stock: { id },
        thickness,
      },
    ]) => [role, { id, cutAfterMeasuring: waits(thickness) }] as const,
  );
  return { bench: at.id, phase: at.phase, stock: Object.fromEntries(stock) };
}

function boxes(instances: readonly Instance[]) {
  return instances.map((instance) => ({ id: instance.id, box: placedBox(partSolid(instance), instance.pose) }));
}

function benchOf(grid: Grid, at: BenchInput): Bench {
  const { length, width, deckTop, sideTop, sideUnderside, strutUnderside } = grid;
  const { id, construction, place, phase } = at;
  return { id, construction, place, phase, length, width, deckTop, sideTop, sideUnderside, strutUnderside };
}
