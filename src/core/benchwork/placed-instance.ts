import type { Pose } from '../geometry/shapes.ts';
import type { Instance } from './instance.ts';
import { placedBefore } from './side-view.ts';

/** A piece drawn before a side, in bench coordinates. */
export function placedInstance(view: Pose, part: Instance): Instance {
  return { ...part, pose: placedBefore(view, part.pose) };
}
