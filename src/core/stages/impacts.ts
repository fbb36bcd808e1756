import { headValues } from '../head.ts';
import { byPiece } from '../log/groups.ts';
import { historyOf } from '../log/history.ts';
import { type Impact, impact, type Model } from '../log/impact.ts';
import { instanceStates } from '../log/part-state.ts';
import type { LogRecord } from '../log/record.ts';
import { inLogOrder } from '../log/records.ts';
import type { Plan } from '../plan.ts';
import type { Step } from '../steps/step.ts';
import { benchworkStage } from './benchwork.ts';
import { readLog } from './log.ts';
import { type Rewound, rewound } from './rewound.ts';
import { cuttingStage } from './timber.ts';

/**
 * What one entry's changes did to the benchwork. `told` says why there is no comparison, or what of the old plan could not be put
 * back; null when the whole of it could.
 */
export type EntryImpact = { readonly entry: string; readonly impact: Impact | null; readonly told: string | null };

type Known = { readonly plan: Plan; readonly records: readonly LogRecord[]; readonly steps: readonly Step[] };

/** Parts and sheets of a plan; null, with the first reason, when it does not compute. */
function modelOf(plan: Plan): Model | string {
  const head = headValues(plan.head);
  const bench = benchworkStage(plan, readLog(plan).readings, head);
  if (!bench.ok) return bench.faults[0]?.what ?? 'it does not compute';
  const { parts } = bench.value.model;
  return { parts, bounds: cuttingStage(parts, plan, head).bounds };
}

/** Pieces made before an entry, of the parts as they were then. */
function madeBefore({ records, steps }: Known, model: Model, index: number): ReadonlySet<string> {
  const states = instanceStates(model.parts, historyOf(byPiece(records.slice(0, index), model.parts), steps));
  return new Set(states.filter(({ made }) => made).map(({ instance }) => instance));
}

function toldOf(before: Rewound, after: Rewound): string | null {
  // The comparison is of the benchwork: what other chapters lost does not touch it.
  const lost = [...new Set([...before.lost, ...after.lost])].filter((path) => /^(?:benchwork|notebook)\./.test(path));
  return lost.length === 0 ? null : `the plan has no more what these were: ${lost.join(', ')}`;
}

function impactOf(known: Known, index: number): EntryImpact {
  const { plan, records } = known;
  const entry = records[index]?.id ?? '';
  const [after, before] = [rewound(plan, records, index + 1), rewound(plan, records, index)];
  // With the inputs of that date: what was measured on the day counts on both sides.
  const [now, old] = [modelOf(after.plan), modelOf({ ...before.plan, log: after.plan.log })];
  if (typeof old === 'string') return { entry, impact: null, told: `the plan before it no longer computes: ${old}` };
  if (typeof now === 'string') return { entry, impact: null, told: `the plan of that day no longer computes: ${now}` };
  return { entry, impact: impact(old, now, madeBefore(known, old, index)), told: toldOf(before, after) };
}

/** For every entry with a change, oldest first: the benchwork after it against the benchwork before it. */
export function changeImpacts(plan: Plan, steps: readonly Step[]): EntryImpact[] {
  const records = inLogOrder(readLog(plan).records);
  const known: Known = { plan, records, steps };
  return records.flatMap((record, index) => (record.changes.length === 0 ? [] : [impactOf(known, index)]));
}
