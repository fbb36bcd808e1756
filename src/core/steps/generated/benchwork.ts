import type { Fastener, HardwareUse } from '../../stock/fastener.ts';
import type { Stock } from '../../stock/goods.ts';
import type { Joint, Part } from '../../stock/part.ts';
import { assembling, type Frame, type Kit } from './assembling.ts';
import type { Draft } from './draft.ts';
import { drawerDrafts, shelfDrafts, spacerDrafts } from './drawers.ts';
import { finishing } from './finishing.ts';
import { legDrafts } from './legs.ts';
import { marking } from './marking.ts';
import { routing } from './routing.ts';
import { sawing } from './sawing.ts';
import { shaping } from './shaping.ts';

/** What the steps of the benchwork are computed from; parts kept for later are left out. */
export type Timber = {
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly frames: readonly Frame[];
  /** screws, bolts and what else is counted; absent: the steps name none */
  readonly fasteners?: readonly Fastener[];
  readonly hardware?: readonly HardwareUse[];
  /** the stock of each role that sheets or boards are cut for; absent: nothing is measured */
  readonly materials?: Readonly<Record<string, string>>;
  /** tells nuts from other hardware */
  readonly stock?: readonly Stock[];
};

/** The steps of the benchwork in the order of the bench: machining of all benches at one set-up each, then bench by bench. */
export function benchworkDrafts(timber: Timber): Draft[] {
  const { parts, joints, frames, fasteners = [], hardware = [], stock = [], materials = {} } = timber;
  const now = parts.filter((part) => part.chapter === 'benchwork' && part.phase === 'now' && part.places.length > 0);
  if (now.length === 0) return [];
  const kits = frames.map(
    (frame): Kit => ({
      frame,
      joints,
      parts: now.filter((part) => part.bench === frame.id),
      fasteners,
      hardware,
      stock,
    }),
  );
  const sawn = now.filter((part) => part.from === undefined);
  const machining = [...sawing(sawn, materials), ...marking(now), ...routing(now), ...shaping(now)];
  return [...machining, ...kits.flatMap((kit) => fitted(kit))];
}

/**
 * The frame, its legs while it lies upside down anyway, then what hangs in it before its deck goes on, the deck, and what
 * is hung after: so it is turned over once, and before it is heavy.
 */
function fitted(kit: Kit): Draft[] {
  const frame = assembling(kit);
  const deck = frame.findIndex(({ id }) => id === `${kit.frame.id}-deck`);
  const cut = deck < 0 ? frame.length : deck;
  const inside = [...legDrafts(kit), ...spacerDrafts(kit), ...shelfDrafts(kit)];
  return [
    ...frame.slice(0, cut),
    ...inside,
    ...frame
      .slice(cut)
      .map((one, i) => (i === 0 ? { ...one, after: [...one.after, ...inside.map(({ id }) => id)] } : one)),
    ...drawerDrafts(kit),
    ...finishing(kit),
  ];
}
