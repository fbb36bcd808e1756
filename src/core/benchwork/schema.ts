import { z } from 'zod';
import { stepSchema } from '../steps/schema.ts';
import type { QuantityKit } from '../units/schema.ts';

const name = z.string().regex(/^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/, 'small letters, digits and single hyphens');
const side = z.enum(['front', 'back', 'left', 'right']);

/** The sheet a role is cut from: its id, or its id and one reading of its real thickness. */
function materialSchema(kit: QuantityKit) {
  return z.union([z.string(), z.strictObject({ stock: z.string(), measured: kit.length.optional() })]);
}

/** How many struts, evenly spread, or the places of their middles from the frame's front or left outside. */
function strutsSchema(kit: QuantityKit) {
  return z.union([kit.number, z.strictObject({ at: z.array(kit.length) })]);
}

/** Where two pieces of deck meet; on a strut's middle. */
function seamSchema() {
  return z.strictObject({ 'parallel-to': z.enum(['x', 'y']), on: z.string() });
}

/** The deck: cut larger by `overhang`, laid flush at one corner, trimmed after. */
function deckSchema(kit: QuantityKit) {
  return z.strictObject({
    overhang: kit.length,
    flush: z.enum(['front-left', 'front-right', 'back-left', 'back-right']),
    seam: seamSchema().optional(),
    seams: z.array(seamSchema()).optional(),
  });
}

/** Drawers in bays counted from the left along one side. */
function drawersSchema(kit: QuantityKit) {
  return z.strictObject({
    side,
    bays: z.array(kit.number),
    slides: z.strictObject({ length: kit.length, clearance: kit.length.optional() }),
    faces: z.enum(['cut-out', 'overlaid']),
    bit: kit.length.optional(),
    /** how the box's back meets its sides */
    corners: z.enum(['rabbet', 'dado']).default('rabbet'),
    pull: z.enum(['bar', 'none']).default('bar'),
    /** height of the opening; as tall as the side allows unless said */
    opening: kit.length.optional(),
    /** wood kept above and below the opening */
    ligament: kit.length.optional(),
    /** under a box and above it in its opening, and how far an overlaid face reaches past the opening */
    gaps: z
      .strictObject({
        under: kit.length.optional(),
        'lift-out': kit.length.optional(),
        overlap: kit.length.optional(),
      })
      .optional(),
    material: name.optional(),
    bottom: name.optional(),
  });
}

/** Legs that come off, on casters or feet. */
function legsSchema(kit: QuantityKit) {
  return z.strictObject({
    form: z.enum(['post', 'angle', 'trestle']),
    material: name,
    layers: kit.number.optional(),
    width: kit.length.optional(),
    /** what a tapered half keeps at its foot */
    'foot-width': kit.length.optional(),
    /** `free` names the casters of the back legs where they have no brake */
    casters: z
      .strictObject({ stock: z.string(), mount: z.enum(['plate', 'stem']), free: z.string().optional() })
      .optional(),
    /** `height` is from the floor to the leg's end at the middle of the travel */
    feet: z
      .strictObject({ stock: z.string(), travel: kit.length.optional(), height: kit.length.optional() })
      .optional(),
  });
}

/** Open shelves on cleats, in bays without drawers. */
function shelvesSchema(kit: QuantityKit) {
  return z.strictObject({ side, bays: z.array(kit.number), material: name, below: kit.length.optional() });
}

/** One rigid unit of benchwork. */
function benchSchema(kit: QuantityKit) {
  return z.strictObject({
    id: name,
    place: z.strictObject({ x: kit.length, y: kit.length, turn: kit.angle.optional() }).optional(),
    phase: z.enum(['now', 'later']).default('now'),
    construction: z.enum(['lapped-grid', 'open-grid', 'girder', 'shelf', 'listed']),
    struts: z.strictObject({ along: strutsSchema(kit), across: strutsSchema(kit) }).optional(),
    'flange-strips': z.strictObject({ width: kit.length }).optional(),
    deck: deckSchema(kit).optional(),
    drawers: z.union([drawersSchema(kit), z.array(drawersSchema(kit))]).optional(),
    legs: legsSchema(kit).optional(),
    /** pieces that have no straight way in and are tilted in, and why that works; told as not proved */
    tilts: z.array(z.strictObject({ part: z.string(), because: z.string() })).optional(),
    shelves: z.union([shelvesSchema(kit), z.array(shelvesSchema(kit))]).optional(),
  });
}

/** The benchwork chapter's front matter. */
export function benchworkSchema(kit: QuantityKit) {
  return z.strictObject({
    /** lengths everything else is made of, by name */
    dimensions: z.record(name, kit.length),
    /** role to sheet: `frame`, `deck` */
    materials: z.record(name, materialSchema(kit)),
    /** step of the machine's settings, and the bit that leaves a stopped dado's round corners */
    machining: z.strictObject({ 'round-to': kit.length.optional(), bit: kit.length.optional() }).optional(),
    benches: z.array(benchSchema(kit)),
    steps: z.array(stepSchema(kit)).default([]),
  });
}

export type Benchwork = z.output<ReturnType<typeof benchworkSchema>>;
