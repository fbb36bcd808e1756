import type { Plan } from '../core/plan.ts';
import type { WrittenStep } from '../core/steps/schema.ts';
import { loopsOfSteps } from './loops.ts';

type Chapter = { readonly steps: readonly WrittenStep[] };

function untangled<C extends Chapter>(chapter: C, name: string, loops: ReadonlySet<string>): C {
  const steps = chapter.steps.map((step, i) => {
    const after = (step.after ?? []).filter((_, j) => !loops.has(`${name}.steps.${i}.after.${j}`));
    return { ...step, after };
  });
  const firsts = steps.filter((step, i) => steps.findIndex((other) => other.id === step.id) === i);
  return { ...chapter, steps: firsts };
}

/** A draft whose steps wait for each other in no ring and have one id each; both were told already. */
export function withoutKnots(plan: Plan): Plan {
  const { benchwork, track, wiring, scenery } = plan;
  const chapters = Object.entries({ benchwork, track, wiring, scenery });
  const written = chapters.flatMap(([chapter, content]) =>
    content === null ? [] : [{ chapter, steps: content.steps }],
  );
  const loops = new Set(loopsOfSteps(written).map((fault) => fault.at));
  return {
    ...plan,
    benchwork: untangled(benchwork, 'benchwork', loops),
    track: track === null ? null : untangled(track, 'track', loops),
    wiring: wiring === null ? null : untangled(wiring, 'wiring', loops),
    scenery: scenery === null ? null : untangled(scenery, 'scenery', loops),
  };
}
