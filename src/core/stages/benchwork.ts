import { evaluateBenchwork } from '../benchwork/evaluate.ts';
import { frame } from '../benchwork/frame.ts';
import type { BenchworkModel } from '../benchwork/input.ts';
import { materialThicknesses } from '../benchwork/materials.ts';
import type { HeadValues } from '../head.ts';
import type { Plan } from '../plan.ts';
import type { KnownThickness } from '../stock/thickness.ts';
import { done, type Result } from '../units/problem.ts';
import type { Amount, Scope } from '../units/quantity.ts';
import type { Readings } from './log.ts';

/** A named dimension with the text its author typed. */
export type NamedDimension = { readonly name: string; readonly amount: Amount; readonly text: string };

/** The benchwork with what it was computed from. */
export type BenchworkStage = {
  readonly model: BenchworkModel;
  readonly thicknesses: readonly KnownThickness[];
  readonly dimensions: readonly NamedDimension[];
  /** names that expressions of all chapters may use */
  readonly scope: Scope;
};

/** Stages 2 and 3: named dimensions and thicknesses as numbers, then parts, joints and places. */
export function benchworkStage(plan: Plan, readings: Readings, head: HeadValues): Result<BenchworkStage> {
  const known = materialThicknesses(plan.benchwork, { stock: plan.stock, readings });
  if (!known.ok) return known;
  const { bits } = head;
  const context = { scope: {}, thicknesses: known.value, stock: plan.stock, show: plan.head.show, bits };
  const input = evaluateBenchwork(plan.benchwork, context);
  if (!input.ok) return input;
  const model = frame(input.value);
  if (!model.ok) return model;
  const scope = scopeOf(input.value.dimensions, known.value);
  const dimensions = Object.entries(scope).map(([name, amount]) => ({
    name,
    amount,
    text: plan.benchwork.dimensions[name]?.text ?? '',
  }));
  return done({ model: model.value, thicknesses: Object.values(known.value), dimensions, scope });
}

function scopeOf(
  dimensions: Readonly<Record<string, number>>,
  thicknesses: Readonly<Record<string, KnownThickness>>,
): Scope {
  const length = (value: number): Amount => ({ value, dimension: 'length' });
  const named = Object.entries(dimensions).map(([name, value]) => [name, length(value)] as const);
  const roles = Object.entries(thicknesses).map(([role, { mean }]) => [`${role}.thickness`, length(mean)] as const);
  return Object.fromEntries([...named, ...roles]);
}
