import type { Expression } from './quantity.ts';

function collect(tree: Expression, names: Set<string>): void {
  if (tree.kind === 'name') names.add(tree.name);
  if (tree.kind === 'negate') collect(tree.of, names);
  if (tree.kind === 'binary') {
    collect(tree.left, names);
    collect(tree.right, names);
  }
}

/** The names an expression uses, each once, in the order they are written. */
export function namesIn(tree: Expression): string[] {
  const names = new Set<string>();
  collect(tree, names);
  return [...names];
}
