import { describe, expect, it } from 'vitest';
import { headValues } from '../../src/core/head.ts';
import { benchworkStage } from '../../src/core/stages/benchwork.ts';
import { readLog } from '../../src/core/stages/log.ts';
import { sceneryStage } from '../../src/core/stages/scenery.ts';
import { trackStage } from '../../src/core/stages/track.ts';
import { wiringStage } from '../../src/core/stages/wiring.ts';
import { loopResistance, network } from '../../src/core/wiring/circuit.ts';
import { wiringModel } from '../../src/core/wiring/wiring.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { table } from '../core/wiring/tables.ts';

/** Median time of a run, ms. */
function timed(run: () => void, runs = 9): number {
  run();
  const times = Array.from({ length: runs }, () => {
    const from = performance.now();
    run();
    return performance.now() - from;
  });
  return times.toSorted((a, b) => a - b)[Math.floor(runs / 2)] ?? 0;
}

/** A ladder of one-ohm rungs. */
const ladder = (rungs: number) =>
  Array.from({ length: rungs }, (_, i) => [
    { id: `s${i}`, from: `a${i + 1}`, to: `a${i}`, ohm: 1 },
    { id: `r${i}`, from: `a${i}`, to: 'ground', ohm: 1 },
  ]).flat();

describe('wiring', () => {
  it('solves circuits in time that grows no faster than the cube of their nodes', () => {
    const solve = (n: number) =>
      timed(() => loopResistance(network({ source: 'ground', branches: ladder(n) }), `a${n}`), 5);
    const [small, large] = [solve(60), solve(240)];
    console.log(`240 nodes take ${(large / small).toFixed(1)} times as long as 60`);
    expect(large / small).toBeLessThan(4 ** 3 * 2);
  });

  it('routes and checks bittern-basin', async () => {
    const plan = readContent(await loadWithShipped('content', 'content')).plans.find(
      ({ slug }) => slug === 'bittern-basin',
    );
    if (plan === undefined) throw new Error('no demo notebook');
    const bench = benchworkStage(plan, readLog(plan).readings, headValues(plan.head));
    if (!bench.ok) throw new Error('the demo bench does not compute');
    const { model, scope } = bench.value;
    const rails = trackStage(plan, { model, scope });
    if (!rails.ok) throw new Error('the demo track does not lie');
    const land = sceneryStage(plan, { model, scope, track: rails.value?.model ?? null });
    if (!land.ok) throw new Error('the demo land does not lie');
    const before = { model, scope, rails: rails.value, land: land.value };
    const whole = timed(() => wiringStage(plan, before), 9);
    const one = timed(() => wiringModel(table), 5);
    console.log(
      `bittern-basin: ${whole.toFixed(1)} ms; a table of four bays with a loop: ${one.toFixed(1)} ms; ratio ${(whole / one).toFixed(1)}`,
    );
    expect(whole).toBeGreaterThan(0);
  });
});
