import { volume } from '../geometry/solid.ts';
import type { Shape } from './outline.ts';
import { partSolid } from './solid.ts';

/** Mass of one piece, kg, from the volume of its solid and a density in kg/m3. */
export function partMass(part: Shape, density: number): number {
  return volume(partSolid(part)) * density * 1e-9;
}
