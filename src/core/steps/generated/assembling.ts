import type { Fastener, HardwareUse } from '../../stock/fastener.ts';
import type { Stock } from '../../stock/goods.ts';
import type { Joint, Part } from '../../stock/part.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import { type Draft, draft } from './draft.ts';
import { counted, grouped, instanceIds, instances } from './words.ts';

/** The outside of one bench's frame, mm. A bench of the model is one. */
export type Frame = { readonly id: string; readonly length: number; readonly width: number };

/** What one bench is put together from. */
export type Kit = {
  readonly frame: Frame;
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly fasteners: readonly Fastener[];
  readonly hardware: readonly HardwareUse[];
  readonly stock: readonly Stock[];
};

/** White glue stays workable 5 to 15 minutes and holds in clamps after 30 to 60; makers' guides to PVA glue. */
export const CLAMPED = 60;

/** No load on white glue for 24 h; makers' guides to PVA glue. */
const CURED = 24 * 60;

/** Parts that go on after the frame stands: by role. */
const LATER_ROLES: readonly string[] = ['deck', 'flange-strip', 'batten', 'leg', 'drawer', 'spacer', 'shelf', 'fascia'];

function isFrame(part: Part): boolean {
  return !LATER_ROLES.some((role) => part.role === role || part.role.startsWith(`${role}-`));
}

/** Parts of a role, or of one it begins: `drawer` holds drawer-side, drawer-face. */
export function ofRole(parts: readonly Part[], role: string): Part[] {
  return parts.filter((part) => part.role === role || part.role.startsWith(`${role}-`));
}

function diagonal({ length: long, width }: Frame): number {
  return Math.hypot(long, width);
}

function jointCounts(joints: readonly Joint[]): string {
  return grouped(joints, (joint) => joint.kind)
    .map((same) => counted(same.length, same[0]?.kind ?? ''))
    .join(', ');
}

function frameJoints({ parts, joints }: Kit): Joint[] {
  const inside = new Set(instanceIds(parts.filter(isFrame)));
  return joints.filter(({ between }) => inside.has(between[0]) && inside.has(between[1]));
}

function dryFit(kit: Kit): Draft {
  const { frame } = kit;
  const members = kit.parts.filter(isFrame);
  const lines: Sentence[] = [
    say`No glue yet: ${instances(members)}. ${jointCounts(frameJoints(kit))}.`,
    say`Outside it reads ${length(frame.length)} by ${length(frame.width)}, both diagonals ${length(diagonal(frame))}. A joint that needs a hammer is eased now.`,
  ];
  const work = [{ kind: 'machining', noun: `${frame.id}-dry-fit`, makes: instanceIds(members), lines } as const];
  const after = ['rout', 'slots', 'openings', 'holes', 'edges', 'mark', 'crosscut'];
  const title = `Put ${frame.id} together dry`;
  return draft({
    id: `${frame.id}-dry-fit`,
    title,
    work,
    tools: ['clamps', 'tape-measure'],
    child: 'does with an adult',
    after,
  });
}

function glueUp(kit: Kit): Draft {
  const { frame } = kit;
  const members = instanceIds(kit.parts.filter(isFrame));
  const glued = frameJoints(kit).filter((joint) => joint.held === 'glue').length;
  const lines = [
    say`${counted(glued, 'joint')} to glue; white glue stays open 5 to 15 minutes, so lay out clamps and pieces first and work in stages if you are slower.`,
  ];
  return draft({
    id: `${frame.id}-glue`,
    title: `Glue the frame of ${frame.id}`,
    work: [{ kind: 'machining', noun: `${frame.id}-glue`, makes: members, lines }],
    tools: ['wood-glue', 'clamps'],
    people: 2,
    after: [`${frame.id}-dry-fit`],
    fits: members,
  });
}

function squareUp({ frame }: Kit): Draft {
  const lines = [
    say`Both diagonals read ${length(diagonal(frame))} or at least the same. Pull a clamp along the longer one while the glue is soft, then leave it flat and in its clamps.`,
  ];
  return draft({
    id: `${frame.id}-square`,
    title: `Square ${frame.id} by its diagonals`,
    work: [{ kind: 'machining', noun: `${frame.id}-square`, makes: [], lines }],
    tools: ['tape-measure', 'clamps'],
    people: 2,
    wait: CLAMPED,
    child: 'does with an adult',
    after: [`${frame.id}-glue`],
  });
}

function stripLine(part: Part): Sentence {
  return say`${instances([part])}: ${length(part.blank.length)} by ${length(part.blank.width)}.`;
}

function flanges(kit: Kit): Draft[] {
  const strips = ofRole(kit.parts, 'flange-strip');
  if (strips.length === 0) return [];
  const id = `${kit.frame.id}-flanges`;
  const lines = [say`Frame upside down: glue each strip flat along the middle of its strut.`, ...strips.map(stripLine)];
  return [
    draft({
      id,
      title: `Glue the flange strips under ${kit.frame.id}`,
      work: [{ kind: 'machining', noun: id, makes: instanceIds(strips), lines }],
      tools: ['wood-glue', 'clamps'],
      deeds: ['frame-turning'],
      people: 2,
      wait: CLAMPED,
      child: 'away',
      after: [`${kit.frame.id}-square`],
      fits: instanceIds(strips),
    }),
  ];
}

function deckOn(kit: Kit): Draft[] {
  const decks = ofRole(kit.parts, 'deck');
  if (decks.length === 0) return [];
  const { id } = kit.frame;
  const on = draft({
    id: `${id}-deck`,
    title: `Lay the deck on ${id}`,
    work: [{ kind: 'machining', noun: `${id}-deck`, makes: instanceIds(decks), lines: deckLines(decks) }],
    tools: ['wood-glue', 'screwdriver', 'clamps'],
    people: 2,
    wait: CURED,
    child: 'does with an adult',
    after: [`${id}-square`, `${id}-flanges`, 'panels'],
    fits: instanceIds(decks),
  });
  return [on, trimming(kit)];
}

function deckLines(decks: readonly Part[]): Sentence[] {
  const edge = say`Flush at the reference corner first; what stands over at the other edges is trimmed later.`;
  const seam = say`The pieces meet on the middle of what bears them; glue both sides of the seam.`;
  const pieces = decks.reduce((sum, part) => sum + part.places.length, 0);
  return [edge, ...decks.map(stripLine), ...(pieces > 1 ? [seam] : [])];
}

function trimming({ frame, parts }: Kit): Draft {
  const lines = [
    say`Bearing against the frame, until deck and frame are both ${length(frame.length)} by ${length(frame.width)}.`,
  ];
  return draft({
    id: `${frame.id}-trim`,
    title: `Trim the deck of ${frame.id} flush`,
    work: [{ kind: 'machining', noun: `${frame.id}-trim`, makes: instanceIds(ofRole(parts, 'deck')), lines }],
    tools: ['router', 'flush-trim-bit'],
    child: 'away',
    after: [`${frame.id}-deck`],
  });
}

/** One bench from the dry fit to the trimmed deck. */
export function assembling(kit: Kit): Draft[] {
  if (!kit.parts.some(isFrame)) return [];
  return [dryFit(kit), glueUp(kit), squareUp(kit), ...flanges(kit), ...deckOn(kit)];
}
