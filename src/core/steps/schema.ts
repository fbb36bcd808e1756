import { z } from 'zod';
import type { QuantityKit } from '../units/schema.ts';

const name = z.string().regex(/^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/, 'small letters, digits and single hyphens');

/** A plain count as people write it: 1 to `most`, no unit. */
function whole(most: number, what: string) {
  const message = `${what}: a whole number from 1 to ${most}, without a unit`;
  return z
    .string()
    .regex(/^[1-9][0-9]{0,5}$/, message)
    .transform(Number)
    .refine((value) => value <= most, message);
}

/** One step an author writes; its prose stands under a heading with its id. */
export function stepSchema(kit: QuantityKit) {
  return z.strictObject({
    id: name,
    do: z.string(),
    /** part ids, roles, or kinds of machining (dado, rabbet, lap) this step makes */
    makes: z.array(z.string()).optional(),
    /** part ids or roles that stand in their places once this step is done */
    fits: z.array(z.string()).optional(),
    /** tools and materials in hand */
    with: z.array(z.string()).optional(),
    /** hands needed; 1 unless said */
    people: whole(99, 'people').optional(),
    /** working time in minutes */
    minutes: whole(99_999, 'minutes').optional(),
    child: z.enum(['away', 'watches', 'does with an adult', 'does alone']).optional(),
    where: z.enum(['workshop', 'room', 'outdoors']).optional(),
    /** steps that come first; another chapter's as `wiring.test-feeders` */
    after: z.array(z.string()).optional(),
    /** id of a hidden space */
    closes: name.optional(),
    /** time that needs nobody afterwards: glue, plaster, paint */
    wait: kit.duration.optional(),
  });
}

export type WrittenStep = z.output<ReturnType<typeof stepSchema>>;
