import type { Assembly, Placing } from '../../core/assembly/assembly.ts';
import { bodiesOf } from '../../core/assembly/bodies.ts';
import { movedBody } from '../../core/assembly/body.ts';
import { boxRound } from '../../core/assembly/engagement.ts';
import { isOfOneKind, type PictureStep, pictureSteps } from '../../core/assembly/picture-steps.ts';
import { bounds } from '../../core/geometry/polygon.ts';
import type { Box, Vector } from '../../core/geometry/shapes.ts';
import { times } from '../../core/geometry/vector.ts';
import type { Feature, Part } from '../../core/stock/part.ts';
import { type Block, extentOf } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import type { Extent } from '../mark.ts';
import { once } from '../once.ts';
import { scales } from '../paper.ts';
import { drawingArea, firstFitting } from '../sheet.ts';
import { surfaced } from './hidden.ts';
import { drawn, type Picture, type PictureBody, type PictureLabel, type Sight, seenAfter, seenIn } from './picture.ts';
import { shiftedFace } from './surface.ts';

/** One picture of a bench's assembly: its drawing's id, title, and what it shows in words. */
export type AssemblyPicture = {
  readonly id: string;
  readonly bench: string;
  readonly title: string;
  readonly desc: string;
  readonly picture: () => Picture;
  /** what is seen in it, worked out when it is first asked for */
  readonly sight: () => Sight;
};

/** The exploded view of every bench, then one picture a step, in the order of the chosen pose. */
export function assemblyPictures(book: DrawingBook): readonly AssemblyPicture[] {
  return (book.assembly ?? []).flatMap((assembly, i) => {
    const stem = i === 0 ? 'assembly' : `assembly.${assembly.bench}`;
    const order = assembly.poses.find(({ pose }) => pose === assembly.chosen)?.order ?? [];
    if (order.length === 0) return [];
    const steps = pictureSteps(order);
    const placedIn = new Set(order.flatMap((placing) => placing.parts));
    // what other chapters put on the bench is no piece of its assembly
    const parts = book.parts.filter(
      ({ bench, places }) => bench === assembly.bench && places.some(({ id }) => placedIn.has(id)),
    );
    const pieces = { parts, bodies: once(() => pictureBodies(parts)) };
    const pictures: AssemblyPicture[] = [];
    for (const [k, step] of steps.entries()) {
      // what is built apart in between takes nothing away from what stands on the bench
      const last = steps
        .slice(0, k)
        .findLastIndex(({ within, frame }) => within === step.within && frame === step.frame);
      const before = pictures[last] ?? null;
      pictures.push(stepPicture(pieces, { step, k, stem, assembly, of: steps.length, before }));
    }
    return [exploded(assembly, pieces, { stem, order }), ...pictures];
  });
}

/** The parts of an assembly, and their bodies for all its pictures. */
type Pieces = { readonly parts: readonly Part[]; readonly bodies: () => readonly PictureBody[] };

type Pictured = Pick<AssemblyPicture, 'picture' | 'sight'>;

/** The picture and its sight, each worked out once; the sight from that of a step before where that stays as it is. */
function pictured(make: () => Picture, before: Pictured | null): Pictured {
  const picture = once(make);
  const fromBefore = () =>
    before === null ? null : seenAfter({ picture: before.picture(), sight: before.sight() }, picture());
  return { picture, sight: once(() => fromBefore() ?? seenIn(picture())) };
}

type Explosion = { readonly stem: string; readonly order: readonly Placing[] };

function exploded({ bench }: Assembly, { parts, bodies }: Pieces, { stem, order }: Explosion): AssemblyPicture {
  const ids = order.flatMap((placing) => placing.parts);
  return {
    id: `${stem}.exploded`,
    bench,
    title: `Exploded view of ${bench}`,
    desc: `${bench} with its ${new Set(ids).size} pieces drawn apart along the ways they go in, hidden faces left out.`,
    ...pictured(
      () => ({
        bodies: explode(bodies(), order),
        strong: new Set(),
        labels: labelsOf(parts, order),
        arrows: [],
        lies: 'upright',
      }),
      null,
    ),
  };
}

type Stepping = {
  readonly step: PictureStep;
  readonly k: number;
  readonly stem: string;
  readonly assembly: Assembly;
  readonly of: number;
  readonly before: Pictured | null;
};

function stepPicture({ parts, bodies }: Pieces, { step, k, stem, assembly, of, before }: Stepping): AssemblyPicture {
  const here = new Set([...step.standing, ...step.parts]);
  const strong = new Set(step.parts);
  return {
    id: `${stem}.step-${k + 1}`,
    bench: assembly.bench,
    title: `Step ${k + 1} of ${of}: ${shortly(placeLabels(parts, step.parts))}`,
    desc: stepWords(step),
    ...pictured(
      () => ({
        bodies: bodies().filter(({ id }) => here.has(id)),
        strong,
        labels: labelsOf(parts, step.placings),
        arrows: step.placings.flatMap(({ parts: [body], direction, path }) =>
          body === undefined || path === 'first' ? [] : [{ body, direction }],
        ),
        lies: step.frame,
      }),
      before,
    ),
  };
}

/** Up to four labels, else the first and the last. */
function shortly(labels: readonly string[]): string {
  return labels.length <= 4 ? labels.join(', ') : `${labels[0]} to ${labels.at(-1)}`;
}

function stepWords({ parts, placings, frame, turn, within }: PictureStep): string {
  const mates = [...new Set(placings.flatMap((placing) => placing.with))];
  const lies = turn ? `The frame is turned over and lies ${frame.replace('-', ' ')}. ` : '';
  const where = within === null ? '' : ` of ${within}`;
  const onto = mates.length === 0 ? 'laid in place' : `brought to ${mates.join(', ')}`;
  return `${lies}${parts.join(', ')}${where} drawn strong, ${onto}; arrows show the way in, what stands already is drawn thin.`;
}

/** Bodies with square inner corners: a picture shows no bit's radius. */
function pictureBodies(parts: readonly Part[]): readonly PictureBody[] {
  return bodiesOf(parts.map((part) => ({ ...part, features: part.features.map(squared) }))).map(surfaced);
}

function squared(feature: Feature): Feature {
  return 'corner' in feature && typeof feature.corner === 'number' ? { ...feature, corner: 0 } : feature;
}

/** One label a move: what goes as one shares it, and pieces inside a sub-assembly are named where it is built. */
function labelsOf(parts: readonly Part[], placings: readonly Placing[]): readonly PictureLabel[] {
  const own = placings.some(({ within }) => within === null)
    ? placings.filter(({ within }) => within === null)
    : placings;
  return own.map((placing) => ({ text: shortly(placeLabels(parts, placing.parts)), ids: placing.parts }));
}

function placeLabels(parts: readonly Part[], ids: readonly string[]): readonly string[] {
  const places = parts.flatMap((part) => part.places);
  return places.filter(({ id }) => ids.includes(id)).map(({ label }) => label);
}

/**
 * Every body drawn back along its way in, twice as far when another family went that way before it; what covers a good
 * part of the bench goes far enough to show what is under it. mm.
 */
function explode(bodies: readonly PictureBody[], order: readonly Placing[]): readonly PictureBody[] {
  const round = boxRound(bodies);
  const plan = (box: Box) => (box.max[0] - box.min[0]) * (box.max[1] - box.min[1]);
  const unit = 0.16 * Math.max(round.max[0] - round.min[0], round.max[1] - round.min[1]);
  const back = drawnBack(order);
  return bodies.map((one) => {
    const { direction, level } = back.get(one.id) ?? { direction: [0, 0, 0] as const, level: 0 };
    // further pieces go level a little beyond, a drawer's face before its box; upwards the deck would hide them
    const beyond = Math.abs(direction[2]) < 0.5 ? Math.max(0, level - 2) / 2 : 0;
    const far = plan(one.box) > 0.2 * plan(round) ? 4 : Math.min(level, 2) + beyond;
    const by = times(direction, -unit * far);
    return { ...movedBody(one, by), faces: one.faces.map((face) => shiftedFace(face, by)) };
  });
}

type Back = { readonly direction: Vector; readonly level: number };

function drawnBack(order: readonly Placing[]): ReadonlyMap<string, Back> {
  const ways = new Map<string, number>();
  const back = new Map<string, Back>();
  const going = order.filter(({ path, within }) => path !== 'first' && within === null);
  const fresh = new Set<string>();
  for (const [i, placing] of going.entries()) {
    const { parts, direction } = placing;
    const key = direction.join(' ');
    const before = going[i - 1];
    if (before === undefined || !isOfOneKind(before, placing)) fresh.clear();
    if (!fresh.has(key)) ways.set(key, (ways.get(key) ?? 0) + 1);
    fresh.add(key);
    for (const id of parts) back.set(id, { direction, level: ways.get(key) ?? 1 });
  }
  return back;
}

/** A picture on a page of text says no scale and may stand between those of ISO 5455. */
const BETWEEN: readonly number[] = [...scales, 12.5, 15, 25, 30, 40].sort((a, b) => a - b);

/** A picture at the largest scale that fits the paper, and the room it is given. */
export function assemblyLayout(
  { picture: pictureOf, sight: sightOf }: AssemblyPicture,
  { paper, room }: DrawingOptions,
): { readonly blocks: readonly Block[]; readonly scale: number } {
  const [picture, sight] = [pictureOf(), sightOf()];
  const { x0, y0, x1, y1 } = drawingArea(paper);
  const most = { width: Math.min(x1 - x0, room?.width ?? x1), height: Math.min(y1 - y0, room?.height ?? y1) };
  const { low, high } = bounds(sight.seen.flatMap(({ area }) => area.outline));
  const fits = ({ x0: left, x1: right, y0: top, y1: bottom }: Extent) =>
    right - left <= most.width && bottom - top <= most.height;
  const tried = (room === undefined ? scales : BETWEEN).filter(
    (one) => one >= 1 && fits({ x0: low[0] / one, x1: high[0] / one, y0: low[1] / one, y1: high[1] / one }),
  );
  const { drawn: block, scale } = firstFitting(
    tried,
    (one) => drawn(picture, sight, one),
    ({ marks }) => fits(extentOf(marks)),
  );
  return { blocks: [block], scale };
}
