import type { Track } from '../core/track/schema.ts';
import type { Train } from '../core/track/train.schema.ts';
import { nearest } from '../core/units/nearest.ts';
import type { Fault } from '../core/units/problem.ts';
import type { Reference, Target } from './references.ts';

/** Goods and trains of the whole content folder; null where a file of them could not be read to its end. */
export type Shared = {
  readonly stock: readonly { readonly id: string; readonly kind: string }[] | null;
  readonly trains: readonly Pick<Train, 'id'>[] | null;
};

/** Everything names of one notebook can point to; null where a chapter could not be read to its end. */
export type Known = Shared & {
  readonly materials: readonly string[] | null;
  readonly track: Track | null;
  readonly water: readonly string[] | null;
  readonly hills: readonly string[] | null;
};

const CALLED: Readonly<Record<Exclude<Target, `joint:${string}`>, string>> = {
  sheet: 'a sheet or board in stock',
  wire: 'a wire in stock',
  caster: 'a caster in stock',
  hardware: 'hardware in stock',
  cover: 'a cover in stock',
  goods: 'anything in stock',
  train: 'a vehicle in trains',
  material: 'a role under `materials` or a sheet in stock',
  line: 'a line of the track chapter',
  turnout: 'a turnout of the track chapter',
  'track-end': 'an end of a line or turnout',
  'line-end': 'a way for a line to end',
  water: 'water of the scenery chapter',
  foot: 'the foot of a hill',
};

function stockOf(known: Known, kinds: readonly string[]): readonly string[] | null {
  return known.stock?.filter((item) => kinds.includes(item.kind)).map((item) => item.id) ?? null;
}

/** Ends of a turnout by its form. */
function endsOf(turnout: Track['turnouts'][string]): readonly string[] {
  const form = 'form' in turnout ? turnout.form : 'plain';
  if (form === 'wye') return ['points', 'left', 'right'];
  if (form === 'three-way') return ['points', 'straight', 'left', 'right'];
  if (form === 'crossing' || form === 'slip') return ['points', 'straight', 'cross', 'branch'];
  return ['points', 'straight', 'branch'];
}

function trackEnds(track: Track): readonly string[] {
  const lines = track.lines.flatMap((line) => [`${line.id}.start`, `${line.id}.end`]);
  const turnouts = Object.entries(track.turnouts).flatMap(([id, turnout]) =>
    endsOf(turnout).map((end) => `${id}.${end}`),
  );
  return [...lines, ...turnouts];
}

function jointsOf(track: Track, id: string): readonly string[] | null {
  const beside = track.beside.find((one) => one.id === id);
  const line = track.lines.find((one) => one.id === (beside?.line ?? id));
  return line?.lay.flatMap((piece) => piece['ends-at'] ?? []) ?? null;
}

/** Names a target has, or null where that cannot be known. */
function candidates(known: Known, to: Target): readonly string[] | null {
  const { track } = known;
  switch (to) {
    case 'sheet':
      return stockOf(known, ['sheet', 'board']);
    case 'wire':
    case 'caster':
    case 'hardware':
    case 'cover':
      return stockOf(known, [to]);
    case 'goods':
      return known.stock?.map(({ id }) => id) ?? null;
    case 'train':
      return known.trains?.map((train) => train.id) ?? null;
    case 'material': {
      const stock = stockOf(known, ['sheet', 'board']);
      return known.materials === null || stock === null ? null : [...known.materials, ...stock];
    }
    case 'line':
      return track === null ? null : [...track.lines, ...track.beside].map((line) => line.id);
    case 'turnout':
      return track === null ? null : Object.keys(track.turnouts);
    case 'track-end':
      return track === null ? null : trackEnds(track);
    case 'line-end':
      return track === null ? null : ['open', 'buffer', ...trackEnds(track)];
    case 'water':
      return known.water;
    case 'foot':
      return known.hills?.map((id) => `${id}.foot`) ?? null;
    default:
      return track === null ? null : jointsOf(track, to.slice('joint:'.length));
  }
}

function called(to: Target): string {
  return to in CALLED
    ? CALLED[to as keyof typeof CALLED]
    : `a named joint of the line \`${to.slice('joint:'.length)}\``;
}

/** A name of the right sort of thing in stock is told as that: a wire is no sheet. */
function otherKind(known: Known, name: string): string {
  const item = known.stock?.find((one) => one.id === name);
  return item === undefined ? '' : `; it is ${item.kind} stock`;
}

/** The fault of a name that points to nothing, or null. */
export function unknownName(reference: Reference, known: Known): Fault | null {
  const names = candidates(known, reference.to);
  if (names === null || names.includes(reference.name)) return null;
  const near = nearest(reference.name, names);
  const shown = [...names]
    .sort()
    .slice(0, 12)
    .map((name) => `\`${name}\``)
    .join(', ');
  const some = names.length > 12 ? `${shown} and ${names.length - 12} more` : shown;
  const hint = near === null ? '' : `did you mean \`${near}\`? `;
  return {
    rule: 'unknown-name',
    at: reference.at,
    what: `\`${reference.name}\` is not ${called(reference.to)}${otherKind(known, reference.name)}`,
    mend: names.length === 0 ? 'there is none yet: add it, or take the name away' : `${hint}known are ${some}`,
  };
}
