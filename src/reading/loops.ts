import type { WrittenStep } from '../core/steps/schema.ts';
import type { Fault } from '../core/units/problem.ts';

export type ChapterSteps = { readonly chapter: string; readonly steps: readonly WrittenStep[] };

type Arrow = { readonly to: string; readonly at: string };

/** The whole id of a step named in a chapter: `rout` and `wiring.test-feeders` both work. */
function wholeId(chapter: string, name: string): string {
  return name.includes('.') ? name : `${chapter}.${name}`;
}

function arrowsOf(chapters: readonly ChapterSteps[]): ReadonlyMap<string, readonly Arrow[]> {
  const arrows = new Map<string, Arrow[]>();
  for (const { chapter, steps } of chapters) {
    steps.forEach((step, i) => {
      const own = (step.after ?? []).map((name, j) => ({
        to: wholeId(chapter, name),
        at: `${chapter}.steps.${i}.after.${j}`,
      }));
      arrows.set(`${chapter}.${step.id}`, [...(arrows.get(`${chapter}.${step.id}`) ?? []), ...own]);
    });
  }
  return arrows;
}

type Visit = { readonly id: string; next: number };

/** Steps that wait for each other in a ring: each ring once, where its last arrow is written. Linear in the arrows. */
export function loopsOfSteps(chapters: readonly ChapterSteps[]): readonly Fault[] {
  const arrows = arrowsOf(chapters);
  const state = new Map<string, 'open' | 'closed'>();
  const faults: Fault[] = [];
  for (const start of arrows.keys()) {
    const path: Visit[] = state.has(start) ? [] : [{ id: start, next: 0 }];
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      state.set(top.id, 'open');
      const arrow = arrows.get(top.id)?.[top.next];
      top.next += 1;
      if (arrow === undefined) {
        state.set(top.id, 'closed');
        path.pop();
      } else if (state.get(arrow.to) === 'open') {
        faults.push(
          loopFault(
            arrow,
            path.slice(path.findIndex((visit) => visit.id === arrow.to)).map((visit) => visit.id),
          ),
        );
      } else if (state.get(arrow.to) === undefined && arrows.has(arrow.to)) path.push({ id: arrow.to, next: 0 });
    }
  }
  return faults;
}

function loopFault(arrow: Arrow, ring: readonly string[]): Fault {
  const [first = arrow.to] = ring;
  return {
    rule: 'cyclic-steps',
    at: arrow.at,
    what: `these steps wait for each other: ${[...ring, first].map((id) => `\`${id}\``).join(' after ')}`,
    mend: 'take one `after` out of the ring',
  };
}
