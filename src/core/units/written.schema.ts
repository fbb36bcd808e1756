import { z } from 'zod';

/** A value or block exactly as written: texts, lists and maps, nothing understood yet. */
export type Written = string | readonly Written[] | { readonly [key: string]: Written };

export const written: z.ZodType<Written, Written> = z.lazy(() =>
  z.union([z.string(), z.array(written), z.record(z.string(), written)]),
);
