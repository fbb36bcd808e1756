import type { KnownThickness } from '../stock/thickness.ts';
import { evaluate } from '../units/evaluate.ts';
import { done, type Fault, failed, type Result } from '../units/problem.ts';
import type { Expression, Quantity, Scope } from '../units/quantity.ts';
import { fault } from './fault.ts';

type Named = Readonly<Record<string, Quantity<'length'>>>;

/** `frame.thickness` and its like: the mean thickness of each role's sheet, as names an expression may use. */
export function thicknessScope(thicknesses: Readonly<Record<string, KnownThickness>>): Scope {
  const names = Object.entries(thicknesses).map(
    ([role, known]) => [`${role}.thickness`, { value: known.mean, dimension: 'length' }] as const,
  );
  return Object.fromEntries(names);
}

/**
 * Every dimension as an amount, added to `scope`; each may use the others in any order. Faults: those of the expressions,
 * and a ring of dimensions that wait for each other.
 */
export function dimensionScope(named: Named, scope: Scope): Result<Scope> {
  const known: Record<string, Scope[string]> = { ...scope };
  const refused = new Set<string>();
  const faults: Fault[] = [];
  let waiting = Object.entries(named);
  for (let before = -1; waiting.length !== before; ) {
    before = waiting.length;
    const ready = waiting.filter(
      ([, quantity]) => !namesIn(quantity.tree).some((name) => waiting.some(([other]) => other === name)),
    );
    waiting = waiting.filter((entry) => !ready.includes(entry));
    for (const [name, quantity] of ready) {
      // what rests on a refused dimension is refused with it: one mistake, one fault
      const amount = namesIn(quantity.tree).some((one) => refused.has(one)) ? null : evaluate(quantity, known);
      if (amount?.ok) known[name] = amount.value;
      else refused.add(name);
      if (amount?.ok === false) faults.push(...amount.faults);
    }
  }
  const rings = waiting.map(([name, quantity]) => ringFault(name, quantity));
  return faults.length + rings.length > 0 ? failed(...faults, ...rings) : done(known);
}

function ringFault(name: string, quantity: Quantity): Fault {
  const at = quantity.at === '' ? `benchwork.dimensions.${name}` : quantity.at;
  const what = `${name} waits for ${namesIn(quantity.tree).join(', ')}, which waits for ${name} or something like it`;
  return fault('dimension-ring', at, { what, mend: 'give one of them a length of its own' });
}

function namesIn(tree: Expression): readonly string[] {
  switch (tree.kind) {
    case 'literal':
      return [];
    case 'name':
      return [tree.name];
    case 'negate':
      return namesIn(tree.of);
    case 'binary':
      return [...namesIn(tree.left), ...namesIn(tree.right)];
  }
}
