import type { BenchworkModel } from '../benchwork/input.ts';
import type { Finding } from '../finding.ts';
import type { Plan } from '../plan.ts';
import { evaluateTrack } from '../track/evaluate.ts';
import type { TrackInput } from '../track/input.ts';
import { layTrack, type TrackModel } from '../track/lay.ts';
import { done, failed, type Result } from '../units/problem.ts';
import type { Scope } from '../units/quantity.ts';

/** The track as written, as laid, and what is to be said of it. */
export type TrackStage = {
  readonly input: TrackInput;
  readonly model: TrackModel;
  readonly findings: readonly Finding[];
};

/** Stage 4: lines, turnouts and what they ask of the benchwork; null for a notebook without track. */
export function trackStage(
  plan: Plan,
  { model, scope }: { readonly model: BenchworkModel; readonly scope: Scope },
): Result<TrackStage | null> {
  if (plan.track === null) return done(null);
  const { benches, parts, envelopes } = model;
  const { scale } = plan.head;
  const ground = { benches, parts, envelopes };
  const input = evaluateTrack(plan.track, { scope, scale, stock: plan.stock, trains: plan.trains, ground });
  if (!input.ok) return input;
  const { model: laid, findings, faults } = layTrack(input.value);
  return faults.length > 0 ? failed(...faults) : done({ input: input.value, model: laid, findings });
}
