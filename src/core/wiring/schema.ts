import { z } from 'zod';
import { stepSchema } from '../steps/schema.ts';
import type { QuantityKit } from '../units/schema.ts';
import { alongLine, dottedName, identifier, point, renamed } from '../units/words.schema.ts';

/** What the rails are fed from; bought and approved, never made. */
function supplySchema(kit: QuantityKit) {
  return z.strictObject({
    control: z.enum(['digital', 'dc']),
    volts: kit.voltage,
    /** current at which it switches off */
    'trips-at': kit.current,
  });
}

/** Something that draws current: at a turnout, at a point, or at a place along a line. */
function loadSchema(kit: QuantityKit) {
  return z.strictObject({
    id: identifier,
    at: z.union([identifier, point(kit), alongLine(kit)]),
    amps: kit.current,
    kind: z.enum(['steady', 'pulse']).default('steady'),
  });
}

/** The wiring chapter's front matter. */
export function wiringSchema(kit: QuantityKit) {
  return z.strictObject({
    supply: supplySchema(kit),
    /** the pair of heavy wires below the deck; its route found or written as points */
    bus: z
      .strictObject({
        stock: dottedName,
        from: point(kit),
        route: z.union([z.literal('auto'), z.array(point(kit))]),
      })
      .optional(),
    /** the thin wires from the bus to the rails */
    feeders: z.strictObject({ stock: dottedName, every: kit.length }).optional(),
    loads: z.array(loadSchema(kit)).default([]),
    /** lines that switch off together */
    districts: z
      .array(z.strictObject({ id: identifier, lines: z.array(identifier), 'trips-at': kit.current }))
      .default([]),
    /** where both rails are cut already; when given, every cut that is needed has to be among them */
    gaps: z.array(alongLine(kit)).optional(),
    /** the rails as measured */
    rails: z.strictObject({ 'ohm-per-metre': kit.resistance }).optional(),
    /** length over which the longest train conducts */
    'longest-train': kit.length.optional(),
    /** share of the voltage that may be lost on the way; 5 % when absent */
    'may-lose': kit.grade.optional(),
    renamed: renamed.optional(),
    steps: z.array(stepSchema(kit)).default([]),
  });
}

export type Wiring = z.output<ReturnType<typeof wiringSchema>>;
