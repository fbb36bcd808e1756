import type { Assembly, Placing, Pose, PoseName } from '../core/assembly/assembly.ts';
import { type PictureStep, pictureSteps } from '../core/assembly/picture-steps.ts';
import { assemblyPictures } from '../drawing/isometric/assembly-drawing.ts';
import { type Html, line, listed, partLink, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import { counted, plainName } from './words.ts';

/** One picture of the work with what it shows: its drawing, its step, and its number from 1. */
export type PicturedStep = { readonly drawing: string; readonly number: number; readonly step: PictureStep };

/** The pose the page proposes, or null when no order was found. */
export function chosenPose(assembly: Assembly): Pose | null {
  return assembly.poses.find(({ pose }) => pose === assembly.chosen) ?? null;
}

/** How the frame lies, as people say it. */
export function poseName(pose: PoseName): string {
  return pose === 'upright' ? 'the right way up' : 'upside down';
}

/** The pictures of one bench's assembly, in order; the exploded view apart. */
export function picturedSteps(book: Book, assembly: Assembly) {
  const drawings = assemblyPictures(book.notebook).filter(({ bench }) => bench === assembly.bench);
  const exploded = drawings.find(({ id }) => id.endsWith('.exploded'))?.id ?? null;
  const pictures = drawings.filter(({ id }) => !id.endsWith('.exploded'));
  const steps = pictureSteps(chosenPose(assembly)?.order ?? []).flatMap((step, i): readonly PicturedStep[] => {
    const drawing = pictures[i]?.id;
    return drawing === undefined ? [] : [{ drawing, number: i + 1, step }];
  });
  return { exploded, steps };
}

const WAYS: readonly (readonly [axis: 0 | 1 | 2, sign: 1 | -1, words: string])[] = [
  [0, 1, 'pushed to the right'],
  [0, -1, 'pushed to the left'],
  [1, 1, 'pushed to the back'],
  [1, -1, 'pushed to the front'],
];

/** Which way a piece travels, for somebody who stands at the bench's front; down is towards the floor as the frame lies. */
export function wayIn({ direction, frame, path }: Pick<Placing, 'direction' | 'frame' | 'path'>): string {
  if (path === 'first') return 'laid down first';
  if (path === 'tilt') return 'tilted in; this is not proved';
  const up = frame === 'upright' ? 1 : -1;
  if (direction[2] * up < -0.9) return 'lowered';
  if (direction[2] * up > 0.9) return 'lifted from below';
  // A frame turned over about its length has its front at the back.
  const across = frame === 'upright' ? direction : ([direction[0], -direction[1], direction[2]] as const);
  const way = WAYS.find(([axis, sign]) => (across[axis] ?? 0) * sign > 0.9);
  return way?.[2] ?? 'slid along the arrow';
}

function pieces(book: Book, ids: readonly string[]): Html {
  return listed(ids.map((id) => partLink(book, id, pieceLabel(book, id))));
}

/** What one move does: which pieces, which way, and what they meet. */
export function moveLine(book: Book, placing: Placing): Html {
  const group = placing.parts.length > 1 ? text(' as one') : text('');
  const mates = placing.with.length === 0 ? [] : [text(' onto '), pieces(book, placing.with)];
  return line(pieces(book, placing.parts), group, text(`: ${wayIn(placing)}`), ...mates, text('.'));
}

/** The heading of a picture: what is built. */
export function stepTitle(book: Book, { within, parts }: PictureStep): string {
  const labels = parts.map((id) => pieceLabel(book, id));
  const some = labels.length <= 4 ? labels.join(', ') : `${labels[0]} to ${labels.at(-1)}`;
  return within === null ? some : `${plainName(within)}: ${some}`;
}

/** How many blocks of which height a pose needs. */
export function packerWords({ packers, turns }: Pose): string {
  const turned = turns === 0 ? 'no turning over' : `${counted(turns, 'turning over', 'turnings over')} by two people`;
  return `${packers.length === 0 ? 'no packers' : counted(packers.length, 'packer')}, ${turned}`;
}
