import type { Plan } from '../plan.ts';
import { type LayWork, type MarkWork, type RaiseWork, RISERS } from '../steps/generated/laying.ts';
import type { LaidLine, TrackModel } from '../track/lay.ts';
import { heightAt } from '../track/profile.ts';
import type { Section } from '../track/supplies.ts';
import { length, type Sentence, say } from '../units/say.ts';
import { showAngle } from '../units/show-amount.ts';

/** The track as its steps need it; `benches` are those the deck of which it lies on. */
export function layWork(plan: Plan, track: TrackModel, benches: readonly string[]): LayWork {
  const lines = track.lines.filter(({ phase }) => phase === 'now');
  const now = new Set(lines.map(({ id }) => id));
  const { supplies } = track;
  return {
    marks: lines.flatMap(({ id }) => marksOf(id, track)),
    slots: track.requests.map(({ by, part, size: [long = 0, wide = 0] }) => ({ by, part, size: [long, wide] })),
    raised: lines.flatMap(raisedOf),
    roadbed: supplies.roadbed,
    turnouts: track.turnouts
      .filter(({ line }) => now.has(line))
      .map(({ id, line, enters, leaves, enter }) => ({ id, line, at: enter === 'points' ? enters : leaves })),
    flex: supplies.stretches,
    sections: supplies.sections.map(sectionWords),
    pins: supplies.pins,
    trains: plan.track?.trains ?? [],
    before: benches.map((id) => `benchwork.${id}-trim`),
  };
}

function marksOf(line: string, { setOut }: TrackModel): readonly MarkWork[] {
  const own = setOut.filter((row) => row.line === line);
  const [first, last] = [own[0], own.at(-1)];
  return first === undefined || last === undefined
    ? []
    : [{ line, points: own.length, first: first.id, last: last.id }];
}

/** Places at most RISERS apart wherever the roadbed stands off the deck, and where it leaves and meets it. */
function raisedOf({ id, length: long, profile }: LaidLine): readonly RaiseWork[] {
  const count = Math.ceil(long / RISERS);
  const even = Array.from({ length: count + 1 }, (_, i) => (i * long) / count);
  const all = even.map((at) => ({ at, height: heightAt(profile, at) }));
  const stations = all.filter(
    ({ height }, i) => Math.abs(height) > TOLD && !(isLevel(all[i - 1], height) && isLevel(all[i + 1], height)),
  );
  return stations.length === 0 ? [] : [{ line: id, stations }];
}

/** Heights less apart than this are printed alike, mm. */
const TOLD = 0.05;

function isLevel(beside: { readonly height: number } | undefined, height: number): boolean {
  return beside !== undefined && Math.abs(beside.height - height) < TOLD;
}

function sectionWords({ kind, length: long, radius, through, count }: Section): Sentence {
  const many = `${count} x`;
  if (kind === 'straight') return say`${many} straight of ${length(long ?? 0)}.`;
  return say`${many} curve of ${length(radius ?? 0)} through ${showAngle(through ?? 0)}.`;
}
