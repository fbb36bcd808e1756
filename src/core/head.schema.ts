import { z } from 'zod';
import type { QuantityKit } from './units/schema.ts';
import { identifier, outline, words } from './units/words.schema.ts';

/** A piece of furniture or wall the table has to live with. */
function thingSchema(kit: QuantityKit) {
  return z.strictObject({
    /** its name */
    id: identifier,
    /** seen from above, in room coordinates */
    outline: outline(kit),
    /** floor to its underside, if a table can stand below it */
    underside: kit.length.optional(),
    /** floor to its top */
    top: kit.length.optional(),
  });
}

/** One narrow place on the way from the workshop to the room. */
function passageSchema(kit: QuantityKit) {
  return z.union([
    z.strictObject({ door: z.strictObject({ clear: kit.length, height: kit.length }) }),
    z.strictObject({ corner: z.strictObject({ from: kit.length, to: kit.length, height: kit.length.optional() }) }),
    z.strictObject({ stair: z.strictObject({ width: kit.length, headroom: kit.length }) }),
  ]);
}

/** Where the table stands in the room: its origin corner and its turn. */
function standingPlaceSchema(kit: QuantityKit) {
  return z.strictObject({ x: kit.length, y: kit.length, turn: kit.angle.optional() });
}

/** The room the railway lives in and the way into it. */
function roomSchema(kit: QuantityKit) {
  return z.strictObject({
    /** walls seen from above */
    outline: outline(kit),
    /** what stands in the room */
    things: z.array(thingSchema(kit)).optional(),
    /** where the table stands: `running`, `parked` or a name of the author's */
    places: z.record(identifier, standingPlaceSchema(kit)).optional(),
    /** doors, corners and stairs in the order they are met */
    'way-in': z.array(passageSchema(kit)).optional(),
  });
}

/** Tools whose figures enter the plan. */
function toolsSchema(kit: QuantityKit) {
  const saw = z.strictObject({ kerf: kit.length });
  return z.strictObject({
    /** widest rip and what the blade takes */
    'table-saw': z.strictObject({ rip: kit.length.optional(), kerf: kit.length }).optional(),
    'circular-saw': saw.optional(),
    'track-saw': saw.optional(),
    'hand-saw': saw.optional(),
    /** diameters of the straight bits */
    router: z.strictObject({ bits: z.array(kit.length) }).optional(),
    /** diameters of the drills in hand */
    drills: z.array(kit.length).optional(),
    /** opening of a clamp to how many there are */
    clamps: z.record(z.string(), kit.number).optional(),
  });
}

/** Front matter of notebook.md: the cover and what all chapters share. */
export function headSchema(kit: QuantityKit) {
  return z.strictObject({
    /** name of the notebook */
    title: words.describe('Name of the notebook, shown on every page'),
    /** what pages show first: millimetres or inches */
    show: z.enum(['mm', 'in']).describe('Units that pages show first'),
    /** `mm` lets bare numbers mean millimetres in this notebook */
    bare: z.enum(['mm']).optional().describe('Let bare numbers mean millimetres'),
    /** letters of the scale */
    scale: z.enum(['Z', 'N', 'TT', 'HO', 'H0', 'OO', 'S', 'O', '0', '1']).describe('Scale of the railway'),
    /** who builds it, as they want to be named */
    makers: z.array(words).min(1, 'at least one maker').describe('Who builds it'),
    /** SPDX name of the licence readers get */
    licence: z
      .string()
      .regex(/^[A-Za-z0-9][A-Za-z0-9.+-]*$/, 'the short SPDX name of a licence, such as CC-BY-SA-4.0')
      .describe('SPDX name of the licence, such as CC-BY-SA-4.0'),
    /** money put aside */
    budget: kit.money.optional().describe('Money put aside, such as 900 EUR'),
    room: roomSchema(kit).optional(),
    /** how far an arm reaches over the table, and the age of the youngest helper */
    people: z.strictObject({ reach: kit.length.optional(), youngest: kit.number.optional() }).optional(),
    tools: toolsSchema(kit).optional(),
  });
}

export type Head = z.output<ReturnType<typeof headSchema>>;
