import type { Assembly } from '../assembly/assembly.ts';
import { bodiesOf } from '../assembly/bodies.ts';
import { checkPlacingOrder } from '../assembly/placing-order.ts';
import type { Finding } from '../finding.ts';
import type { Step } from '../steps/step.ts';
import type { Joint, Part } from '../stock/part.ts';

/** The benches as they are proved, and the steps in the order they are to be done. */
type Building = {
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly assembly: readonly Assembly[];
  readonly steps: readonly Step[];
};

/** Halts where the steps, in their order, leave a piece no way in; benches that do not go together at all are left out. */
export function placingFindings({ parts, joints, assembly, steps }: Building): readonly Finding[] {
  const puttingIn = steps.map(({ id, title, fits = [], generated, after }) => ({
    ...{ step: id, title, parts: fits },
    ...(generated ? {} : { after }),
  }));
  return assembly.flatMap(({ bench, chosen, poses, findings }) => {
    const pose = poses.find((one) => one.pose === chosen);
    if (pose === undefined) return [];
    const own = parts.filter((part) => part.bench === bench && part.chapter === 'benchwork');
    const bodies = bodiesOf(own);
    const ids = new Set(bodies.map(({ id }) => id));
    return checkPlacingOrder({
      bodies,
      links: joints.filter(({ between }) => between.every((id) => ids.has(id))),
      steps: puttingIn.filter(({ parts: fits }) => fits.some((id) => ids.has(id))),
      proved: pose.order.filter(({ within }) => within === null).flatMap((placing) => placing.parts),
      tilts: findings.filter(({ rule }) => rule === 'path-not-proved').map(({ where }) => where),
    });
  });
}
