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

/** Light-emitting diodes: rows side by side, each with its own resistor. */
function ledsSchema(kit: QuantityKit) {
  return z.strictObject({
    /** what one diode takes */
    forward: kit.voltage,
    /** most current through a row */
    amps: kit.current,
    /** diodes in a row; 1 when absent */
    'in-row': kit.number.optional(),
    /** rows; 1 when absent */
    rows: kit.number.optional(),
  });
}

/** Something that draws current: at a turnout, at a point, or at a place along a line; as amps or as diodes. */
function loadSchema(kit: QuantityKit) {
  return z
    .strictObject({
      id: identifier,
      at: z.union([identifier, point(kit), alongLine(kit)]),
      amps: kit.current.optional(),
      leds: ledsSchema(kit).optional(),
      /** steady: as long as the supply is on; pulse: for a moment, as it is thrown */
      kind: z.enum(['steady', 'pulse']).default('steady'),
      /** for a moment as it is switched on; as amps when absent */
      inrush: kit.current.optional(),
      /** where its wires leave the bus; proposed where one is needed when absent */
      fuse: kit.current.optional(),
    })
    .refine(({ amps, leds }) => (amps === undefined) !== (leds === undefined), {
      error: 'either `amps` or `leds`, one of the two',
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
        /** with a written route: lengths that part from it at T-joints, each from a point on the bus on */
        branches: z.array(z.array(point(kit)).min(2)).optional(),
      })
      .refine(({ branches, route }) => branches === undefined || route !== 'auto', {
        error: '`branches` with a written `route`; with `route: auto` the bus parts by itself',
      }),
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
