import type { Bed } from './bed.ts';
import { RIPS } from './forest.ts';
import type { Area } from './job.ts';
import { type Pass, pass } from './pass.ts';
import type { Field, Piece } from './slicing.ts';
import { exact, fromTicks } from './tick.ts';

/** How the pieces of a bed lie on their sheet, in mm, without the kerf they were grown by. */
export type Lying = { readonly bed: Bed; readonly kerf: number };

/** A field of a ground as a rectangle of its sheet; null when only kerf is left of it. */
export function areaOf(field: Field, { bed, kerf }: Lying): Area | null {
  const { area, across } = bed;
  const [x, y, w, h] = across ? [field.y, field.x, field.h, field.w] : [field.x, field.y, field.w, field.h];
  const length = fromTicks(w - kerf);
  const width = area.width === 0 ? 0 : fromTicks(h - kerf);
  if (w <= kerf || h <= kerf) return null;
  const [left, low] = [exact(area.x + fromTicks(x)), exact(area.y + (area.width === 0 ? 0 : fromTicks(y)))];
  return {
    x: left,
    y: low,
    length: upTo(length, area.x + area.length - left),
    width: upTo(width, area.y + area.width - low),
  };
}

/** Keeps what a rounding up to ticks added from leaving the sheet. */
function upTo(size: number, room: number): number {
  return exact(Math.abs(size - room) < 1e-5 ? room : size);
}

type Cuts = Extract<Piece, { readonly kind: 'cuts' }>;
type Turn = { readonly cut: Pass; readonly setting: number; readonly node: number };

/**
 * The cuts of a bed in saw order: round by round, and in a round the larger setting first, so that the fence is set once
 * for all pieces of one size.
 */
export function sawOrder(root: Piece, lying: Lying): readonly Pass[] {
  const ordered: Pass[] = [];
  let round: readonly Cuts[] = root.kind === 'cuts' ? [root] : [];
  while (round.length > 0) {
    const turns = round.flatMap((node, index) =>
      passesOf(node, lying).map((cut) => ({ cut, setting: cut.setting, node: index })),
    );
    ordered.push(...turns.sort(bySetting).map((turn) => turn.cut));
    round = round.flatMap((node) => node.pieces.filter((piece) => piece.kind === 'cuts'));
  }
  return ordered;
}

function bySetting(a: Turn, b: Turn): number {
  const kind = Number(a.cut.kind === 'crosscut') - Number(b.cut.kind === 'crosscut');
  return kind !== 0 ? kind : a.setting !== b.setting ? b.setting - a.setting : a.node - b.node;
}

/** The passes that part one piece into its pieces, one after the other from the fence. */
function passesOf(node: Cuts, lying: Lying): readonly Pass[] {
  const along = (node.by === RIPS) === lying.bed.across ? 'width' : 'length';
  const kerf = fromTicks(lying.kerf);
  const passes: Pass[] = [];
  let left = areaOf(node, lying);
  for (const piece of node.pieces) {
    const area = areaOf(piece, lying);
    if (left === null || area === null || piece.kind === 'rest') break;
    const at = exact(along === 'length' ? area.y + area.width : area.x + area.length);
    const end = along === 'length' ? left.y + left.width : left.x + left.length;
    if (at >= exact(end)) break;
    const cut = pass(left, { kind: along === 'length' ? 'rip' : 'crosscut', along, at, kerf });
    passes.push({ ...cut, stage: node.level });
    left = cut.yields[1] ?? null;
  }
  return passes;
}
