import { spoken } from '../units/say.ts';
import type { Step } from './step.ts';

/** mm to 0.01, so that noise of the last digit changes nothing; never -0. */
function written(mm: number): string {
  return `${Math.round(mm * 100) / 100 + 0} mm`;
}

/**
 * What a step says as one stable text: equal texts mean that a tick set against it still holds. Its place in the order
 * is left out; words and numbers are in.
 */
export function stepContent(step: Step): string {
  const head = [step.id, step.title, step.child, step.where, `${step.people}`, `${step.wait}`, step.closes ?? ''];
  const lists = [step.makes, step.tools, step.cautions.map((caution) => caution.id)].map((list) => list.join(' '));
  return [...head, ...lists, ...step.lines.map((line) => spoken(line, written))].join('\n');
}
