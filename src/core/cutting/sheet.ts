import type { Bed } from './bed.ts';
import type { Area, Cut, CutJob, CutPlace, CutSheet } from './job.ts';
import type { Nested } from './nesting.ts';
import type { Packing } from './packing.ts';
import { areaOf, type Lying, sawOrder } from './saworder.ts';
import { type Piece, slicing } from './slicing.ts';
import type { Task } from './task.ts';
import { exact, fromTicks, LONGEST } from './tick.ts';

type Which = { readonly task: Task; readonly packing: Packing; readonly sheet: number };

/** One sheet of a packing with its parts, its cuts in saw order, and what is left of it. */
export function sheetOf(job: CutJob, { task, packing, sheet }: Which): CutSheet {
  const kind = packing.kinds[sheet] ?? 0;
  const stock = job.stock[kind];
  const laydown = task.laydowns[kind];
  const roots = packing.sheetOf.flatMap((of, root) => (of === sheet ? [root] : []));
  const beds = roots.flatMap((root, index) => {
    const bed = laydown?.beds[index];
    return bed === undefined
      ? []
      : [{ root: slicing(packing.forest, root, bed.ground), lying: { bed, kerf: task.kerf } }];
  });
  const passes = [...(laydown?.cuts ?? []), ...beds.flatMap(({ root, lying }) => sawOrder(root, lying))];
  const sawn: Cut[] = passes.map((cut, index) => ({ number: index + 1, ...cut }));
  const parts = beds.flatMap(({ root, lying }) => placesOf(root, { task, lying }));
  const whole = {
    x: 0,
    y: 0,
    length: Math.min(LONGEST, stock?.length ?? 0),
    width: Math.min(LONGEST, stock?.width ?? 0),
  };
  const left = leftOf(whole, { cuts: sawn, parts });
  const kept = worthKeeping(job, left);
  const base = { ...{ stock: stock?.id ?? '', ...sizeOf(whole) }, kerf: fromTicks(task.kerf), parts, offcuts: kept };
  // a router cuts outlines: no cut runs from edge to edge, and nothing falls off
  if (job.style.kind === 'router') return { ...base, cuts: [], waste: [] };
  return { ...base, cuts: sawn, waste: left.filter((area) => !kept.includes(area)) };
}

function sizeOf(whole: Area): { readonly length: number; readonly width: number } {
  return { length: whole.length, width: whole.width };
}

function worthKeeping(job: CutJob, left: readonly Area[]): readonly Area[] {
  const flat = job.stock.some((stock) => stock.width === 0);
  return left.filter((area) => area.length > 0 && (flat ? area.length : Math.min(area.length, area.width)) >= job.keep);
}

/** One sheet nested freely for the router. */
export function nestedSheet(
  job: CutJob,
  task: Task,
  nest: { readonly kind: number; readonly nested: readonly Nested[] },
): CutSheet {
  const stock = job.stock[nest.kind];
  const parts = nest.nested.flatMap((field) => {
    const bed = task.laydowns[nest.kind]?.beds[field.root];
    return bed === undefined ? [] : placesOf({ ...field, kind: 'part' }, { task, lying: { bed, kerf: task.kerf } });
  });
  const size = { length: Math.min(LONGEST, stock?.length ?? 0), width: Math.min(LONGEST, stock?.width ?? 0) };
  return {
    ...{ stock: stock?.id ?? '', ...size, kerf: fromTicks(task.kerf), parts },
    ...{ cuts: [], offcuts: [], waste: [] },
  };
}

type Lain = { readonly task: Task; readonly lying: Lying };

function placesOf(piece: Piece, lain: Lain): readonly CutPlace[] {
  if (piece.kind === 'cuts') return piece.pieces.flatMap((inner) => placesOf(inner, lain));
  if (piece.kind === 'rest') return [];
  const part = lain.task.parts[lain.task.partOf[piece.item] ?? -1];
  const area = areaOf(piece, lain.lying);
  if (part === undefined || area === null) return [];
  const turned = isTurned(piece, { ...lain, bed: lain.lying.bed });
  const [length, width] = turned ? [part.width, part.length] : [part.length, part.width];
  return [{ part: part.id, x: area.x, y: area.y, length: exact(length), width: exact(width), turned }];
}

/** A part lies turned when its length is along the sheet's width. */
function isTurned(piece: Extract<Piece, { kind: 'part' }>, { task, bed }: Lain & { readonly bed: Bed }): boolean {
  const part = task.parts[task.partOf[piece.item] ?? -1];
  if (part === undefined || part.width === part.length) return bed.across !== (part?.grain === 'width');
  const size = (part.length > part.width ? Math.max : Math.min)(piece.w, piece.h);
  return (piece.w === size) === bed.across;
}

/** The pieces that the cuts leave and that are no part. */
function leftOf(
  whole: Area,
  made: { readonly cuts: readonly Cut[]; readonly parts: readonly CutPlace[] },
): readonly Area[] {
  const pieces = new Map([[keyOf(whole), whole]]);
  for (const cut of made.cuts) {
    pieces.delete(keyOf(cut.from));
    for (const area of cut.yields) pieces.set(keyOf(area), area);
  }
  const taken = new Set(made.parts.map((part) => `${part.x} ${part.y}`));
  return [...pieces.values()].filter((area) => !taken.has(`${area.x} ${area.y}`));
}

function keyOf(area: Area): string {
  return `${area.x} ${area.y} ${area.length} ${area.width}`;
}
