import type { Ground, HeightInput, LineInput, TrackInput } from '../../../src/core/track/input.ts';
import type { CurvePiece, Piece, TurnoutPiece, Value } from '../../../src/core/track/piece.ts';
import type { Train } from '../../../src/core/track/train.schema.ts';
import type { Turnout, TurnoutForm } from '../../../src/core/track/turnout.ts';
import { model, table } from '../benchwork/example.ts';

export const radians = (degrees: number) => (degrees * Math.PI) / 180;

export function straight(length: Value, more: { readonly joint?: string; readonly times?: number } = {}): Piece {
  return { kind: 'straight', length, times: more.times ?? null, joint: more.joint ?? null, at: 'piece' };
}

/** A curve to one hand; `through` in degrees. */
export function curve(
  hand: CurvePiece['hand'],
  radius: Value,
  through: Value,
  more: { readonly easement?: number; readonly times?: number; readonly joint?: string } = {},
): Piece {
  return {
    kind: 'curve',
    hand,
    radius,
    through: through === 'to close' ? through : radians(through),
    easement: more.easement ?? 0,
    times: more.times ?? null,
    joint: more.joint ?? null,
    at: 'piece',
  };
}

export function through(turnout: string, enter: TurnoutPiece['enter'], take: TurnoutPiece['take']): Piece {
  return { kind: 'turnout', turnout, enter, take, joint: null, at: 'piece' };
}

export function turnout(id: string, form: TurnoutForm, more: Partial<Turnout> = {}): Turnout {
  return { id, form, frog: null, motor: null, throwBar: null, at: `track.turnouts.${id}`, ...more };
}

export function height(along: number, at: number, curveLength: number | null = null): HeightInput {
  return { along, height: at, curve: curveLength, at: 'height' };
}

export function from(x: number, y: number, heading = 0, level: number | null = 0): LineInput['from'] {
  return { kind: 'place', stance: { x, y, heading: radians(heading) }, height: level };
}

export function line(id: string, pieces: readonly Piece[], more: Partial<LineInput> = {}): LineInput {
  const own = pieces.map((piece, i) => ({ ...piece, at: `track.lines.${id}.lay.${i}` }));
  const rest = { at: `track.lines.${id}`, from: from(0, 0), heights: [], ends: 'open', phase: 'now' as const };
  return { id, ...rest, ...more, pieces: own };
}

export const NO_GROUND: Ground = { benches: [], parts: [], envelopes: [] };

/** Track in N without trains or ground, to be filled. */
export function track(lines: readonly LineInput[], more: Partial<TrackInput> = {}): TrackInput {
  return {
    scale: 'N',
    trains: [],
    roadbed: null,
    flex: { yard: 914.4, height: 3.2 },
    rules: { curvePerPercent: 100, grade: null, radius: 'car-lengths', upperDeck: 6, wire: false },
    lines,
    beside: [],
    turnouts: [],
    ground: NO_GROUND,
    ...more,
  };
}

export function train(id: string, figures: Partial<Train> = {}): Train {
  return {
    id,
    name: id,
    scale: 'N',
    source: 'made for the test',
    length: 62,
    body: 54,
    width: 18,
    height: 24,
    'bogie-centres': 0,
    wheelbase: 28,
    mass: 11,
    'conducting-wheels': 0,
    ...figures,
  };
}

export const COACH = train('coach', {
  length: 166,
  body: 160,
  width: 18.5,
  'bogie-centres': 112,
  wheelbase: 15.6,
  mass: 28,
});

/** The demo's table: 1600 x 1100, struts at 400, 800 and 1200, one along at 550. */
export function tableGround(): Ground {
  const { benches, parts, envelopes } = model(table([17.6, 17.7, 17.8]));
  return { benches, parts, envelopes };
}

const MOTOR = { along: 40, across: 20, below: 45 };

/** The demo's oval with its siding. `radius` is the first curve's; `before` the straight before the turnout. */
export function oval({
  radius = 380,
  before = 360,
}: {
  readonly radius?: number;
  readonly before?: number;
} = {}): TrackInput {
  const main = line(
    'main',
    [
      straight(626, { joint: 'basin-east' }),
      curve('left', radius, 180, { easement: 90 }),
      straight(before),
      through('W1', 'points', 'straight'),
      straight('to close'),
      curve('left', 'to close', 180, { easement: 90 }),
    ],
    {
      from: from(484, 150),
      heights: [height(700, 0), height(1600, 18), height(2600, 18), height(3500, 0)],
      ends: 'main.start',
    },
  );
  const siding = line('siding', [straight(200)], { from: { kind: 'end', name: 'W1.branch' } });
  return track([main, siding], {
    trains: [train('van'), COACH],
    roadbed: { stock: 'cork-3', width: 25, thickness: 3, sheet: { length: 1000, width: 500 } },
    rules: { curvePerPercent: null, grade: null, radius: 'car-lengths', upperDeck: null, wire: false },
    flex: { yard: null, height: null },
    turnouts: [turnout('W1', { kind: 'frog', number: 6, hand: 'right' }, { motor: MOTOR })],
    ground: tableGround(),
  });
}
