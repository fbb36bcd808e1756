import { z } from 'zod';
import type { QuantityKit } from './units/schema.ts';
import { dottedName, identifier, outline, words } from './units/words.schema.ts';

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

/** How sheets and boards are cut, beside the saw itself. */
function cuttingSchema(kit: QuantityKit) {
  return z.strictObject({
    /** taken off each factory edge of a new sheet before anything is measured from it; 0 keeps the edges */
    trim: kit.length.optional().describe('Taken off each factory edge of a new sheet; 0 keeps the edges'),
    /** smallest side of an offcut that is kept for later */
    keep: kit.length.optional().describe('Smallest side of an offcut that is kept for later'),
    /** rounds of parallel cuts, rips first; `any` lets rips and crosscuts follow each other freely */
    rounds: z.enum(['two', 'three', 'any']).optional().describe('Rounds of parallel cuts, rips first'),
    /** bit the parts are routed out with, where no saw is used */
    'routed-with': kit.length.optional().describe('Bit that routes the parts out of the sheet, instead of the saw'),
    /** what lies flat in the car, and how far off the yard's cut may be */
    car: z
      .strictObject({ length: kit.length, width: kit.length, within: kit.length })
      .optional()
      .describe('What lies flat in the car; the yard cuts to within so much, and its edges are cut again at home'),
  });
}

/** A sheet, a board or an offcut that is there already. */
function pieceSchema(kit: QuantityKit) {
  return z.strictObject({
    /** what is written on it */
    id: identifier,
    /** the sheet or board it is of */
    stock: dottedName,
    /** along the grain */
    length: kit.length.describe('Along the grain'),
    width: kit.length,
    /** how many alike; one when absent */
    count: kit.number.optional().describe('How many alike; one when absent'),
    /** factory edges are trimmed as those of a new sheet; sawn ones, as when absent, are not */
    edges: z.enum(['factory', 'sawn']).optional().describe('Factory edges are trimmed; sawn when absent'),
    /** as measured; without it the piece serves parts of any thickness of its stock */
    thickness: kit.length.optional(),
    /** rectangles that can't be used: from the left, from below, length, width */
    spoilt: z
      .array(z.tuple([kit.length, kit.length, kit.length, kit.length]))
      .optional()
      .describe("Rectangles that can't be used: from the left, from below, length, width"),
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
    cutting: cuttingSchema(kit).optional(),
    /** sheets, boards and offcuts that are there already and are cut first */
    'in-hand': z.array(pieceSchema(kit)).optional().describe('Sheets, boards and offcuts to be used first'),
    /** other goods that are there already: pieces of hardware, or bags, tins and rolls, by their stock */
    'goods-in-hand': z
      .record(dottedName, kit.number)
      .optional()
      .describe('Screws, tins and the like in hand, by stock'),
    /** what one sheet, pack, roll or tin costs here; a board sold in several lengths by the metre */
    prices: z.record(dottedName, kit.money).optional().describe('What one of a stock costs here, such as 62 EUR'),
    /** share of small hardware bought over what is counted, such as 10 % */
    spares: kit.grade.optional().describe('Small hardware bought over the count, such as 10 %'),
  });
}

export type Head = z.output<ReturnType<typeof headSchema>>;
