import type { BenchworkInput, BenchworkModel } from '../../src/core/benchwork/input.ts';
import { union } from '../../src/core/geometry/booleans.ts';
import type { Convex } from '../../src/core/geometry/convex.ts';
import { depth } from '../../src/core/geometry/overlap.ts';
import { area } from '../../src/core/geometry/polygon.ts';
import type { Point, Vector } from '../../src/core/geometry/shapes.ts';
import { volume } from '../../src/core/geometry/solid.ts';
import { dot, minus } from '../../src/core/geometry/vector.ts';
import { partOutline } from '../../src/core/stock/outline.ts';
import type { Joint } from '../../src/core/stock/part.ts';
import { type Body, bodies, chords, throughThickness } from './placed-parts.ts';

/** A law returns what breaks it, in words; nothing when it holds. */
export type Law = (model: BenchworkModel, input: BenchworkInput) => readonly string[];

const SAME = 1e-6;

/** The frame's outside, from the placed solids, is what was asked. */
export const outsideKept: Law = (model, input) => {
  const frame = bodies(model).filter(
    ({ part }) => part.role === 'side' || part.role === 'end' || part.role === 'strut',
  );
  const asked = [input.dimensions.length ?? 0, input.dimensions.width ?? 0, input.dimensions.side ?? 0];
  return ([0, 1, 2] as const).flatMap((axis) => {
    const low = Math.min(...frame.map(({ box }) => box.min[axis]));
    const high = Math.max(...frame.map(({ box }) => box.max[axis]));
    return Math.abs(high - low - (asked[axis] ?? 0)) <= SAME ? [] : [`axis ${axis}: ${high - low} for ${asked[axis]}`];
  });
};

/** No two solids overlap by more than 1e-6 mm. */
export const nothingOverlaps: Law = (model) => {
  const all = bodies(model);
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => {
      const deepest = overlapOf(a, b);
      return deepest > SAME ? [`${a.id} and ${b.id} overlap by ${deepest}`] : [];
    }),
  );
};

function overlapOf(a: Body, b: Body): number {
  if (apart(a.box, b.box)) return 0;
  const mine = a.pieces.filter((piece) => !apart(piece.box, b.box));
  const theirs = b.pieces.filter((piece) => !apart(piece.box, a.box));
  return Math.max(0, ...mine.flatMap((p) => theirs.filter((q) => !apart(p.box, q.box)).map((q) => depth(p, q))));
}

function apart(a: Body['box'], b: Body['box']): boolean {
  return ([0, 1, 2] as const).some((axis) => a.max[axis] - b.min[axis] <= SAME || b.max[axis] - a.min[axis] <= SAME);
}

/** Slots, laps and dados fit their mates, measured from outlines and solids. */
export const matesMatch: Law = (model, input) => {
  const by = new Map(bodies(model).map((body) => [body.id, body]));
  const known = input.materials.frame?.thickness;
  const most = (clearance: number) => clearance + (known === undefined ? 0 : known.thickest - known.mean);
  return model.joints.flatMap((joint) => {
    const [a, b] = joint.between.map((id) => by.get(id));
    if (a === undefined || b === undefined) return [`${joint.id} joins nothing`];
    if (joint.kind === 'lap') return lapMisfits({ joint, a, b, most: most(joint.clearance) });
    if (joint.kind === 'dado' || joint.kind === 'rabbet')
      return seatMisfits({ joint, a, b, most: most(joint.clearance) });
    return touching(a, b) ? [] : [`${joint.id} does not touch`];
  });
};

type Pair = { readonly joint: Joint; readonly a: Body; readonly b: Body; readonly most: number };

/** Slots as gaps in each strut's outline; the gap at their bottoms as what the two depths leave. */
function lapMisfits({ joint, a, b, most }: Pair): readonly string[] {
  const [low, high] = [slotAt(a, b, 'top'), slotAt(b, a, 'bottom')];
  if (low === null || high === null) return [`${joint.id}: a slot is missing`];
  const bottom = high.end - low.end;
  return [
    ...gapFaults(`${joint.id} across`, low.width - thicknessOf(b), most),
    ...gapFaults(`${joint.id} along`, high.width - thicknessOf(a), most),
    ...(Math.abs(bottom - 2 * joint.relief) <= SAME
      ? []
      : [`${joint.id}: ${bottom} at the bottom for 2 x ${joint.relief}`]),
  ];
}

function gapFaults(what: string, gap: number, most: number): readonly string[] {
  return gap >= -SAME && gap <= most + SAME ? [] : [`${what}: gap ${gap} outside 0 to ${most}`];
}

function thicknessOf({ solid }: Body): number {
  return Math.max(...solid.prisms.map(({ to }) => to)) - Math.min(...solid.prisms.map(({ from }) => from));
}

function middleOf({ box: { min, max } }: Body): Vector {
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
}

/** The gap in a strut's outline where its mate crosses: its width, and the height of its end in the bench. */
function slotAt(
  body: Body,
  mate: Body,
  edge: 'top' | 'bottom',
): { readonly width: number; readonly end: number } | null {
  const { outline } = partOutline(body.part);
  const middle = minus(middleOf(mate), body.place.pose.origin);
  const at = dot(middle, body.place.pose.x);
  const high = body.part.blank.width;
  const along = chords(outline, 1, edge === 'top' ? high - 0.01 : 0.01);
  const before = Math.max(...along.map(([, to]) => to).filter((to) => to <= at));
  const after = Math.min(...along.map(([from]) => from).filter((from) => from >= at));
  const left = chords(outline, 0, at)[0];
  if (!Number.isFinite(after - before) || left === undefined) return null;
  const up = edge === 'top' ? left[1] : left[0];
  return { width: after - before, end: body.place.pose.origin[2] + up };
}

/** How deep a mate enters, and how deep and wide its pocket is, probed through the solid that is entered. */
function seatMisfits({ joint, a, b, most }: Pair): readonly string[] {
  const inward = a.place.pose.z;
  const axis = Math.abs(inward[0]) > 0.5 ? 0 : 1;
  const across = axis === 0 ? 1 : 0;
  const stretch = throughThickness(a, middleOf(b));
  const floor = stretch[stretch.length - 1]?.[1] ?? 0;
  const face = thicknessOf(a);
  const reached =
    (inward[axis] ?? 0) > 0 ? b.box.min[axis] - a.place.pose.origin[axis] : a.place.pose.origin[axis] - b.box.max[axis];
  const wide = pocketWidth(a, middleOf(b), floor);
  return [
    ...(Math.abs(reached - floor) <= SAME ? [] : [`${joint.id}: enters ${face - reached}, cut ${face - floor}`]),
    ...(face - floor > SAME ? [] : [`${joint.id}: nothing is cut`]),
    ...gapFaults(joint.id, wide - (b.box.max[across] - b.box.min[across]), most),
  ];
}

/** Width of the pocket whose floor lies at a height of the part, found from the prisms above that floor. */
function pocketWidth(body: Body, point: Vector, floor: number): number {
  const { pose } = body.place;
  const from = minus(point, pose.origin);
  const y = dot(from, pose.y);
  const x = dot(from, pose.x);
  const above = body.solid.prisms
    .filter((prism) => prism.from >= floor - SAME)
    .flatMap(({ polygon }) => chords(polygon.outline, 1, y));
  const before = Math.max(0, ...above.map(([, to]) => to).filter((to) => to <= x));
  const after = Math.min(body.part.blank.length, ...above.map(([start]) => start).filter((start) => start >= x));
  return after - before;
}

function touching(a: Body, b: Body): boolean {
  const shared = ([0, 1, 2] as const).map(
    (axis) => Math.min(a.box.max[axis], b.box.max[axis]) - Math.max(a.box.min[axis], b.box.min[axis]),
  );
  return shared.every((s) => s >= -SAME) && shared.some((s) => Math.abs(s) <= SAME);
}

/**
 * What is printed to 0.1 mm adds up as printed: behind the rabbet, the end, behind the rabbet again are the width. A mean
 * thickness between two tenths may cost one tenth, never more.
 */
export const chainsClose: Law = (model, input) => {
  const tenth = (mm: number) => Math.round(mm * 10);
  const side = model.parts.find(({ places }) => places.some(({ id }) => id === 'side.front'));
  const rabbet = side?.features.find((feature) => feature.kind === 'rabbet');
  if (side === undefined || rabbet?.kind !== 'rabbet') return ['no rabbet'];
  const most = Math.abs(side.blank.thickness * 10 - tenth(side.blank.thickness)) < SAME ? 0 : 1;
  const behind = tenth(side.blank.thickness) - tenth(rabbet.depth);
  return model.parts.flatMap(({ id, role, blank }) => {
    if (role !== 'end' && role !== 'strut') return [];
    const outside = tenth(input.dimensions[id.includes('along') ? 'length' : 'width'] ?? 0);
    const sum = 2 * behind + tenth(blank.length);
    return Math.abs(sum - outside) <= most ? [] : [`${id}: prints ${sum / 10} for ${outside / 10}`];
  });
};

/** Volumes of the parts, each summed along its own thickness, are the volume of their union, summed up the bench's height. */
export const materialAddsUp: Law = (model) => {
  const all = bodies(model);
  const apiece = all.reduce((sum, { solid }) => sum + volume(solid), 0);
  const together = unionVolume(all.flatMap(({ pieces }) => pieces));
  return Math.abs(apiece - together) <= 1e-5 * apiece ? [] : [`parts ${apiece}, together ${together}`];
};

/** By slices level with the floor, halfway between heights that have corners: sizes change evenly between those. */
function unionVolume(pieces: readonly Convex[]): number {
  const heights = pieces.flatMap(({ corners }) => corners.map(([, , z]) => z)).sort((a, b) => a - b);
  const levels = heights.filter((z, i) => i === 0 || z - (heights[i - 1] ?? z) > SAME);
  return levels.slice(1).reduce((sum, to, i) => {
    const from = levels[i] ?? to;
    const middle = (from + to) / 2;
    const slices = pieces
      .filter(({ box }) => box.min[2] < middle && box.max[2] > middle)
      .map((piece) => slice(piece, middle));
    return sum + union(slices, []).reduce((total, polygon) => total + area(polygon), 0) * (to - from);
  }, 0);
}

/** Where a level plane meets a convex piece: the crossings of its edges, in order round their middle. */
function slice(piece: Convex, z: number): readonly Point[] {
  const crossings = piece.faces.flatMap((face) =>
    face.flatMap((p, i): readonly Point[] => {
      const q = face[(i + 1) % face.length] ?? p;
      if (p[2] > z === q[2] > z) return [];
      const share = (z - p[2]) / (q[2] - p[2]);
      return [[p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])]];
    }),
  );
  const [mx, my] = [0, 1].map((axis) => crossings.reduce((sum, p) => sum + (p[axis] ?? 0), 0) / crossings.length);
  const angle = (p: Point) => Math.atan2(p[1] - (my ?? 0), p[0] - (mx ?? 0));
  return [...crossings].sort((p, q) => angle(p) - angle(q));
}

/** Every part fits a size of its stock, or a finding says that it does not. */
export const fitsOrSaysSo: Law = (model, input) =>
  model.parts.flatMap(({ id, stock, blank }) => {
    const sheet = Object.values(input.materials).find((material) => material.stock.id === stock)?.stock;
    const sizes = sheet?.kind === 'sheet' ? sheet.sizes : [];
    const turned = blank.grain === 'any';
    const fits = sizes.some(
      (size) =>
        (blank.length <= size.length && blank.width <= size.width) ||
        (turned && blank.length <= size.width && blank.width <= size.length),
    );
    const told = model.findings.some(
      ({ rule, where, level }) => rule === 'larger-than-stock' && where === id && level === 'halt',
    );
    return fits !== told ? [] : [`${id}: ${fits ? 'fits, and yet a halt' : 'fits nothing, and nothing says so'}`];
  });
