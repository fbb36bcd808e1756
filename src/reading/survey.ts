import type { Plan } from '../core/plan.ts';
import { parseQuantity } from '../core/units/parse.ts';
import { type Fault, type Problem, problemAt, type Result } from '../core/units/problem.ts';
import type { Quantity } from '../core/units/quantity.ts';
import { withoutKnots } from './knots.ts';
import { isQuantity } from './quantities.ts';
import type { Content } from './read.ts';
import { standIn } from './stand-in.ts';

/**
 * Mistakes that stay mistakes whatever the unreadable values turn out to be: wrong units, names of nothing. Others, such
 * as a strut deeper than its side, may come from a stand-in.
 */
const CERTAIN = new Set([
  'change-unknown',
  'dimension-ring',
  'log-name',
  'mixed-dimensions',
  'no-product',
  'no-quotient',
  'seam-without-strut',
  'step-makes',
  'step-unknown',
  'two-currencies',
  'unknown-name',
  'wrong-dimension',
]);

/** Most times a plan is computed again to find more of its mistakes. */
const ROUNDS = 6;

function readable(quantity: Quantity): Quantity {
  const key = quantity.at.slice(quantity.at.lastIndexOf('.') + 1);
  for (let tried = 0; tried < 12; tried += 1) {
    const text = standIn(key, tried);
    const tree = parseQuantity(text, quantity.dimension, { bare: null });
    if (tree.ok) return { ...quantity, text, tree: tree.value };
  }
  return quantity;
}

function without<T>(value: T, at: ReadonlySet<string>): T {
  return replaced(value, at) as T;
}

function replaced(value: unknown, at: ReadonlySet<string>): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((item) => replaced(item, at));
  if (isQuantity(value)) return at.has(value.at) ? readable(value) : value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, replaced(item, at)]));
}

/**
 * Faults of a plan or draft, those among them that other faults would hide: values at fault are stood in for, and the
 * plan is computed again. `draft` says the plan has stand-ins from the start, so that only certain faults count.
 */
export function survey(plan: Plan, kind: 'plan' | 'draft', compute: (plan: Plan) => Result<unknown>): readonly Fault[] {
  const found = new Map<string, Fault>();
  let current = kind === 'draft' ? withoutKnots(plan) : plan;
  for (let round = 0; round < ROUNDS; round += 1) {
    const result = compute(current);
    if (result.ok) break;
    const sure =
      round === 0 && kind === 'plan' ? result.faults : result.faults.filter((fault) => CERTAIN.has(fault.rule));
    for (const fault of sure)
      if (Object.hasOwn(plan.spots, fault.at) || kind === 'plan')
        found.set(`${fault.at} ${fault.rule} ${fault.what}`, fault);
    const { head, benchwork, track, wiring, scenery, log } = current;
    const at = new Set(result.faults.map((fault) => fault.at));
    current = { ...current, ...without({ head, benchwork, track, wiring, scenery, log }, at) };
  }
  return [...found.values()];
}

/** Problems that only computing shows, of plans and drafts alike; where one was told already, no second is told. */
export function moreProblems(content: Content, compute: (plan: Plan) => Result<unknown>): readonly Problem[] {
  const place = ({ file, line, column }: Problem) => `${file}:${line}:${column}`;
  const told = new Set(content.problems.map(place));
  const found = (plan: Plan, kind: 'plan' | 'draft') =>
    survey(plan, kind, compute).map((fault) => problemAt(plan.spots, fault));
  return [
    ...content.plans.flatMap((plan) => found(plan, 'plan')),
    ...content.drafts.flatMap((draft) => found(draft, 'draft')).filter((problem) => !told.has(place(problem))),
  ];
}
