import type { Plan } from '../plan.ts';
import type { BuiltWater, SceneryModel } from '../scenery/model.ts';
import type { BoardWork, LandWork } from '../steps/generated/land.ts';
import { TRACK_LAID } from '../steps/generated/laying.ts';
import type { WaterWork } from '../steps/generated/water.ts';
import { POWER_ON } from '../steps/powered.ts';
import type { Part } from '../stock/part.ts';

/** What the steps of the scenery follow from. */
export function landWork(plan: Plan, land: SceneryModel): LandWork {
  const written = (chapter: 'track' | 'wiring') => (plan[chapter]?.steps ?? []).map(({ id }) => `${chapter}.${id}`);
  const closing = new Set((plan.scenery?.steps ?? []).flatMap(({ closes, fits = [] }) => (closes ? fits : [])));
  const covers = (plan.scenery?.cover ?? []).flatMap((zone) => zone.of);
  return {
    layers: land.layers.map(({ id, pieces, from, to, room }) => ({
      id,
      pieces: pieces.map(({ part }) => part),
      from,
      to,
      room,
    })),
    boards: land.parts.filter(({ role }) => role === 'profile-board').flatMap((part) => boardsOf(part, closing)),
    waters: land.water.map((water) => waterWork(water, land)),
    covers: [...new Set(covers)],
    tunnels: (plan.scenery?.tunnels ?? []).map(({ id }) => id),
    lines: land.lines.length > 0,
    ballast: plan.scenery?.ballast ?? null,
    trees: land.zones.reduce((sum, { trees }) => sum + trees, 0),
    before: { track: [...written('track'), ...TRACK_LAID], wiring: [...written('wiring'), POWER_ON] },
  };
}

/** Boards as their step needs them; those that a closing step puts in place lift off. */
function boardsOf({ id: part, role, places }: Part, closing: ReadonlySet<string>): readonly BoardWork[] {
  return places.map(({ id, label }) => ({ id, label, lifts: [id, part, role].some((name) => closing.has(name)) }));
}

function waterWork({ id, under, pours, mixed, level, mass }: BuiltWater, { parts }: SceneryModel): WaterWork {
  const cuts = under.filter((one) => one.cut).map((one) => one.id);
  const { dam, deeper, length } = level;
  const tray = parts.filter((part) => part.role === 'tray' && part.id.startsWith(`tray.${id}-`)).map((part) => part.id);
  const pour = { pours: pours.count, each: pours.each, wait: pours.wait, litres: mixed / 1e6 };
  return { id, cuts, tray, mass, ...pour, dam, deeper, length };
}
