import { type Operation, type Surface, USUAL_ORDER } from './operation.ts';

/** What `first` needs and `second` takes away; empty when either may come first. */
export function lostTo(first: Operation, second: Operation): readonly Surface[] {
  return first.id === second.id ? [] : first.needs.filter((surface) => second.destroys.includes(surface));
}

/**
 * Operations in an order in which nothing is needed after it is destroyed, in the workshop's usual order where that
 * leaves a choice; operations that need what each other take away keep the usual order at the end.
 */
export function sequenced(operations: readonly Operation[]): readonly Operation[] {
  const left = [...operations].sort(usual);
  const done: Operation[] = [];
  while (left.length > 0) {
    const free = left.findIndex((one) => left.every((other) => lostTo(other, one).length === 0));
    done.push(...left.splice(Math.max(0, free), 1));
  }
  return done;
}

function usual(a: Operation, b: Operation): number {
  const kinds = USUAL_ORDER.indexOf(a.kind) - USUAL_ORDER.indexOf(b.kind);
  return kinds !== 0 ? kinds : along(a) - along(b);
}

/** From the left end on. */
function along({ setUp }: Operation): number {
  return setUp.stop ?? setUp.fence ?? 0;
}
