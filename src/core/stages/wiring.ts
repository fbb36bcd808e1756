import type { BenchworkModel } from '../benchwork/input.ts';
import { standing, toWorld } from '../geometry/pose.ts';
import type { Vector } from '../geometry/shapes.ts';
import type { Plan } from '../plan.ts';
import type { SceneryModel } from '../scenery/model.ts';
import type { Envelope, Part } from '../stock/part.ts';
import { evaluate } from '../units/evaluate.ts';
import { done, type Result } from '../units/problem.ts';
import type { Scope } from '../units/quantity.ts';
import { evaluateWiring } from '../wiring/evaluate.ts';
import { railPlan } from '../wiring/from-track.ts';
import type { LiftInput, WiredSpace, WiringGround } from '../wiring/input.ts';
import { type WiringModel, wiringModel } from '../wiring/wiring.ts';
import { penetrationsStage } from './penetrations.ts';
import type { TrackStage } from './track.ts';

/** What stands before the wiring: benchwork, track and land as computed, and the names expressions may use. */
export type BeforeWires = {
  readonly model: BenchworkModel;
  readonly scope: Scope;
  readonly rails: TrackStage | null;
  readonly land: Pick<SceneryModel, 'water' | 'requests' | 'parts'> | null;
};

/** Everything of no track at all. */
const NO_TRACK = { lines: [], turnouts: [] };

/** How far a person reaches in when nobody said; common practice, no source. mm */
const USUAL_REACH = 600;

/** Stage 6: the wiring, and the holes it asks of the struts; null for a notebook without the chapter. */
export function wiringStage(plan: Plan, before: BeforeWires): Result<WiringModel | null> {
  if (plan.wiring === null) return done(null);
  const { scope, rails } = before;
  const laid = rails?.model ?? NO_TRACK;
  const input = evaluateWiring(plan.wiring, {
    ...{ scope, stock: plan.stock, scale: plan.head.scale },
    trains: plan.trains.filter(({ id }) => plan.track?.trains.includes(id) ?? false),
    lines: laid.lines,
    rails: railPlan({ lines: laid.lines, turnouts: laid.turnouts, pieces: rails?.input.lines ?? [] }),
    lifts: liftsOf(plan, scope),
    ground: groundOf(plan, before),
    show: plan.head.show,
  });
  return input.ok ? done(wiringModel(input.value)) : input;
}

/** Bridges that lift; a value that does not compute is told with the scenery. */
function liftsOf(plan: Plan, scope: Scope): readonly LiftInput[] {
  return (plan.scenery?.bridges ?? []).flatMap(({ id, line, from, to, lifts }) => {
    const [a, b] = [evaluate(from, scope), evaluate(to, scope)];
    return lifts === true && a.ok && b.ok ? [{ id, line, from: a.value.value, to: b.value.value }] : [];
  });
}

function groundOf(plan: Plan, { model, scope, rails, land }: BeforeWires): WiringGround {
  const reach = plan.head.people?.reach;
  const reached = reach === undefined ? null : evaluate(reach, scope);
  return {
    benches: model.benches,
    fasteners: model.fasteners,
    parts: cutParts({ model, rails, land }),
    spaces: [
      ...model.envelopes.map((envelope) => spaceOf(envelope, model)),
      ...(rails?.model.envelopes ?? []).map(({ id, kind, min, max }): WiredSpace => ({ id, kind, box: { min, max } })),
      ...waters(land, model),
    ],
    reach: reached?.ok === true ? reached.value.value : USUAL_REACH,
  };
}

/** The parts as track and land leave them, with the land's own, so that no hole is drilled into another cut. */
function cutParts({ model, rails, land }: Pick<BeforeWires, 'model' | 'rails' | 'land'>): readonly Part[] {
  const requests = [...(rails?.model.requests ?? []), ...(land?.requests ?? [])];
  return [...penetrationsStage(model, requests).parts, ...(land?.parts ?? [])];
}

/** An envelope of a bench where that stands; the bench is the one whose parts it names, else the first. */
function spaceOf({ id, of, kind, min, max }: Envelope, { benches, parts }: BenchworkModel): WiredSpace {
  const part = parts.find(
    ({ id: own, places }) => own.startsWith(of) || places.some((place) => place.id.startsWith(of)),
  );
  const bench =
    benches.find((one) => one.id === part?.bench) ?? benches.find((one) => of.startsWith(`${one.id}.`)) ?? benches[0];
  const pose = standing([bench?.place.x ?? 0, bench?.place.y ?? 0], bench?.place.turn ?? 0);
  const corners = [min, max, [min[0], max[1], min[2]], [max[0], min[1], max[2]]] as const;
  return { id, kind, box: boxOf(corners.map((corner) => toWorld(pose, corner))) };
}

function boxOf(corners: readonly Vector[]): WiredSpace['box'] {
  const edge = (pick: (...all: number[]) => number, i: 0 | 1 | 2) => pick(...corners.map((corner) => corner[i]));
  return {
    min: [edge(Math.min, 0), edge(Math.min, 1), edge(Math.min, 2)],
    max: [edge(Math.max, 0), edge(Math.max, 1), edge(Math.max, 2)],
  };
}

/** Water below the deck's top, down to its floor's underside. */
function waters(land: BeforeWires['land'], { benches }: BenchworkModel): readonly WiredSpace[] {
  const deckTop = benches[0]?.deckTop ?? 0;
  return (land?.water ?? []).map(({ id, outline, underside }) => {
    const corners = outline.flatMap(([x, y]): readonly Vector[] => [
      [x, y, deckTop],
      [x, y, deckTop + underside],
    ]);
    return { id, kind: 'water', box: boxOf(corners) };
  });
}
