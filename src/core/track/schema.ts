import { z } from 'zod';
import { stepSchema } from '../steps/schema.ts';
import type { QuantityKit } from '../units/schema.ts';
import { dottedName, identifier, renamed } from '../units/words.schema.ts';

/** A value the line's closing has to find. */
const toClose = z.literal('to close');

/** Room a turnout motor needs below the deck: along the track, across it, and down. */
function motorSchema(kit: QuantityKit) {
  return z.strictObject({ along: kit.length, across: kit.length, below: kit.length });
}

/** A turnout by its frog number, or by what was measured on a template. */
function turnoutSchema(kit: QuantityKit) {
  const common = {
    /** to which hand the branch leaves, seen from the points */
    hand: z.enum(['left', 'right']),
    /** whether the frog is fed */
    'frog-type': z.enum(['live', 'dead']).optional(),
    motor: motorSchema(kit).optional(),
  };
  return z.union([
    z.strictObject({ frog: kit.number, ...common }).describe('By frog number: tan of half the angle is 1 / 2N'),
    z
      .strictObject({ straight: kit.length, angle: kit.angle, radius: kit.length.optional(), ...common })
      .describe('By measured template: length of the straight way, angle and radius of the branch'),
  ]);
}

/** One piece of a line, told by its first key: straight, curve or turnout. */
function pieceSchema(kit: QuantityKit) {
  const joint = { 'ends-at': identifier.optional().describe('Name of the joint at its end') };
  return z.union([
    z.strictObject({ straight: z.union([toClose, kit.length]), ...joint }),
    z.strictObject({
      curve: z.enum(['left', 'right']),
      radius: z.union([toClose, kit.length]),
      /** the whole turn, both easements counted in */
      through: z.union([toClose, kit.angle]),
      /** length of the easement at each end */
      easement: kit.length.optional(),
      ...joint,
    }),
    z.strictObject({
      /** id under `turnouts` */
      turnout: identifier,
      enter: z.enum(['points', 'straight', 'branch']),
      take: z.enum(['points', 'straight', 'branch']).optional(),
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
    heights: z.array(z.strictObject({ at: kit.length, height: kit.length })).optional(),
    /** `open`, another line's start or end, or a turnout's end */
    ends: dottedName,
    /** later: counted where it meets the rest, not bought */
    phase: z.enum(['now', 'later']).default('now'),
  });
}

/** The track chapter's front matter. */
export function trackSchema(kit: QuantityKit) {
  return z.strictObject({
    /** vehicles that must run */
    trains: z.array(identifier),
    /** what the rails lie on */
    roadbed: z.strictObject({ stock: dottedName, width: kit.length }).optional(),
    lines: z.array(lineSchema(kit)),
    turnouts: z.record(identifier, turnoutSchema(kit)).default({}),
    renamed: renamed.optional(),
    steps: z.array(stepSchema(kit)).default([]),
  });
}

export type Track = z.output<ReturnType<typeof trackSchema>>;
