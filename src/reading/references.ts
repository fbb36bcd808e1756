import type { Benchwork } from '../core/benchwork/schema.ts';
import type { Head } from '../core/head.schema.ts';
import type { Entry } from '../core/log/schema.ts';
import type { Scenery } from '../core/scenery/schema.ts';
import type { Track } from '../core/track/schema.ts';
import type { Wiring } from '../core/wiring/schema.ts';

/** What a name can point to. `joint:main` is a named joint of the line main. */
export type Target =
  | 'sheet'
  | 'wire'
  | 'caster'
  | 'hardware'
  | 'cover'
  | 'goods'
  | 'train'
  | 'material'
  | 'line'
  | 'turnout'
  | 'track-end'
  | 'line-end'
  | 'water'
  | 'foot'
  | `joint:${string}`;

/** A name that has to be known, with the path of the value that says it. */
export type Reference = { readonly at: string; readonly name: string; readonly to: Target };

function refer(at: string, name: string | undefined, to: Target): readonly Reference[] {
  return name === undefined ? [] : [{ at, name, to }];
}

function asList<T>(value: T | readonly T[] | undefined): readonly T[] {
  if (value === undefined) return [];
  return Array.isArray(value) ? value : [value as T];
}

/** `drawers` of a bench that has one set, `drawers.1` of one with several. */
function pathOf(path: string, value: unknown, index: number): string {
  return Array.isArray(value) ? `${path}.${index}` : path;
}

export function headReferences(head: Head): readonly Reference[] {
  const keyed = (['prices', 'goods-in-hand'] as const).flatMap((key) =>
    Object.keys(head[key] ?? {}).map((id): Reference => ({ at: `notebook.${key}.${id}`, name: id, to: 'goods' })),
  );
  const pieces = (head['in-hand'] ?? []).flatMap(({ stock }, i) =>
    refer(`notebook.in-hand.${i}.stock`, stock, 'sheet'),
  );
  return [...pieces, ...keyed];
}

type Bench = Benchwork['benches'][number];

function benchReferences(bench: Bench, path: string): readonly Reference[] {
  const { drawers, legs, shelves } = bench;
  return [
    ...asList(drawers).flatMap((set, i) =>
      refer(`${pathOf(`${path}.drawers`, drawers, i)}.material`, set.material, 'material'),
    ),
    ...asList(drawers).flatMap((set, i) =>
      refer(`${pathOf(`${path}.drawers`, drawers, i)}.bottom`, set.bottom, 'material'),
    ),
    ...asList(shelves).flatMap((set, i) =>
      refer(`${pathOf(`${path}.shelves`, shelves, i)}.material`, set.material, 'material'),
    ),
    ...refer(`${path}.legs.material`, legs?.material, 'material'),
    ...refer(`${path}.legs.casters.stock`, legs?.casters?.stock, 'caster'),
    ...refer(`${path}.legs.casters.free`, legs?.casters?.free, 'caster'),
    ...refer(`${path}.legs.feet.stock`, legs?.feet?.stock, 'hardware'),
  ];
}

export function benchworkReferences(chapter: Benchwork): readonly Reference[] {
  const materials = Object.entries(chapter.materials).flatMap(([role, material]) => {
    const path = `benchwork.materials.${role}`;
    return typeof material === 'string'
      ? refer(path, material, 'sheet')
      : refer(`${path}.stock`, material.stock, 'sheet');
  });
  return [...materials, ...chapter.benches.flatMap((bench, i) => benchReferences(bench, `benchwork.benches.${i}`))];
}

type Line = Track['lines'][number];

function lineReferences(line: Line, path: string): readonly Reference[] {
  return [
    ...(typeof line.from === 'string' ? refer(`${path}.from`, line.from, 'track-end') : []),
    ...(line.ends === 'open' || line.ends === 'buffer' ? [] : refer(`${path}.ends`, line.ends, 'line-end')),
    ...line.lay.flatMap((piece, i) =>
      'turnout' in piece ? refer(`${path}.lay.${i}.turnout`, piece.turnout, 'turnout') : [],
    ),
  ];
}

export function trackReferences(chapter: Track): readonly Reference[] {
  return [
    ...chapter.trains.flatMap((name, i) => refer(`track.trains.${i}`, name, 'train')),
    ...refer('track.roadbed.stock', chapter.roadbed?.stock, 'sheet'),
    ...chapter.lines.flatMap((line, i) => lineReferences(line, `track.lines.${i}`)),
    ...chapter.beside.flatMap(({ line }, i) => refer(`track.beside.${i}.line`, line, 'line')),
  ];
}

type AlongLine = { readonly line: string; readonly past?: string };

function alongReferences(place: AlongLine, path: string): readonly Reference[] {
  return [...refer(`${path}.line`, place.line, 'line'), ...refer(`${path}.past`, place.past, `joint:${place.line}`)];
}

export function wiringReferences(chapter: Wiring): readonly Reference[] {
  return [
    ...refer('wiring.bus.stock', chapter.bus.stock, 'wire'),
    ...refer('wiring.feeders.stock', chapter.feeders?.stock, 'wire'),
    ...chapter.loads.flatMap(({ at }, i) => {
      const path = `wiring.loads.${i}.at`;
      if (typeof at === 'string') return refer(path, at, 'turnout');
      return 'line' in at ? alongReferences(at, path) : [];
    }),
    ...(chapter.gaps ?? []).flatMap((gap, i) => alongReferences(gap, `wiring.gaps.${i}`)),
    ...chapter.districts.flatMap((district, i) =>
      district.lines.flatMap((line, j) => refer(`wiring.districts.${i}.lines.${j}`, line, 'line')),
    ),
  ];
}

export function sceneryReferences(chapter: Scenery): readonly Reference[] {
  return [
    ...refer('scenery.ground.foam', chapter.ground?.foam, 'sheet'),
    ...refer('scenery.ballast', chapter.ballast, 'cover'),
    ...(chapter.ground?.boards ?? []).flatMap((board, i) =>
      refer(`scenery.ground.boards.${i}.stock`, board.stock, 'sheet'),
    ),
    ...(chapter.ground?.water ?? []).flatMap((water, i) => [
      ...refer(`scenery.ground.water.${i}.resin`, water.resin, 'cover'),
      ...refer(`scenery.ground.water.${i}.tray`, water.tray, 'sheet'),
    ]),
    ...(chapter.ground?.sections ?? []).flatMap((section, i) =>
      'line' in section ? refer(`scenery.ground.sections.${i}.line`, section.line, 'line') : [],
    ),
    ...chapter.bridges.flatMap((bridge, i) => [
      ...refer(`scenery.bridges.${i}.line`, bridge.line, 'line'),
      ...refer(`scenery.bridges.${i}.over`, bridge.over, 'water'),
    ]),
    ...chapter.tunnels.flatMap((tunnel, i) => refer(`scenery.tunnels.${i}.line`, tunnel.line, 'line')),
    ...chapter.cover.flatMap((zone, i) => [
      ...(typeof zone.outline === 'string' ? refer(`scenery.cover.${i}.outline`, zone.outline, 'foot') : []),
      ...zone.of.flatMap((stock, j) => refer(`scenery.cover.${i}.of.${j}`, stock, 'cover')),
    ]),
  ];
}

export function entryReferences(entry: Entry): readonly Reference[] {
  const root = `log.${entry.id}`;
  return [
    ...entry.laid.flatMap((place, i) => alongReferences(place, `${root}.laid.${i}`)),
    ...entry.trial.flatMap((trial, i) => [
      ...alongReferences(trial, `${root}.trial.${i}`),
      ...refer(`${root}.trial.${i}.vehicle`, trial.vehicle, 'train'),
    ]),
  ];
}
