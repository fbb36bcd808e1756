import { z } from 'zod';
import { stepSchema } from '../steps/schema.ts';
import type { QuantityKit } from '../units/schema.ts';
import { dottedName, identifier, outline, point, renamed, yesNo } from '../units/words.schema.ts';

/** A hill by its form; heights from deck top. */
function hillSchema(kit: QuantityKit) {
  return z.strictObject({
    id: identifier,
    form: z.enum(['dome', 'cone']),
    top: point(kit),
    height: kit.length,
    'foot-radius': kit.length,
  });
}

/** Still water: its surface from deck top, its depth below the surface, the sheet under it. */
function waterSchema(kit: QuantityKit) {
  return z.strictObject({
    id: identifier,
    outline: outline(kit),
    surface: kit.length,
    depth: kit.length,
    /** thickness of the sheet under it */
    floor: kit.length,
    /** deepest single pour */
    pour: kit.length,
    /** stock it is poured from */
    resin: dottedName.optional(),
    /** sheet the floor and walls are cut from, about as thick as `floor` */
    tray: dottedName.optional(),
  });
}

/** Two points or more that a ridge runs along. */
function way(kit: QuantityKit) {
  return z.array(point(kit)).min(2, 'two points or more');
}

/** High ground along a path, down to nothing `half-width` from it. */
function ridgeSchema(kit: QuantityKit) {
  return z.strictObject({
    id: identifier,
    form: z.enum(['round', 'sharp']),
    along: way(kit),
    height: kit.length,
    'half-width': kit.length,
  });
}

/** Raised flat ground inside an outline, its sides falling outward by `slope`. */
function bankSchema(kit: QuantityKit) {
  return z.strictObject({ id: identifier, outline: outline(kit), height: kit.length, slope: kit.grade });
}

/** A road or path the ground is levelled for: x, y and height along it. */
function roadSchema(kit: QuantityKit) {
  return z.strictObject({
    id: identifier,
    along: z.array(z.tuple([kit.length, kit.length, kit.length])).min(2, 'two points or more'),
    width: kit.length,
  });
}

/** A board along a bench's edge whose top follows the ground. */
function boardSchema() {
  return z.strictObject({
    id: identifier,
    edge: z.enum(['front', 'back', 'left', 'right']),
    /** id of the bench; the first one when absent */
    bench: identifier.optional(),
    stock: dottedName,
  });
}

/** A section to be drawn: a straight cut, or along a line of track. */
function sectionSchema(kit: QuantityKit) {
  return z.union([
    z.strictObject({ id: identifier, from: point(kit), to: point(kit) }).describe('A straight cut'),
    z
      .strictObject({ id: identifier, line: identifier, from: kit.length.optional(), to: kit.length.optional() })
      .describe('Along a line of track'),
  ]);
}

function groundSchema(kit: QuantityKit) {
  return z.strictObject({
    /** x, y, height that the ground must pass through */
    spots: z.array(z.tuple([kit.length, kit.length, kit.length])).default([]),
    hills: z.array(hillSchema(kit)).default([]),
    ridges: z.array(ridgeSchema(kit)).default([]),
    banks: z.array(bankSchema(kit)).default([]),
    roads: z.array(roadSchema(kit)).default([]),
    water: z.array(waterSchema(kit)).default([]),
    /** stock of the foam the land is built from */
    foam: dottedName.optional(),
    /** thickness of the walls of a hollow hill; solid when absent */
    hollow: kit.length.optional(),
    /** of cuttings and banks along lines and roads; 1:1.5 when absent */
    slope: kit.grade.optional(),
    /** how far a spot bends the ground around it; 300 mm when absent */
    'spot-reach': kit.length.optional(),
    boards: z.array(boardSchema()).default([]),
    /** drawn besides those across and along each hill and across each water */
    sections: z.array(sectionSchema(kit)).default([]),
  });
}

/** A stretch of a line, from and to measured along it from its start. */
function stretch(kit: QuantityKit) {
  return { id: identifier, line: identifier, from: kit.length, to: kit.length };
}

function bridgeSchema(kit: QuantityKit) {
  return z.strictObject({
    ...stretch(kit),
    /** id of the water it crosses */
    over: identifier.optional(),
    /** whether it lifts for a way through */
    lifts: yesNo.optional(),
  });
}

function structureSchema(kit: QuantityKit) {
  const size = z.strictObject({ length: kit.length, width: kit.length, height: kit.length });
  const where = { id: identifier, at: point(kit), turn: kit.angle.optional() };
  return z.union([
    z.strictObject({ ...where, prototype: size }).describe('By the size of the real building'),
    z.strictObject({ ...where, model: size }).describe('By the size of the model'),
  ]);
}

/** The scenery chapter's front matter. */
export function scenerySchema(kit: QuantityKit) {
  return z.strictObject({
    ground: groundSchema(kit).optional(),
    bridges: z.array(bridgeSchema(kit)).default([]),
    tunnels: z.array(z.strictObject(stretch(kit))).default([]),
    /** buildings; `at` is the middle */
    structures: z.array(structureSchema(kit)).default([]),
    /** what the ground is covered with, bottom layer first; an outline or `hill.foot` */
    cover: z
      .array(
        z.strictObject({
          id: identifier,
          outline: z.union([dottedName, outline(kit)]),
          of: z.array(dottedName).min(1, 'at least one stock'),
          trees: kit.number.optional().describe('Trees for each square metre of plan (10.8 sq ft), as a bare number'),
        }),
      )
      .default([]),
    /** stock of the ballast along the lines */
    ballast: dottedName.optional(),
    renamed: renamed.optional(),
    steps: z.array(stepSchema(kit)).default([]),
  });
}

export type Scenery = z.output<ReturnType<typeof scenerySchema>>;
