import type { Benchwork } from '../core/benchwork/schema.ts';
import type { Head } from '../core/head.schema.ts';
import type { Scenery } from '../core/scenery/schema.ts';
import type { Track } from '../core/track/schema.ts';
import type { Fault } from '../core/units/problem.ts';
import type { Wiring } from '../core/wiring/schema.ts';

type Named = { readonly id: string };

/** Ids written twice in one list, told at the second. */
export function duplicatesIn(path: string, list: readonly Named[] | undefined): readonly Fault[] {
  const first = new Map<string, number>();
  return (list ?? []).flatMap(({ id }, i): Fault[] => {
    const before = first.get(id);
    if (before === undefined) {
      first.set(id, i);
      return [];
    }
    const what = `the id \`${id}\` is taken: item ${before + 1} of \`${path.slice(path.lastIndexOf('.') + 1)}\` has it`;
    return [{ rule: 'duplicate-id', at: `${path}.${i}.id`, what, mend: 'give one of them another id' }];
  });
}

type Chapters = {
  readonly head: Head | null;
  readonly benchwork: Benchwork | null;
  readonly track: Track | null;
  readonly wiring: Wiring | null;
  readonly scenery: Scenery | null;
};

/** Ids written twice anywhere in a notebook's chapters. */
export function duplicateIds({ head, benchwork, track, wiring, scenery }: Chapters): readonly Fault[] {
  const lists: readonly (readonly [string, readonly Named[] | undefined])[] = [
    ['notebook.room.things', head?.room?.things],
    ['benchwork.benches', benchwork?.benches],
    ['benchwork.steps', benchwork?.steps],
    ['track.lines', track === null ? undefined : [...track.lines, ...track.beside]],
    ['track.steps', track?.steps],
    ['wiring.loads', wiring?.loads],
    ['wiring.districts', wiring?.districts],
    ['wiring.steps', wiring?.steps],
    ['scenery.ground.hills', scenery?.ground?.hills],
    ['scenery.ground.water', scenery?.ground?.water],
    ['scenery.ground.sections', scenery?.ground?.sections],
    ['scenery.bridges', scenery?.bridges],
    ['scenery.tunnels', scenery?.tunnels],
    ['scenery.structures', scenery?.structures],
    ['scenery.cover', scenery?.cover],
    ['scenery.steps', scenery?.steps],
  ];
  return lists.flatMap(([path, list]) => duplicatesIn(path, list));
}
