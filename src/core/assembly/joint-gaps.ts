import type { Vector } from '../geometry/shapes.ts';
import { dot } from '../geometry/vector.ts';
import type { Joint, Part } from '../stock/part.ts';
import type { KnownThickness } from '../stock/thickness.ts';
import { bodiesOf } from './bodies.ts';
import type { Body } from './body.ts';
import { heldPlay, type Play, playsOf, stopGap } from './play.ts';

/** One gap of a joint, measured on the solids, and the range it may lie in; mm. */
export type JointGap = {
  readonly joint: string;
  readonly between: readonly [string, string];
  /** across a slot or pocket, at the bottom of a lap, at the seat where faces meet; `nowhere` when they cannot touch */
  readonly place: 'across' | 'bottom' | 'seat' | 'nowhere';
  readonly gap: number;
  readonly least: number;
  readonly most: number;
};

/** What the gaps are measured from. */
export type Fitted = {
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  /** sheets with their mean and thickest reading; a sheet that is not among them counts as even */
  readonly thicknesses: readonly KnownThickness[];
};

/** Solids meet to this, mm. */
export const SEATED = 1e-6;

/** Every gap of every declared joint, from the solids and not from the figures that made them. */
export function gapsOf(fitted: Fitted): readonly JointGap[] {
  return gapsBetween(bodiesOf(fitted.parts), fitted);
}

/** The same from bodies that are there already. */
export function gapsBetween(bodies: readonly Body[], { parts, joints, thicknesses }: Fitted): readonly JointGap[] {
  const by = new Map(bodies.map((one) => [one.id, one]));
  const slack = slackOf(parts, thicknesses);
  return joints.flatMap((joint) => {
    const [entered, entering] = [by.get(joint.between[0]), by.get(joint.between[1])];
    if (entered === undefined || entering === undefined) return [];
    return measured({ joint, entered, entering, slack });
  });
}

type Slack = (id: string, axis: Vector) => number;

type Pair = { readonly joint: Joint; readonly entered: Body; readonly entering: Body; readonly slack: Slack };

/** How much thicker a sheet's thickest reading is than its mean, along a part's own thickness; 0 along its other axes. */
function slackOf(parts: readonly Part[], thicknesses: readonly KnownThickness[]): Slack {
  const over = new Map(thicknesses.map(({ stock, thickest, mean }) => [stock, thickest - mean]));
  const places = new Map(
    parts.flatMap((part) => part.places.map(({ id, pose }) => [id, { z: pose.z, slack: over.get(part.stock) ?? 0 }])),
  );
  return (id, axis) => {
    const place = places.get(id);
    return place !== undefined && Math.abs(dot(place.z, axis)) > 1 - 1e-9 ? place.slack : 0;
  };
}

function measured(pair: Pair): readonly JointGap[] {
  const plays = playsOf(pair.entering, pair.entered);
  switch (pair.joint.kind) {
    case 'lap':
      return [...acrossGaps(pair, square(pair, plays), 2), bottomGap(pair, square(pair, plays))];
    case 'dado':
    case 'groove':
      return [...acrossGaps(pair, square(pair, plays), 1), floorGap(pair, plays)];
    case 'rabbet':
      return [shoulderGap(pair, square(pair, plays)), floorGap(pair, plays)];
    case 'butt':
    case 'bearing':
    case 'bolted':
      return [seatGap(pair, plays)];
  }
}

/** Plays along the parts' own edges: a slot's width says nothing along the slant of a taper or mitre. */
function square({ entered, entering }: Pair, plays: readonly Play[]): readonly Play[] {
  const own = [...entered.axes.slice(0, 3), ...entering.axes.slice(0, 3)];
  return plays.filter(({ axis }) => own.some((edge) => Math.abs(dot(edge, axis)) > 1 - 1e-9));
}

/** Room across a mate: its thickest reading goes in, with no more than the clearance to spare. */
function acrossGap(pair: Pair, gap: number, axis: Vector): JointGap {
  const { joint, slack } = pair;
  const least = Math.max(slack(joint.between[0], axis), slack(joint.between[1], axis));
  return gapOf(pair, { place: 'across', gap, least, most: least + joint.clearance });
}

function gapOf({ joint }: Pair, rest: Omit<JointGap, 'joint' | 'between'>): JointGap {
  return { joint: joint.id, between: joint.between, ...rest };
}

/** Gaps along axes on which the mate is held both ways; fewer than `held` means that it is not let in. */
function acrossGaps(pair: Pair, plays: readonly Play[], held: number): readonly JointGap[] {
  const gaps = plays.flatMap((play) => {
    const gap = heldPlay(play);
    return gap === null ? [] : [acrossGap(pair, gap, play.axis)];
  });
  return gaps.length >= held ? gaps : [...gaps, nowhere(pair, plays)];
}

/** What is left at the bottom of a lap's two slots. */
function bottomGap(pair: Pair, plays: readonly Play[]): JointGap {
  const gap = nearest(plays.map(stopGap));
  const asked = 2 * pair.joint.relief;
  return gap === null ? nowhere(pair, plays) : gapOf(pair, { place: 'bottom', gap, least: asked, most: asked });
}

function isFloor({ entered }: Pair, { axis }: Play): boolean {
  const face = entered.axes[2];
  return face !== undefined && Math.abs(dot(face, axis)) > 1 - 1e-9;
}

/** How far a mate is from the floor of its pocket, square to the face that is cut; a panel may float in its groove by the relief. */
function floorGap(pair: Pair, plays: readonly Play[]): JointGap {
  const gap = nearest(plays.filter((play) => isFloor(pair, play)).map(stopGap));
  return gap === null ? nowhere(pair, plays) : gapOf(pair, { place: 'seat', gap, least: 0, most: pair.joint.relief });
}

/** A rabbet is open on one side; what is left at its shoulder. */
function shoulderGap(pair: Pair, plays: readonly Play[]): JointGap {
  const sideways = plays.filter((play) => !isFloor(pair, play) && stopGap(play) !== null);
  const gap = nearest(sideways.map(stopGap));
  const axis = sideways.find((play) => stopGap(play) === gap)?.axis;
  if (gap === null || axis === undefined) return nowhere(pair, plays);
  return acrossGap(pair, gap, axis);
}

/** Where two faces meet: the nearest stop; bolts draw a clearance together. */
function seatGap(pair: Pair, plays: readonly Play[]): JointGap {
  const gap = nearest(plays.flatMap(({ ahead, behind }) => [ahead, behind]));
  if (gap === null) return nowhere(pair, plays);
  return gapOf(pair, { place: 'seat', gap, least: 0, most: pair.joint.kind === 'bolted' ? pair.joint.clearance : 0 });
}

/** A joint whose parts never come to each other as its kind asks; the gap is the nearest they come, 0 if they never do. */
function nowhere(pair: Pair, plays: readonly Play[]): JointGap {
  const gap = nearest(plays.flatMap(({ ahead, behind }) => [ahead, behind])) ?? 0;
  return gapOf(pair, { place: 'nowhere', gap, least: 0, most: pair.joint.clearance });
}

function nearest(gaps: readonly (number | null)[]): number | null {
  return gaps.reduce((least, gap) => (gap === null || (least !== null && least <= gap) ? least : gap), null);
}

/** Whether a measured gap lies in its range; a joint that cannot touch never does. */
export function fits({ place, gap, least, most }: JointGap): boolean {
  return place !== 'nowhere' && gap >= least - SEATED && gap <= most + SEATED;
}
