import { regionArea } from './clip.ts';
import type { BuiltLayer } from './model.ts';
import type { LandQuantity } from './quantity.ts';

/** One 300 ml tube spread over 9 to 10 square feet: a builder's count; mm3 a mm2. */
export const GLUE_DEPTH = 300e3 / (9.5 * 304.8 ** 2);

/** Foam-safe glue under every layer, spread all over. */
export function glueQuantity(layers: readonly BuiltLayer[]): readonly LandQuantity[] {
  const faces = layers.reduce((sum, { template }) => sum + regionArea(template), 0);
  if (faces === 0) return [];
  return [
    {
      ...{ stock: null, name: 'Glue for polystyrene, free of solvent', for: 'layers' },
      need: (faces * GLUE_DEPTH) / 1e6,
      ...{ unit: 'litre', buy: null, buyUnit: null },
    },
  ];
}
