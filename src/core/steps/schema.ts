import { z } from 'zod';
import type { QuantityKit } from '../units/schema.ts';

/** One step an author writes; its prose stands under a heading with its id. */
export function stepSchema(kit: QuantityKit) {
  return z.strictObject({
    id: z.string(),
    do: z.string(),
    /** part ids or roles this step makes */
    makes: z.array(z.string()).optional(),
    /** tools */
    with: z.array(z.string()).optional(),
    people: kit.number.optional(),
    minutes: kit.number.optional(),
    child: z.enum(['away', 'watches', 'does with an adult', 'does alone']).optional(),
    where: z.enum(['workshop', 'room', 'outdoors']).optional(),
    after: z.array(z.string()).optional(),
    /** id of a hidden space */
    closes: z.string().optional(),
  });
}
