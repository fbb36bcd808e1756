import { groupOf } from '../../src/core/benchwork/hardware/count.ts';
import type { BenchworkInput, BenchworkModel } from '../../src/core/benchwork/input.ts';
import type { Finding } from '../../src/core/finding.ts';
import { depth } from '../../src/core/geometry/overlap.ts';
import { holds } from '../../src/core/geometry/polygon.ts';
import type { Point, Vector } from '../../src/core/geometry/shapes.ts';
import { dot, minus, plus, times } from '../../src/core/geometry/vector.ts';
import { type Fastener, joinsPieces } from '../../src/core/stock/fastener.ts';
import { partOutline } from '../../src/core/stock/outline.ts';
import type { Joint, Part } from '../../src/core/stock/part.ts';
import { type Body, bodies } from './placed-parts.ts';

/** A model with its bodies, found once for all laws. */
export type Sample = {
  readonly input: BenchworkInput;
  readonly model: BenchworkModel;
  readonly bodies: readonly Body[];
};

export function sampleOf(input: BenchworkInput, model: BenchworkModel): Sample {
  return { input, model, bodies: bodies({ ...model, parts: model.parts.map(unbored) }) };
}

/** A part with its bolt holes left full: a body no smaller than the part, and far quicker to compare. */
function unbored(part: Part): Part {
  return { ...part, features: part.features.filter(({ kind }) => kind !== 'hole') };
}

/** A law returns what breaks it, in words; nothing when it holds. */
export type Law = (sample: Sample) => readonly string[];

const SAME = 1e-6;

function apart(a: Body['box'], b: Body['box'], by = 0): boolean {
  return ([0, 1, 2] as const).some(
    (axis) => a.max[axis] - b.min[axis] <= SAME - by || b.max[axis] - a.min[axis] <= SAME - by,
  );
}

/** Whether any two pieces come as near as `most`; upright boxes, which are quick to tell, first. */
function near(a: Body, b: Body, most: number): boolean {
  const mine = a.pieces.filter((piece) => !apart(piece.box, b.box, most + 3 * SAME));
  const theirs = b.pieces.filter((piece) => !apart(piece.box, a.box, most + 3 * SAME));
  const pairs = mine.flatMap((p) =>
    theirs.filter((q) => !apart(p.box, q.box, most + 3 * SAME)).map((q) => [p, q] as const),
  );
  const plain = pairs.filter(([p, q]) => p.square && q.square);
  return [...plain, ...pairs].some(([p, q]) => depth(p, q) >= -most - SAME);
}

/** Whether any two pieces share more than a touch. */
function overlap(a: Body, b: Body): boolean {
  const mine = a.pieces.filter((piece) => !apart(piece.box, b.box));
  const theirs = b.pieces.filter((piece) => !apart(piece.box, a.box));
  return mine.some((p) => theirs.some((q) => !apart(p.box, q.box) && depth(p, q) > SAME));
}

/** No two solids overlap by more than 1e-6 mm. */
export const nothingOverlaps: Law = ({ bodies: all }) =>
  all.flatMap((a, i) =>
    all
      .slice(i + 1)
      .filter((b) => !apart(a.box, b.box) && overlap(a, b))
      .map((b) => `${a.id} in ${b.id}`),
  );

/** Mates come to each other: no joint is farther apart than its clearance and what its thickest sheet needs. */
export const matesMeet: Law = ({ model, input, bodies: all }) => {
  const by = new Map(all.map((body) => [body.id, body]));
  const uneven = Object.values(input.materials).map(({ thickness }) => thickness.thickest - thickness.mean);
  return model.joints.flatMap((joint) => {
    const [a, b] = joint.between.map((id) => by.get(id));
    if (a === undefined || b === undefined) return [`${joint.id} joins nothing`];
    const most = playOf(joint, Math.max(...uneven));
    return near(a, b, most) ? [] : [`${joint.id}: more than ${most} apart`];
  });
};

function playOf({ kind, clearance }: Joint, uneven: number): number {
  return kind === 'butt' || kind === 'bearing' || kind === 'bolted' ? 0 : clearance + 2 * uneven;
}

/** Floor to deck top is what was asked, legs stand on what they stand on, and reach no higher than the deck's underside. */
export const deckHeightKept: Law = ({ model, input, bodies: all }) => {
  const asked = input.dimensions.height ?? 0;
  const of = (role: string) => all.filter(({ part }) => part.role === role || part.role.startsWith(`${role}-`));
  const deck = of('deck');
  const top = deck.length === 0 ? (model.benches[0]?.sideTop ?? 0) : Math.max(...deck.map(({ box }) => box.max[2]));
  const legs = of('leg');
  const { stand } = input.benches[0]?.legs ?? { stand: { kind: 'floor' as const } };
  const on = stand.kind === 'caster' ? stand.caster.overallHeight : stand.kind === 'foot' ? stand.height : 0;
  const low = Math.min(...legs.map(({ box }) => box.min[2]));
  const high = Math.max(...legs.map(({ box }) => box.max[2]));
  const under = model.benches[0]?.sideTop ?? 0;
  return [
    ...(Math.abs(top - asked) <= SAME ? [] : [`deck top at ${top} for ${asked}`]),
    ...(legs.length === 0 || Math.abs(low - on) <= SAME ? [] : [`legs end ${low} above the floor for ${on}`]),
    ...(legs.length === 0 || Math.abs(high - under) <= SAME ? [] : [`legs reach ${high} for ${under}`]),
  ];
};

/** Boxes keep their slides' clearance, faces the bit all round their own opening, measured from the solids. */
export const drawersClear: Law = ({ model, input, bodies: all }) => {
  const [set] = input.benches[0]?.drawers ?? [];
  if (set === undefined) return [];
  const by = new Map(all.map((body) => [body.id, body]));
  const across = set.side === 'front' || set.side === 'back' ? 0 : 1;
  const drawers = model.envelopes.filter(({ kind }) => kind === 'drawer').map(({ of }) => of);
  return drawers.flatMap((id) => {
    const sides = ['side-left', 'side-right'].map((name) => by.get(`${id}.${name}`));
    const spacers = ['left', 'right'].map((name) => by.get(`spacer.${id.slice(7)}-${name}`));
    const gaps = sides.map((side, i) => gapBetween(side, spacers[i], across));
    const wrong = gaps.filter((gap) => Math.abs(gap - set.slides.clearance) > SAME);
    const face = by.get(`${id}.face`);
    return [
      ...wrong.map((gap) => `${id}: ${gap} for a slide of ${set.slides.clearance}`),
      ...(set.faces === 'cut-out' && face !== undefined ? faceGaps(face, by.get(face.part.from ?? ''), set.bit) : []),
    ];
  });
};

function gapBetween(a: Body | undefined, b: Body | undefined, axis: 0 | 1): number {
  if (a === undefined || b === undefined) return Number.NaN;
  return Math.max(a.box.min[axis] - b.box.max[axis], b.box.min[axis] - a.box.max[axis]);
}

/** The opening round a face: its four edges are the bit away, and its corners rounder by one bit. */
function faceGaps(face: Body, board: Body | undefined, bit: number): readonly string[] {
  if (board === undefined) return [`${face.id} falls out of nothing`];
  const here = face.box;
  const { pose } = board.place;
  const corners = [here.min, here.max]
    .map((p) => minus(p, pose.origin))
    .map((p): Point => [dot(p, pose.x), dot(p, pose.y)]);
  const [x, y] = ([0, 1] as const).map((axis) => corners.map((p) => p[axis]).sort((a, b) => a - b));
  const holes = partOutline(board.part).holes.filter((hole) => spans(hole, [(x?.[0] ?? 0) + bit, (y?.[0] ?? 0) + bit]));
  const hole = holes[0];
  if (hole === undefined) return [`${face.id} has no opening`];
  const edge = (axis: 0 | 1) => [Math.min(...hole.map((p) => p[axis])), Math.max(...hole.map((p) => p[axis]))];
  const gaps = [
    (x?.[0] ?? 0) - (edge(0)[0] ?? 0),
    (edge(0)[1] ?? 0) - (x?.[1] ?? 0),
    (y?.[0] ?? 0) - (edge(1)[0] ?? 0),
    (edge(1)[1] ?? 0) - (y?.[1] ?? 0),
  ];
  const round = cornerRadius(hole) - cornerRadius(partOutline(face.part).outline);
  return [
    ...gaps.filter((gap) => Math.abs(gap - bit) > 0.01).map((gap) => `${face.id}: ${gap} for a bit of ${bit}`),
    ...(Math.abs(round - bit) <= 0.01 ? [] : [`${face.id}: corners differ by ${round}`]),
  ];
}

function spans(hole: readonly Point[], [x, y]: Point): boolean {
  const within = (axis: 0 | 1, at: number) =>
    Math.min(...hole.map((p) => p[axis])) < at && Math.max(...hole.map((p) => p[axis])) > at;
  return within(0, x) && within(1, y);
}

/** Radius of the rounded corner at a loop's lower left: where its left edge begins above its lowest point. */
export function cornerRadius(loop: readonly Point[]): number {
  const left = Math.min(...loop.map(([x]) => x));
  const low = Math.min(...loop.map(([, y]) => y));
  return Math.min(...loop.filter(([x]) => x - left < 1e-3).map(([, y]) => y)) - low;
}

/** Whether a point of the bench lies in a body's wood. */
export function inWood(body: Body, point: Vector): boolean {
  const { pose } = body.place;
  const from = minus(point, pose.origin);
  const [x, y, z] = [dot(from, pose.x), dot(from, pose.y), dot(from, pose.z)];
  const cut = body.solid.cuts.some(({ normal, offset }) => dot(normal, [x, y, z]) > offset);
  return !cut && body.solid.prisms.some((prism) => z >= prism.from && z <= prism.to && holds(prism.polygon, [x, y]));
}

/** Points along a screw's thread in its last piece, on its skin: from just inside that piece to the tip. */
export function threadPoints(screw: Fastener, last: Body): readonly Vector[] {
  const axis = screw.direction;
  const across: Vector[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const sides = across.filter((one) => Math.abs(dot(one, axis)) < 0.5);
  const at = (along: number) => plus(screw.head, times(axis, along));
  const steps = Array.from({ length: 41 }, (_, i) => (screw.length * i) / 40);
  const first = steps.find((along) => inWood(last, at(along))) ?? screw.length;
  return steps
    .filter((along) => along >= first)
    .flatMap((along) => [
      at(along),
      ...sides.flatMap((one) => [-0.49, 0.49].map((k) => plus(at(along), times(one, k * screw.diameter)))),
    ]);
}

/** Every screw goes through all it joins, holds in the last and never comes out of it; its thread has wood all round. */
export const screwsStayInside: Law = ({ model, bodies: all }) => {
  const by = new Map(all.map((body) => [body.id, body]));
  return model.fasteners
    .filter(({ form }) => form === 'screw')
    .flatMap((screw) => {
      const last = by.get(screw.through[screw.through.length - 1] ?? '');
      if (last === undefined) return [`${screw.id} goes into nothing`];
      const tip = plus(screw.head, times(screw.direction, screw.length));
      const points = screw.holds.includes('.pull') ? threadPoints(screw, last) : [tip];
      const out = points.filter((point) => !inWood(last, point));
      return out.length === 0 && points.length > 0 ? [] : [`${screw.id} leaves ${last.id} at ${out[0]}`];
    });
};

/** What of a drawer's or leg's own pieces, or of the frame and what is screwed into it, is there when a screw is driven. */
function thereWhenDriven(screw: Fastener, all: readonly Body[]): readonly Body[] {
  const [own] = /^(?:drawer|leg)\.[a-z]+-[a-z0-9]+/.exec(screw.through[0] ?? '') ?? [];
  const others = all.filter(({ id }) => !screw.through.includes(id));
  if (own !== undefined) return others.filter(({ id }) => id.startsWith(`${own}.`));
  return others.filter(({ id, part }) => !/^(?:deck|drawer\.|leg\.)/.test(id) && part.role !== 'shelf');
}

/** A stubby driver comes to every screw, the screw standing out before it, or a halt says that it does not. */
export const driversReach: Law = ({ model, bodies: all }) => {
  const halted = new Set(model.findings.filter(({ rule }) => rule === 'no-room-for-driver').map(({ where }) => where));
  return model.fasteners
    .filter(({ form, holds }) => form === 'screw' && !halted.has(holds))
    .flatMap((screw) => {
      const room = screw.length + 90;
      const points = Array.from({ length: 60 }, (_, i) =>
        plus(screw.head, times(screw.direction, -(0.5 + ((room - 1) * i) / 59))),
      );
      const inWay = thereWhenDriven(screw, all).find(({ box, ...body }) =>
        points.some((point) => inBox(point, box) && inWood({ box, ...body }, point)),
      );
      return inWay === undefined ? [] : [`${screw.id}: ${inWay.id} is in the driver's way`];
    });
};

function inBox(point: Vector, { min, max }: Body['box']): boolean {
  return ([0, 1, 2] as const).every((axis) => point[axis] >= min[axis] && point[axis] <= max[axis]);
}

function placesTold(what: Finding['what']): number {
  const [, count] = /\((\d+) places\)/.exec(what.filter((said) => typeof said === 'string').join('')) ?? [];
  return Number(count ?? 1);
}

/** Every joint that screws or bolts hold has its own, each bolt its nut and two washers, and the list counts them all. */
export const hardwareCounted: Law = ({ model, input }) => {
  const held = model.joints.filter((joint) => joint.held === 'screws' || joint.held === 'bolts');
  const halts = model.findings.filter(({ rule }) => rule === 'no-screw-fits' || rule === 'no-bolt-fits');
  const excused = halts.reduce((sum, { what }) => sum + placesTold(what), 0);
  const without = held.filter(({ id }) => !model.fasteners.some(({ holds: joint }) => joint === id));
  // what stock lacks is told once, with the number of its places
  const bare = without.length > excused ? without : [];
  const form = (wanted: string) =>
    model.hardware
      .filter(({ item }) => input.goods?.hardware.find(({ id }) => id === item)?.form === wanted)
      .reduce((sum, { quantity }) => sum + quantity, 0);
  const bolts = model.fasteners.filter((one) => one.form === 'bolt' && joinsPieces(one)).length;
  const drawers = model.envelopes.filter(({ kind }) => kind === 'drawer').length;
  const wheels = model.envelopes.filter(({ kind }) => kind === 'caster').length;
  const casters = model.hardware
    .filter(({ item }) => item === 'caster-75')
    .reduce((sum, { quantity }) => sum + quantity, 0);
  const listed = model.fasteners.every(({ item, length }) =>
    model.hardware.some((use) => use.item === item && use.length === length),
  );
  return [
    ...bare.map(({ id }) => `${id} is held by nothing`),
    ...(form('nut') === bolts ? [] : [`${form('nut')} nuts for ${bolts} bolts`]),
    ...(form('washer') === 2 * bolts + 4 * wheels
      ? []
      : [`${form('washer')} washers for ${bolts} bolts and ${wheels} wheels`]),
    ...(form('catch') === drawers ? [] : [`${form('catch')} catches for ${drawers} drawers`]),
    ...(casters === wheels ? [] : [`${casters} casters for ${wheels} circles`]),
    ...(listed ? [] : ['a fastener is not in the list']),
  ];
};

/** As many screws and bolts are counted at each place as have a place of their own there. */
export const placesCounted: Law = ({ model, input }) => {
  const forms = new Map((input.goods?.hardware ?? []).map(({ id, form }) => [id, form]));
  const counted = model.hardware.filter(({ item }) => forms.get(item) === 'screw' || forms.get(item) === 'bolt');
  const placed = new Map<string, number>();
  for (const { item, holds } of model.fasteners) {
    const key = `${item} at ${groupOf(holds)}`;
    placed.set(key, (placed.get(key) ?? 0) + 1);
  }
  const keys = new Map(counted.map(({ item, where, quantity }) => [`${item} at ${where}`, quantity]));
  return [...new Set([...keys.keys(), ...placed.keys()])]
    .filter((key) => keys.get(key) !== placed.get(key))
    .map((key) => `${keys.get(key) ?? 0} counted, ${placed.get(key) ?? 0} placed: ${key}`);
};

/** Wood left between what fixes metal and a hole in the same piece, mm. */
const BESIDE = 1;

/** Screws that fix metal keep off the holes of their piece, and each bolt into an insert stands in a hole of its own. */
export const metalFixed: Law = ({ model, bodies: all }) => {
  const by = new Map(all.map((body) => [body.id, body]));
  // bodies have their holes filled; the model's parts have them
  const parts = new Map(model.parts.map((part) => [part.id, part]));
  return model.fasteners
    .filter((one) => !joinsPieces(one))
    .flatMap((one) => {
      const body = by.get(one.through[0] ?? '');
      if (body === undefined) return [`${one.id} is in nothing`];
      const { pose } = body.place;
      const from = minus(one.head, pose.origin);
      const [x, y, across] = [dot(from, pose.x), dot(from, pose.y), Math.abs(dot(one.direction, pose.z))];
      if (across < 1 - SAME) return [`${one.id} goes into an edge`];
      const holes = (parts.get(body.part.id)?.features ?? []).flatMap((feature) =>
        feature.kind === 'hole'
          ? [{ off: Math.hypot(feature.at[0] - x, feature.at[1] - y), wide: feature.diameter }]
          : [],
      );
      if (one.form === 'bolt') return holes.some(({ off }) => off < SAME) ? [] : [`${one.id} has no insert`];
      const least = (wide: number) => (wide + one.diameter) / 2 + BESIDE;
      return holes.some(({ off, wide }) => off < least(wide)) ? [`${one.id} is beside a hole`] : [];
    });
};
