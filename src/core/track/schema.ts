import { z } from 'zod';
import { stepSchema } from '../steps/schema.ts';
import type { QuantityKit } from '../units/schema.ts';
import { dottedName, identifier, renamed, yesNo } from '../units/words.schema.ts';

/** A value the line's closing has to find. */
const toClose = z.literal('to close');

/** Room a turnout motor needs below the deck: along the track, across it, and down. */
function motorSchema(kit: QuantityKit) {
  return z.strictObject({ along: kit.length, across: kit.length, below: kit.length });
}

/** To which hand the branch leaves, seen from the points. */
const hand = z.enum(['left', 'right']);

/** What every turnout with points may say of its frog and its motor. */
function worksSchema(kit: QuantityKit) {
  return {
    /** whether the frog is fed */
    'frog-type': z.enum(['live', 'dead']).optional(),
    motor: motorSchema(kit).optional(),
    /** from the points' end to the throw bar */
    throw: kit.length.optional(),
  };
}

/** Turnouts of other forms than a straight with a branch. */
function formSchemas(kit: QuantityKit) {
  const works = worksSchema(kit);
  const arc = z.strictObject({ radius: kit.length, angle: kit.angle });
  const measured = { straight: kit.length, angle: kit.angle };
  return [
    z
      .strictObject({ form: z.literal('curved'), outer: arc, inner: arc, hand, ...works })
      .describe('Both ways turn to one hand; `straight` is the outer one'),
    z
      .strictObject({ form: z.literal('wye'), angle: kit.angle, radius: kit.length, ...works })
      .describe('One way to each hand, the angle between them; ends left and right'),
    z
      .strictObject({ form: z.literal('three-way'), ...measured, radius: kit.length, ...works })
      .describe('Straight on and to both hands; ends straight, left and right'),
    z
      .strictObject({ form: z.literal('crossing'), ...measured, hand })
      .describe('Two straights that cross in their middles; the second runs from cross to branch'),
    z
      .strictObject({ form: z.literal('slip'), ...measured, slips: z.enum(['one', 'both']), hand, ...works })
      .describe('A crossing whose ways are joined by arcs on one side or on both'),
  ] as const;
}

/** A turnout by its frog number, by what was measured on a template, or of another form. */
function turnoutSchema(kit: QuantityKit) {
  const works = worksSchema(kit);
  return z.union([
    z.strictObject({ frog: kit.number, hand, ...works }).describe('By frog number: tan of half the angle is 1 / 2N'),
    z
      .strictObject({
        straight: kit.length,
        angle: kit.angle,
        radius: kit.length.optional(),
        /** straight before the branch begins to turn */
        lead: kit.length.optional(),
        /** length of the branch along its middle */
        branch: kit.length.optional(),
        hand,
        ...works,
      })
      .describe('By measured template: length of the straight way, angle and radius of the branch'),
    ...formSchemas(kit),
  ]);
}

/** One piece of a line, told by its first key: straight, curve or turnout. */
function pieceSchema(kit: QuantityKit) {
  /** ends of turnouts: those of most, and those of crossings, wyes and three-way turnouts */
  const end = z.enum(['points', 'straight', 'branch', 'cross', 'left', 'right']);
  const times = kit.number.optional().describe('How many ready-made pieces of this kind lie end to end');
  const joint = { 'ends-at': identifier.optional().describe('Name of the joint at its end') };
  return z.union([
    z.strictObject({ straight: z.union([toClose, kit.length]), times, ...joint }),
    z.strictObject({
      curve: z.enum(['left', 'right']),
      radius: z.union([toClose, kit.length]),
      /** the whole turn, both easements counted in */
      through: z.union([toClose, kit.angle]),
      /** length of the easement at each end */
      easement: kit.length.optional(),
      times,
      ...joint,
    }),
    z.strictObject({
      /** id under `turnouts` */
      turnout: identifier,
      enter: end,
      take: end.optional(),
      ...joint,
    }),
  ]);
}

/** A start: another line's or turnout's end, or a place and heading on the deck. */
function startSchema(kit: QuantityKit) {
  return z.union([
    dottedName,
    z.strictObject({ x: kit.length, y: kit.length, heading: kit.angle, height: kit.length.optional() }),
  ]);
}

function lineSchema(kit: QuantityKit) {
  return z.strictObject({
    id: identifier,
    from: startSchema(kit),
    lay: z.array(pieceSchema(kit)).min(1, 'at least one piece'),
    /** heights of the roadbed's underside above deck top, by distance from the start */
    heights: z
      .array(
        z.strictObject({
          at: kit.length,
          height: kit.length,
          /** length of the vertical curve here */
          curve: kit.length.optional(),
        }),
      )
      .optional(),
    /** `open`, `buffer`, another line's start or end, or a turnout's end */
    ends: dottedName,
    /** later: counted where it meets the rest, not bought */
    phase: z.enum(['now', 'later']).default('now'),
  });
}

/** A line that runs beside another all the way, as double track. */
function besideSchema(kit: QuantityKit) {
  return z.strictObject({
    id: identifier,
    /** the line it runs beside */
    line: identifier,
    /** on which side, looking along that line */
    side: z.enum(['left', 'right']),
    /** between the middles of both */
    by: kit.length,
    phase: z.enum(['now', 'later']).default('now'),
  });
}

/** Rules with several schools. */
function rulesSchema(kit: QuantityKit) {
  return z.strictObject({
    /** vertical curve for each 1 % of change of grade; without it one length of the longest vehicle */
    'curve-per-percent': kit.length.optional(),
    /** steepest grade, the drag of curves counted in */
    grade: kit.grade.optional(),
    /** what sets the smallest radius: three lengths of the longest vehicle, or NEM 111 */
    radius: z.enum(['car-lengths', 'nem-111']).optional(),
    /** thickness of the deck under a line that crosses over another */
    'upper-deck': kit.length.optional(),
    /** whether a wire hangs over the track */
    wire: yesNo.optional(),
  });
}

/** The track chapter's front matter. */
export function trackSchema(kit: QuantityKit) {
  return z.strictObject({
    /** vehicles that must run */
    trains: z.array(identifier),
    /** what the rails lie on */
    roadbed: z.strictObject({ stock: dottedName, width: kit.length }).optional(),
    /** how track is bought and how high it is, roadbed's top to rail's top */
    flex: z.strictObject({ length: kit.length.optional(), height: kit.length.optional() }).optional(),
    rules: rulesSchema(kit).optional(),
    lines: z.array(lineSchema(kit)),
    beside: z.array(besideSchema(kit)).default([]),
    turnouts: z.record(identifier, turnoutSchema(kit)).default({}),
    renamed: renamed.optional(),
    steps: z.array(stepSchema(kit)).default([]),
  });
}

export type Track = z.output<ReturnType<typeof trackSchema>>;
