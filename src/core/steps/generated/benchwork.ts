import type { Joint, Part } from '../../stock/part.ts';
import { assembling, type Frame } from './assembling.ts';
import type { Draft } from './draft.ts';
import { finishing } from './finishing.ts';
import { marking } from './marking.ts';
import { routing } from './routing.ts';
import { sawing } from './sawing.ts';
import { shaping } from './shaping.ts';

/** What the steps of the benchwork are computed from; parts kept for later are left out. */
export type Timber = {
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly frames: readonly Frame[];
};

/** The steps of the benchwork in the order of the bench: machining of all benches at one set-up each, then bench by bench. */
export function benchworkDrafts({ parts, joints, frames }: Timber): Draft[] {
  const now = parts.filter((part) => part.chapter === 'benchwork' && part.phase === 'now' && part.places.length > 0);
  if (now.length === 0) return [];
  const kits = frames.map((frame) => ({ frame, joints, parts: now.filter((part) => part.bench === frame.id) }));
  const machining = [...sawing(now), ...marking(now), ...routing(now), ...shaping(now)];
  return [...machining, ...kits.flatMap((kit) => [...assembling(kit), ...finishing(kit)])];
}
