import type { Part, Patch } from '../../stock/part.ts';
import type { Machines, Machining, Operation } from './operation.ts';
import { operationsOf } from './operations.ts';
import { sequenced } from './sequence.ts';

/** Every part's operations in their order, what is cut together, and which cuts are tried in scrap first. */
export function machiningOf(parts: readonly Part[], machines: Machines): readonly Machining[] {
  const tried = new Set<string>();
  return parts.map((part) => ({
    part: part.id,
    operations: sequenced(operationsOf(part, machines)).map((operation) =>
      withScrap(ganged(operation, part, parts), tried),
    ),
  }));
}

/** Parts whose slots or dados lie at the same places are clamped together, their reference ends flush, and cut at once. */
function ganged(operation: Operation, part: Part, parts: readonly Part[]): Operation {
  if (operation.setUp.straightedge.length === 0 || operation.setUp.stop === null) return operation;
  const mates = parts.filter((other) => other.id === part.id || cutAlike(part, other));
  const together = mates.flatMap(({ places }) => places.map(({ id }) => id));
  return together.length < 2 ? operation : { ...operation, setUp: { ...operation.setUp, together } };
}

function cutAlike(a: Part, b: Part): boolean {
  const [own, other] = [crossCuts(a), crossCuts(b)];
  if (a.role !== b.role || Math.abs(a.blank.length - b.blank.length) > 1e-6 || own.length !== other.length)
    return false;
  const turned = other.map(({ x0, x1, ...rest }) => ({ ...rest, x0: b.blank.length - x1, x1: b.blank.length - x0 }));
  return samePlaces(own, other) || samePlaces(own, turned);
}

type Cut = Pick<Patch, 'x0' | 'x1'> & { readonly kind: string; readonly depth: number };

function crossCuts({ features }: Part): readonly Cut[] {
  return features.flatMap((one): readonly Cut[] => {
    if (one.kind === 'notch')
      return [{ kind: `${one.kind} ${one.edge}`, depth: one.patch.y1 - one.patch.y0, ...span(one.patch) }];
    const pocket = one.kind === 'dado' || one.kind === 'stopped-dado' || one.kind === 'rabbet';
    return pocket ? [{ kind: one.kind, depth: one.depth, ...span(one.patch) }] : [];
  });
}

function span({ x0, x1 }: Patch): Pick<Patch, 'x0' | 'x1'> {
  return { x0, x1 };
}

function samePlaces(a: readonly Cut[], b: readonly Cut[]): boolean {
  return a.every(({ kind, depth, x0, x1 }) =>
    b.some(
      (one) => one.kind === kind && [one.depth - depth, one.x0 - x0, one.x1 - x1].every((d) => Math.abs(d) < 1e-6),
    ),
  );
}

/** The first cut of each kind, bit and depth is tried in scrap, and the fit logged, before the batch. */
function withScrap(operation: Operation, tried: Set<string>): Operation {
  const { bit, depth, straightedge } = operation.setUp;
  if (straightedge.length === 0) return operation;
  const wide = (straightedge.at(-1) ?? 0) - (straightedge[0] ?? 0);
  const setting = [operation.kind, bit, depth, wide]
    .map((one) => (typeof one === 'number' ? one.toFixed(2) : one))
    .join(' ');
  if (tried.has(setting)) return operation;
  tried.add(setting);
  return { ...operation, setUp: { ...operation.setUp, scrapFirst: true } };
}
