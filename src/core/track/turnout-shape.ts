import { frogAngle, frogLengths, frogPoint, isListedFrog } from './frog.ts';
import type { TurnoutEnd } from './piece.ts';
import { facingBack, moved, reversedWay, type Stance, type Way, wayLength, wayMove } from './stretch.ts';
import type { Hand, Route, Turnout, TurnoutForm, TurnoutShape } from './turnout.ts';

type Form<K extends TurnoutForm['kind']> = Extract<TurnoutForm, { readonly kind: K }>;

const POINTS: Stance = { x: 0, y: 0, heading: Math.PI };
const START: Stance = { x: 0, y: 0, heading: 0 };

/** Throw bar of a turnout nobody measured: so many gauges from the points' end (common practice, no source). */
const THROW_BAR = 1.5;

const sign = (hand: Hand) => (hand === 'left' ? 1 : -1);
const straight = (length: number): Way => [{ length, k0: 0, k1: 0 }];
const bend = (radius: number, angle: number, way: number): Way => [
  { length: radius * angle, k0: way / radius, k1: way / radius },
];

/** Where a way that starts at the points' end comes out, looking outwards. */
function endOf(way: Way, from: Stance = START): Stance {
  return moved(from, wayMove(way));
}

/** The middle lines of a turnout; `gauge` in mm. */
export function turnoutShape({ form, throwBar }: Turnout, gauge: number): TurnoutShape {
  const shape = formShape(form, gauge);
  const assumed = throwBar === null && form.kind !== 'frog' && form.kind !== 'crossing' ? ['throw'] : [];
  return { ...shape, throwBar: throwBar ?? shape.throwBar, assumed: [...shape.assumed, ...assumed] };
}

function formShape(form: TurnoutForm, gauge: number): TurnoutShape {
  switch (form.kind) {
    case 'frog':
      return byFrog(form, gauge);
    case 'template':
      return byTemplate(form, gauge);
    case 'curved':
      return curved(form, gauge);
    case 'wye':
      return wye(form, gauge);
    case 'three-way':
      return threeWay(form, gauge);
    case 'crossing':
    case 'slip':
      return diamond(form, gauge);
  }
}

/** Two ways from the points. */
function forked(
  ways: readonly (readonly [TurnoutEnd, Way])[],
  rest: Pick<TurnoutShape, 'throwBar' | 'frogPoint' | 'assumed'>,
): TurnoutShape {
  const ends = Object.fromEntries(ways.map(([end, way]) => [end, endOf(way)]));
  return {
    ends: { points: POINTS, ...ends },
    routes: ways.map(([to, way]): Route => ({ from: 'points', to, way })),
    ...rest,
  };
}

/**
 * By frog number: an arc that leaves the straight and ends at the frog's toe, then straight through the frog to its heel.
 * Its tangents have length N g - toe, so the radius is 2N (N g - toe); the points' tips lie `lead` before the frog's point.
 */
function byFrog({ number, hand }: Form<'frog'>, gauge: number): TurnoutShape {
  const { toe, heel, lead } = frogLengths({ number, gauge });
  const beyond = frogPoint({ number, gauge });
  const tangent = beyond - toe;
  const branch = [...bend(2 * number * tangent, frogAngle(number), sign(hand)), ...straight(toe + heel)];
  return forked(
    [
      ['straight', straight(tangent + beyond + heel)],
      ['branch', branch],
    ],
    {
      throwBar: Math.max(0, tangent + beyond - lead),
      frogPoint: tangent + beyond,
      assumed: isListedFrog({ number, gauge }) ? [] : ['lengths'],
    },
  );
}

/** By template: straight lead, arc, and what is left of the branch straight; a radius nobody measured has tangents of half the straight. */
function byTemplate(form: Form<'template'>, gauge: number): TurnoutShape {
  const { hand, angle, lead, branch } = form;
  const radius = form.radius ?? (form.straight - 2 * lead) / (2 * Math.tan(angle / 2));
  const turning = [...(lead > 0 ? straight(lead) : []), ...bend(radius, angle, sign(hand))];
  const left = branch === null ? 0 : branch - wayLength(turning);
  return forked(
    [
      ['straight', straight(form.straight)],
      ['branch', left > 1e-9 ? [...turning, ...straight(left)] : turning],
    ],
    {
      throwBar: THROW_BAR * gauge,
      frogPoint: null,
      assumed: form.radius === null ? ['radius'] : [],
    },
  );
}

/** Both ways to one hand; `straight` is the outer one. */
function curved({ hand, outer, inner }: Form<'curved'>, gauge: number): TurnoutShape {
  const way = (arc: { readonly radius: number; readonly angle: number }) => bend(arc.radius, arc.angle, sign(hand));
  return forked(
    [
      ['straight', way(outer)],
      ['branch', way(inner)],
    ],
    { throwBar: THROW_BAR * gauge, frogPoint: null, assumed: [] },
  );
}

/** Both ways turn half the angle between them, one to each hand. */
function wye({ angle, radius }: Form<'wye'>, gauge: number): TurnoutShape {
  return forked(
    [
      ['left', bend(radius, angle / 2, 1)],
      ['right', bend(radius, angle / 2, -1)],
    ],
    { throwBar: THROW_BAR * gauge, frogPoint: null, assumed: [] },
  );
}

function threeWay({ straight: length, angle, radius }: Form<'three-way'>, gauge: number): TurnoutShape {
  return forked(
    [
      ['straight', straight(length)],
      ['left', bend(radius, angle, 1)],
      ['right', bend(radius, angle, -1)],
    ],
    { throwBar: THROW_BAR * gauge, frogPoint: null, assumed: [] },
  );
}

/**
 * Two straights of one length that cross in their middles; `cross` to `branch` is the second. A slip joins them by arcs
 * on the side of the blunt angle: `points` to `branch`, and for both slips `cross` to `straight`.
 */
function diamond(form: Form<'crossing' | 'slip'>, gauge: number): TurnoutShape {
  const { straight: length, angle, hand } = form;
  const turn = sign(hand) * angle;
  const half = length / 2;
  const out: Stance = { x: half + half * Math.cos(turn), y: half * Math.sin(turn), heading: turn };
  const back: Stance = { x: half - half * Math.cos(turn), y: -half * Math.sin(turn), heading: turn + Math.PI };
  const slip = bend(half / Math.tan(angle / 2), angle, sign(hand));
  const slips: readonly Route[] =
    form.kind === 'crossing'
      ? []
      : [
          { from: 'points', to: 'branch', way: slip },
          ...(form.slips === 'both' ? [{ from: 'cross', to: 'straight', way: otherHand(slip) } as const] : []),
        ];
  return {
    ends: { points: POINTS, straight: { x: length, y: 0, heading: 0 }, branch: out, cross: back },
    routes: [
      { from: 'points', to: 'straight', way: straight(length) },
      { from: 'cross', to: 'branch', way: straight(length) },
      ...slips,
    ],
    throwBar: THROW_BAR * gauge,
    frogPoint: null,
    assumed: [],
  };
}

/** The same arc to the other hand. */
function otherHand(way: Way): Way {
  return way.map(({ length, k0, k1 }) => ({ length, k0: -k0 || 0, k1: -k1 || 0 }));
}

/** The way through a turnout from one end to another, or null when there is none. */
export function routeBetween(shape: TurnoutShape, from: TurnoutEnd, to: TurnoutEnd): Way | null {
  for (const route of shape.routes) {
    if (route.from === from && route.to === to) return route.way;
    if (route.from === to && route.to === from) return reversedWay(route.way);
  }
  return null;
}

/** Ends one can go on to from an end, as the turnout lists its ways. */
export function endsFrom(shape: TurnoutShape, from: TurnoutEnd): readonly TurnoutEnd[] {
  return shape.routes.flatMap((route) => (route.from === from ? [route.to] : route.to === from ? [route.from] : []));
}

/** Where the points' end stands and looks into the turnout, when one enters `end` from `from`. */
export function placedTurnout(shape: TurnoutShape, end: TurnoutEnd, from: Stance): Stance {
  const own = facingBack(shape.ends[end] ?? POINTS);
  const heading = from.heading - own.heading;
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  return { x: from.x - c * own.x + s * own.y, y: from.y - s * own.x - c * own.y, heading };
}

/** An end of a turnout that stands at `place`, looking outwards. */
export function endStance(shape: TurnoutShape, end: TurnoutEnd, place: Stance): Stance {
  const own = shape.ends[end] ?? POINTS;
  return moved(place, { x: own.x, y: own.y, turn: own.heading });
}

/** Whether a word names an end of a turnout. */
export function isEnd(end: string): end is TurnoutEnd {
  return ['points', 'straight', 'branch', 'cross', 'left', 'right'].includes(end);
}
