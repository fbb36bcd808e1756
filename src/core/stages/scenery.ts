import type { BenchworkModel } from '../benchwork/input.ts';
import type { CutSheet } from '../cutting/job.ts';
import type { Plan } from '../plan.ts';
import { evaluateScenery } from '../scenery/evaluate.ts';
import type { Headroom } from '../scenery/line-findings.ts';
import type { SceneryModel } from '../scenery/model.ts';
import { sceneryModel } from '../scenery/scenery.ts';
import type { KnownThickness } from '../stock/thickness.ts';
import type { TrackModel } from '../track/lay.ts';
import { evaluate } from '../units/evaluate.ts';
import { done, type Result } from '../units/problem.ts';
import type { Scope } from '../units/quantity.ts';
import { headroomOf, landLines } from './land-lines.ts';

/** What stands before the land: the benchwork, the names expressions may use, and the lines of track. */
export type BeforeLand = {
  readonly model: BenchworkModel;
  readonly scope: Scope;
  readonly track: TrackModel | null;
  readonly thicknesses?: readonly KnownThickness[];
};

/** Without lines nothing passes under a hill. */
const NO_TRAINS: Headroom = { train: 0, roof: 0, source: '' };

/** Stage 5: the land, and the cut-outs and notches it asks for; null for a notebook without scenery. */
export function sceneryStage(
  plan: Plan,
  { model, scope, track, thicknesses = [] }: BeforeLand,
): Result<SceneryModel | null> {
  if (plan.scenery === null) return done(null);
  const { scale } = plan.head;
  const trains = plan.trains.filter(({ id }) => plan.track?.trains.includes(id) ?? false);
  const benches = model.benches.map(({ id }) => id);
  const land = evaluateScenery(plan.scenery, {
    ...{ scope, scale, stock: plan.stock, benches },
    measured: measuredOf(thicknesses),
  });
  if (!land.ok) return land;
  return done(
    sceneryModel(land.value, {
      benches: model.benches,
      parts: model.parts,
      envelopes: model.envelopes,
      lines: track === null ? [] : landLines(track, land.value, { scale, trains }),
      scale,
      headroom: track === null ? NO_TRAINS : headroomOf(track, scale),
      reach: reachOf(plan, scope),
      mustMove: (plan.head.room?.['way-in'] ?? []).length > 0,
    }),
  );
}

/** Means of the sheets that were measured, by stock. */
function measuredOf(thicknesses: readonly KnownThickness[]): Readonly<Record<string, number>> {
  return Object.fromEntries(thicknesses.filter(({ measured }) => measured).map(({ stock, mean }) => [stock, mean]));
}

/** The reach in notebook.md, mm; a value that does not compute is told with the cover. */
function reachOf(plan: Plan, scope: Scope): number | null {
  const reach = plan.head.people?.reach;
  if (reach === undefined) return null;
  const amount = evaluate(reach, scope);
  return amount.ok ? amount.value.value : null;
}

/** The land with the foam its layers are cut from: whole sheets, once they are laid out. */
export function withSheets(land: SceneryModel | null, sheets: readonly CutSheet[], plan: Plan): SceneryModel | null {
  const foam = plan.stock.find(({ id }) => id === plan.scenery?.ground?.foam);
  if (land === null || foam?.kind !== 'sheet') return land;
  const own = sheets.filter(({ stock, piece }) => stock === foam.id && piece === undefined);
  const bought = own.reduce((sum, { length, width }) => sum + length * width * foam.thickness.listed, 0);
  const name = foam.name;
  const quantity = {
    stock: foam.id,
    name,
    for: 'layers',
    need: land.volumes.cut / 1e6,
    unit: 'litre',
    buy: own.length,
    buyUnit: 'sheet',
  } as const;
  return {
    ...land,
    volumes: { ...land.volumes, bought },
    quantities: own.length === 0 ? land.quantities : [quantity, ...land.quantities],
  };
}
