import type { Bench } from '../core/benchwork/bench.ts';
import { badged, badgesOf, badgeWords } from './badges.ts';
import { viewChains } from './bench-chains.ts';
import {
  type BenchAsk,
  type Extents,
  extents,
  isFrame,
  piecesOf,
  type Scalable,
  sectionPlane,
  viewNamed,
} from './bench-stage.ts';
import { floorMarks, seenStands, standNotes, standsOnFloor } from './bench-stand.ts';
import { headedBlock, labelled, type Sight, showing, sightMarks, sightOf } from './bench-view.ts';
import { emptyBlock, joined } from './block.ts';
import type { DrawingBook } from './book.ts';
import { saidLength } from './figures.ts';
import { byLeg, isLeg } from './leg-groups.ts';
import type { Mark } from './mark.ts';
import { once, onceFor } from './once.ts';
import { scaleText } from './paper.ts';
import { cutBy, extentOfSeen, fromFront, fromLeft, fromRight, type Gaze, type Seen, seen } from './scene.ts';
import type { View } from './view.ts';

type Look = { readonly wood: readonly Seen[]; readonly pieces: readonly Seen[]; readonly sight: Sight };

/** A bench from a side, worked out once for its view and for its map of fixes: its wood, that with what it stands on, what is seen. */
export const lookAt = onceFor((notebook: DrawingBook) =>
  onceFor((bench: Bench) => {
    const from = (gaze: Gaze) =>
      once((): Look => {
        const wood = piecesOf({ notebook, bench }).map((one) => seen(one, gaze));
        const pieces = [...wood, ...seenStands({ notebook, bench }, gaze)];
        return { wood, pieces, sight: sightOf({ pieces, cut: [], dashed: ['strut'] }) };
      });
    return { front: from(fromFront), left: from(fromLeft) };
  }),
);

export function elevationView(ask: BenchAsk, side: 'front' | 'left'): Scalable {
  const { bench, options } = ask;
  const { wood, pieces, sight } = lookAt(ask.notebook)(bench)[side]();
  if (wood.length === 0) return () => emptyBlock;
  const box = onFloor(pieces);
  const frame = extents(pieces.filter(isFrame));
  const legs = legStops(wood);
  const heights = [bench.sideUnderside, bench.sideTop, box.v1, box.v0, extents(wood).v0, ...legs.upright];
  const shown = labelledPieces(wood, pieces);
  const name = side === 'front' ? 'From the front' : 'From the left end';
  const badges = badgesOf(ask.notebook);
  const notes = heightNotes(ask, wood);
  return (scale) => {
    const view = viewNamed(side, scale);
    const marks = [...sightMarks(view, sight), ...floorOf(view, pieces)];
    const chains = viewChains({
      view,
      unit: options.unit,
      box,
      along: { name: 'along', at: [box.u0, box.u1, frame.u0, frame.u1, ...legs.along] },
      upright: { name: 'heights', at: heights, side: 'right' },
    });
    const drawn = joined({ marks, views: [view], dimensions: [] }, chains);
    const named = badged(labelled(drawn, view, shown), shown, badges);
    const heading = { name: `${name} ${scaleText(scale)}`, beside: badgeWords(shown, badges) };
    return headedBlock(named, heading, notes);
  };
}

/** Where a view's chains stop at the nearest legs: the faces of what stands up, and the edges of pads and rails. */
function legStops(wood: readonly Seen[]): { readonly along: readonly number[]; readonly upright: readonly number[] } {
  const legs = wood.filter(isLeg);
  const nearest = Math.max(...legs.map(({ near }) => near));
  const before = legs.filter(({ near }) => near > nearest - 60);
  const ends = (roles: readonly string[], axis: 0 | 1) =>
    before
      .filter(({ role }) => roles.includes(role))
      .map(extentOfSeen)
      .flatMap(({ low, high }) => [low[axis], high[axis]]);
  return { along: ends(['leg-layer', 'leg-half', 'leg-upright'], 0), upright: ends(['leg-pad', 'leg-rail'], 1) };
}

/** The pieces that a view from a side names: those in front, the deck, and each leg as one. */
function labelledPieces(wood: readonly Seen[], pieces: readonly Seen[]): readonly Seen[] {
  const nearest = Math.max(...pieces.filter(isFrame).map(({ near }) => near));
  const isShown = ({ near, role }: Seen) =>
    near > nearest - 1 || role === 'deck' || (role === 'strut' && near > nearest - 60);
  const legs = byLeg(wood.filter(isLeg)).filter((leg) => leg.some(({ near }) => near > nearest - 60));
  return [...showing(wood, ['strut']).filter((piece) => isShown(piece) && !isLeg(piece)), ...legs.flat()];
}

/** The box of what is seen, down to the floor where the bench stands on it. */
function onFloor(pieces: readonly Seen[]): Extents {
  const box = extents(pieces);
  return standsOnFloor(pieces) ? { ...box, v0: 0 } : box;
}

function floorOf(view: View, pieces: readonly Seen[]): readonly Mark[] {
  return standsOnFloor(pieces) ? floorMarks(view, extents(pieces)) : [];
}

/** The deck's height in words where no floor is drawn to measure it from; what the bench stands on where one is. */
function heightNotes(ask: BenchAsk, pieces: readonly Seen[]): readonly string[] {
  if (standsOnFloor(pieces)) return standNotes(ask);
  return [`The deck's top is ${saidLength(ask.bench.deckTop, ask.options.unit)} above the floor.`];
}

type Chains = Pick<Parameters<typeof viewChains>[0], 'along' | 'upright'>;

/** Where the section's chains stop: faces of what is cut, and the heights of frame, strips and deck. */
function sectionStops({ bench }: BenchAsk, cut: readonly Seen[], box: Extents): Chains {
  const ends = (pieces: readonly Seen[], axis: 0 | 1) =>
    pieces.map(extentOfSeen).flatMap(({ low, high }) => [low[axis], high[axis]]);
  const strips = cut.filter(({ role }) => role === 'flange-strip');
  const heights = [bench.sideUnderside, bench.strutUnderside, bench.sideTop, box.v1, box.v0];
  return {
    along: { name: 'across', at: [box.u0, box.u1, ...ends(cut.filter(isFrame), 0)] },
    upright: { name: 'heights', at: [...heights, ...ends(strips, 1)], side: 'right' },
  };
}

export function sectionView(ask: BenchAsk): Scalable {
  const { notebook, bench, options } = ask;
  const { at } = sectionPlane(notebook, bench);
  const placed = piecesOf(ask);
  const cut = placed.map((one) => cutBy(one, fromRight, at)).filter((piece) => piece !== null);
  const wood = placed.map((one) => seen(one, fromRight)).filter((piece) => piece.near <= at);
  const beyond = [...wood, ...seenStands(ask, fromRight).filter((piece) => piece.near <= at)];
  if (cut.length + beyond.length === 0) return () => emptyBlock;
  const sight = sightOf({ pieces: beyond, cut, dashed: [] });
  const box = onFloor([...cut, ...beyond]);
  const stops = sectionStops(ask, cut, box);
  const feet = extents([...cut, ...wood]).v0;
  const upright = { ...stops.upright, at: [...stops.upright.at, feet] };
  const nearest = wood.reduce((best, piece) => Math.max(best, piece.near), Number.NEGATIVE_INFINITY);
  const shown = [...cut, ...wood.filter((piece) => piece.near > nearest - 1)];
  const place = `Cut ${saidLength(at, options.unit)} from the left end of the frame.`;
  const badges = badgesOf(notebook);
  const notes = [place, ...heightNotes(ask, [...cut, ...wood])];
  return (scale) => {
    const view = viewNamed('section', scale);
    const marks = [...sightMarks(view, sight), ...floorOf(view, [...cut, ...beyond])];
    const chains = viewChains({ view, unit: options.unit, box, along: stops.along, upright });
    const drawn = joined({ marks, views: [view], dimensions: [] }, chains);
    const named = badged(labelled(drawn, view, shown), shown, badges);
    const name = `Section A-A, towards the left end ${scaleText(scale)}`;
    return headedBlock(named, { name, beside: badgeWords(shown, badges) }, notes);
  };
}
