import type { Assembly, Placing, Pose, PoseName } from '../core/assembly/assembly.ts';
import { type PictureStep, pictureSteps } from '../core/assembly/picture-steps.ts';
import { assemblyPictures } from '../drawing/isometric/assembly-drawing.ts';
import { type Html, line, listed, partLinks, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { partName, partNamed, pieceLabel, wholeName } from './parts.ts';
import { type Seating, seatPhrases } from './seat-words.ts';
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

/**
 * What the moves of a picture do: which pieces, which way, and where they then are; what is the same for all of them is
 * said once, before.
 */
export function moveLines(moves: readonly Seating[]): readonly Html[] {
  const told = moves.map((at) => ({ at, phrases: [text(wayIn(at.placing)), ...seatPhrases(at)] }));
  const [first] = told;
  const common =
    told.length < 2 ? [] : (first?.phrases ?? []).filter((one) => told.every(({ phrases }) => phrases.includes(one)));
  const each = told.map(({ at: { book, placing }, phrases }) =>
    line(named(book, placing.parts), ...own(phrases.filter((one) => !common.includes(one)))),
  );
  return common.length === 0 ? each : [line(text('Each: '), listed(common), text('.')), ...each];
}

function own(phrases: readonly Html[]): readonly Html[] {
  return phrases.length === 0 ? [text('.')] : [text(': '), listed(phrases), text('.')];
}

/** A piece by its label; a drawer or leg by its name, with the first and the last of its labels. */
function named(book: Book, parts: readonly string[]): Html {
  const whole = parts.length > 1 ? wholeName(parts) : null;
  if (whole === null) return partLinks(book, parts);
  return text(`${plainName(whole)} (${labelsFromTo(book, parts)})`);
}

/** `P1A to P1F`: the first and the last label of what goes as one. */
export function labelsFromTo(book: Book, parts: readonly string[]): string {
  const labels = parts.map((id) => pieceLabel(book, id)).sort();
  return labels.length < 2 ? labels.join('') : `${labels[0]} to ${labels.at(-1)}`;
}

/** The heading of a picture: what is built. */
export function stepTitle(book: Book, { within, parts, placings }: PictureStep): string {
  if (within !== null) return begun(`${plainName(within)}: ${labelsFromTo(book, parts)}`);
  const names = placings.map(({ parts: going }) => {
    const whole = going.length > 1 ? wholeName(going) : null;
    return whole === null ? shortly(going.map((id) => pieceLabel(book, id))) : plainName(whole);
  });
  return begun([...roleOf(book, placings), shortly(names)].join(' '));
}

function begun(title: string): string {
  return title.charAt(0).toUpperCase() + title.slice(1);
}

/** What single pieces of one kind are: `struts`. */
function roleOf(book: Book, placings: PictureStep['placings']): readonly string[] {
  const parts = placings.flatMap(({ parts: going }) =>
    going.length === 1 ? (partNamed(book, going[0] ?? '') ?? []) : [],
  );
  const roles = [...new Set(parts.map(partName))];
  const [role] = roles;
  if (role === undefined || roles.length > 1 || parts.length < placings.length) return [];
  return [placings.length === 1 ? role : role.endsWith('f') ? `${role.slice(0, -1)}ves` : `${role}s`];
}

function shortly(labels: readonly string[]): string {
  return labels.length <= 4
    ? labels.join(labels.some((one) => one.includes(',')) ? '; ' : ', ')
    : `${labels[0]} to ${labels.at(-1)}`;
}

/** How many blocks of which height a pose needs. */
export function packerWords({ packers, turns }: Pose): string {
  const turned = turns === 0 ? 'no turning over' : `${counted(turns, 'turning over', 'turnings over')} by two people`;
  return `${packers.length === 0 ? 'no packers' : counted(packers.length, 'packer')}, ${turned}`;
}
