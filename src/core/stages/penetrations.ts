import type { BenchworkModel } from '../benchwork/input.ts';
import { standing } from '../geometry/pose.ts';
import type { Request } from '../stock/part.ts';
import { type Penetrated, penetrated } from '../stock/penetrate.ts';

/** Stage 7: the parts of stage 3 with every hole, notch and cut-out that the other rooms ask for. */
export function penetrationsStage(model: BenchworkModel, requests: readonly Request[]): Penetrated {
  const poses = model.benches.map(({ id, place }) => [id, standing([place.x, place.y], place.turn)] as const);
  return penetrated(model.parts, requests, Object.fromEntries(poses));
}
