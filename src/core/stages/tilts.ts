import type { Tilt } from '../assembly/assembly.ts';
import type { BenchworkModel } from '../benchwork/input.ts';
import type { Plan } from '../plan.ts';
import { nearest } from '../units/nearest.ts';
import type { Fault } from '../units/problem.ts';

/** What an author says is tilted in, by bench, and a fault for every piece that its bench has not. */
export type Tilts = { readonly of: ReadonlyMap<string, readonly Tilt[]>; readonly faults: readonly Fault[] };

/** Reads every bench's `tilts` against the pieces it is built from. */
export function tiltsOf(plan: Plan, { parts }: Pick<BenchworkModel, 'parts'>): Tilts {
  const faults: Fault[] = [];
  const of = new Map<string, readonly Tilt[]>();
  plan.benchwork.benches.forEach(({ id, tilts = [] }, i) => {
    const pieces = parts.filter(({ bench }) => bench === id).flatMap(({ places }) => places.map((place) => place.id));
    tilts.forEach(({ part }, k) => {
      if (!pieces.includes(part)) faults.push(noPiece(part, `benchwork.benches.${i}.tilts.${k}.part`, pieces));
    });
    of.set(
      id,
      tilts.filter(({ part }) => pieces.includes(part)).map((one): Tilt => ({ ...one, path: 'tilt' })),
    );
  });
  return { of, faults };
}

function noPiece(part: string, at: string, pieces: readonly string[]): Fault {
  const near = nearest(part, pieces);
  const mend = near === null ? `name one of its pieces: ${pieces.slice(0, 8).join(', ')}` : `did you mean '${near}'?`;
  return { rule: 'tilt-piece', at, what: `'${part}' is no piece of this bench`, mend };
}
