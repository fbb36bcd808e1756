import { z } from 'zod';
import { literalKit } from '../units/literal.schema.ts';
import { quantityKit } from '../units/schema.ts';
import { identifier, words } from '../units/words.schema.ts';

/** A vehicle that must run. Lengths mm at model size, mass g. */
export function trainSchema() {
  const literal = literalKit(quantityKit(null));
  return z.strictObject({
    /** name that track chapters and the log point to */
    id: identifier,
    name: words,
    scale: z.enum(['Z', 'N', 'TT', 'HO', 'H0', 'OO', 'S', 'O', '0', '1']),
    /** where its figures come from */
    source: words,
    /** over the couplers, as it stands in a train */
    length: literal.length,
    /** of the body without couplers */
    body: literal.length,
    width: literal.length,
    /** rail top to roof */
    height: literal.length,
    /** between the bogies' pivots; 0 for a vehicle with fixed axles */
    'bogie-centres': literal.length,
    /** between the outer axles that cannot turn against each other */
    wheelbase: literal.length,
    mass: literal.mass,
    /** wheels that take current from the rails */
    'conducting-wheels': literal.number,
  });
}

export type Train = z.output<ReturnType<typeof trainSchema>>;

/** One file of content/trains. */
export function trainFileSchema() {
  return z.strictObject({ trains: z.array(trainSchema()) });
}
