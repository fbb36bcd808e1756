import type { Finding } from '../../finding.ts';
import type { Envelope } from '../../stock/part.ts';
import { atLeast, atMost, length, say } from '../../units/say.ts';
import type { Site } from '../fitting.ts';
import { tidy } from '../machining.ts';
import { told } from '../told.ts';
import { angleFigures } from './angle-figures.ts';
import { legsAssumed } from './assumed.ts';
import { CORNERS, type CornerName, cornerRoom } from './corners.ts';
import { LEDGE, type LegFigures, NUT_ROOM } from './figures.ts';
import { casterOf, plateOf, standHeight } from './stand.ts';
import { railHeights } from './trestle.ts';

const PROUD = 1;

/** What keeps a leg from being made in a corner; empty when it can be. */
export function legHalts(site: Site, legs: LegFigures, corner: CornerName): readonly Finding[] {
  const where = `leg.${corner}`;
  return [
    ...roomHalts(site, legs, corner),
    ...heightHalts(site, legs, where),
    ...plateHalts(site, legs, where),
    ...sheetHalts(site, legs, where),
  ];
}

/** How far a leg reaches inward from the frame's inner faces, and along the side, mm. */
function footprint({ input, t, width }: LegFigures): { readonly along: number; readonly inward: number } {
  if (input.form === 'post') return { along: width, inward: tidy(input.layers * t) };
  return input.form === 'angle' ? { along: tidy(width - t), inward: t } : { along: tidy(2 * t), inward: width };
}

function roomHalts(site: Site, legs: LegFigures, corner: CornerName): readonly Finding[] {
  const room = cornerRoom(site, corner);
  const { along, inward } = footprint(legs);
  const where = `leg.${corner}`;
  const [needs, has] = along > room.along ? [along, room.along] : [inward, room.inward];
  if (needs > has) {
    const what = say`the leg needs ${length(needs)} in the frame's corner, which is ${length(has)} clear`;
    const most = Math.max(0, Math.floor(tidy(has / legs.t)));
    const layers = legs.input.form === 'post' ? say` (${String(most)} layers)` : say``;
    const mend = [...say`make it at most ${atMost(has)}`, ...layers, ...say`, or move the nearest strut away`];
    return [told('halt', { rule: 'leg-larger-than-corner', where, what, figure: needs, limit: has, mend })];
  }
  const meeting = meetHalts(site, legs, { where, room, along, inward });
  return meeting.length > 0 ? meeting : nutHalts(legs, { where, room, along, inward });
}

type Reach = {
  readonly where: string;
  readonly room: ReturnType<typeof cornerRoom>;
  readonly along: number;
  readonly inward: number;
};

/** Two legs of one end, with their pads, need the bench between them. */
function meetHalts({ grid }: Site, legs: LegFigures, { where, along, inward }: Reach): readonly Finding[] {
  const plate = Math.max(...plateOf(legs.input.stand, where));
  const ledge = legs.input.form === 'angle' ? 0 : LEDGE;
  const trestle = legs.input.form === 'trestle';
  const reach = {
    along: Math.max(along, plate) + (trestle ? ledge : 0),
    inward: Math.max(inward, legs.input.form === 'angle' ? legs.width : 0, plate) + (trestle ? 0 : ledge),
  };
  const clear = { along: tidy(grid.length / 2 - grid.t), inward: tidy(grid.width / 2 - grid.t) };
  const way = reach.inward > clear.inward ? 'inward' : 'along';
  if (reach[way] <= clear[way]) return [];
  const what = say`a leg and its pad reach ${length(reach[way])} from the frame's side, and two of them meet in the middle`;
  const size = way === 'inward' ? 'width' : 'length';
  const mend = say`make the ${size} at least ${atLeast(2 * (reach[way] + grid.t))}, or the legs slimmer`;
  return [told('halt', { rule: 'legs-meet', where, what, figure: reach[way], limit: clear[way], mend })];
}

/** A nut is turned from inside the frame: beyond the wood it needs room for itself and a spanner. */
function nutHalts({ input }: LegFigures, { where, room, along, inward }: Reach): readonly Finding[] {
  const behind = input.form === 'trestle' ? tidy(room.along - along) : tidy(room.inward - inward);
  if (behind >= NUT_ROOM) return [];
  const what = say`behind the leg's bolts ${length(behind)} are free, too little for a nut and a spanner`;
  const mend = say`keep ${length(NUT_ROOM)} free: make the leg ${atLeast(NUT_ROOM - behind)} slimmer, by its layers or its width, or move the strut behind it ${atLeast(NUT_ROOM - behind)} away`;
  return [told('halt', { rule: 'bolt-without-nut-access', where, what, figure: behind, limit: NUT_ROOM, mend })];
}

function heightHalts(site: Site, legs: LegFigures, where: string): readonly Finding[] {
  const { grid } = site;
  const stand = standHeight(legs.input.stand, where);
  const needs = shortest(site, legs, where);
  if (tidy(grid.sideUnderside - stand) >= needs) return [];
  const what = say`under the frame ${length(grid.sideUnderside)} are left for the leg and what it stands on, which is ${length(stand)}`;
  const mend = say`raise the height to at least ${atLeast(grid.deckTop + stand + needs - grid.sideUnderside)}, or use lower casters`;
  return [
    told('halt', {
      rule: 'no-height-for-legs',
      where,
      what,
      figure: grid.sideUnderside,
      limit: tidy(stand + needs),
      mend,
    }),
  ];
}

/** The least a leg of this form is below the frame, mm. */
function shortest(site: Site, legs: LegFigures, where: string): number {
  if (legs.input.form === 'post') return tidy(2 * legs.t);
  if (legs.input.form === 'angle') return tidy(10 * legs.t);
  const [low = 0, high = 0] = railHeights(site, legs, 'leg.left');
  const hangs = site.grid.sideUnderside - high - legs.width;
  return tidy(low + 2 * legs.width + hangs - standHeight(legs.input.stand, where));
}

function plateHalts(site: Site, legs: LegFigures, where: string): readonly Finding[] {
  const plate = Math.max(...plateOf(legs.input.stand, where));
  const pad = legs.input.form === 'angle' ? angleFigures(site, legs, where).block : legs.width;
  if (pad >= plate) return [];
  const what =
    pad > 0
      ? say`the pad is ${length(pad)} wide, the plate on it ${length(plate)}`
      : say`a foot of ${length(angleFigures(site, legs, where).footWidth)} leaves no pad for a plate of ${length(plate)}`;
  const wider = tidy(
    plate - pad + (legs.input.form === 'angle' ? (legs.input.footWidth ?? 0.75 * legs.width) : legs.width),
  );
  const mend =
    legs.input.form === 'angle'
      ? say`write a foot-width of at least ${atLeast(wider)}`
      : say`make the leg at least ${atLeast(wider)} wide`;
  return [told('halt', { rule: 'pad-smaller-than-plate', where, what, figure: Math.max(0, pad), limit: plate, mend })];
}

/** An angle's faces are flush with the frame's outside and its fin with the side's inside: one thickness does both. */
function sheetHalts({ grid }: Site, { input, t }: LegFigures, where: string): readonly Finding[] {
  if (input.form !== 'angle' || Math.abs(t - grid.t) < 0.05) return [];
  const what = say`angle legs of ${length(t)} can't lie flush with a frame of ${length(grid.t)}`;
  const mend = say`write "material: frame"`;
  return [told('halt', { rule: 'angle-of-another-sheet', where, what, figure: t, limit: grid.t, mend })];
}

/** What is true of all legs: locks, and how far circles reach; `spaces` are the casters' circles. */
export function standFindings(site: Site, legs: LegFigures, spaces: readonly Envelope[]): readonly Finding[] {
  const { stand } = legs.input;
  const assumed = legsAssumed(site, legs);
  if (stand.kind === 'foot') return [...footNotes(legs), ...assumed];
  if (stand.kind !== 'caster') return assumed;
  const locked = CORNERS.filter((corner) => casterOf(stand, corner)?.locks === true).length;
  const what = say`${String(locked)} of 4 casters lock`;
  const mend = say`use casters with a brake under at least two legs at one side, better four`;
  const locks =
    locked >= 2
      ? []
      : [
          told('care', {
            rule: 'casters-do-not-lock',
            where: site.bench,
            what,
            figure: locked,
            limit: 2,
            mend,
            unit: 'count',
          }),
        ];
  return [...locks, ...reachNotes(site, spaces), ...assumed];
}

function reachNotes({ grid, bench }: Site, spaces: readonly Envelope[]): readonly Finding[] {
  const over = spaces
    .filter(({ kind }) => kind === 'caster')
    .flatMap(({ min, max }) => [-min[0], -min[1], max[0] - grid.length, max[1] - grid.width]);
  const most = over.length === 0 ? 0 : tidy(Math.max(...over));
  if (most <= PROUD) return [];
  const what = say`swivelling, the wheels reach ${length(most)} beyond the frame`;
  const mend = say`keep that much free at walls, or turn the wheels inward before parking`;
  return [told('note', { rule: 'casters-reach-out', where: bench, what, figure: most, limit: PROUD, mend })];
}

function footNotes({ input }: LegFigures): readonly Finding[] {
  if (input.stand.kind !== 'foot') return [];
  const { travel, height } = input.stand;
  const what = say`feet are reckoned ${length(height)} tall, in the middle of ${length(travel)} of travel`;
  const mend = say`they level a floor that is out by ${atMost(travel / 2)} either way; measure the gap under the fourth foot in every place the bench will stand`;
  return [told('note', { rule: 'foot-travel', where: 'leg', what, figure: travel, limit: null, mend })];
}
