import type { WireStock } from '../stock/goods.ts';
import type { Feeder } from './feeders.ts';
import type { Gap } from './gap.ts';
import type { DistrictFigures } from './layout-circuit.ts';
import type { RailBranch } from './rail-circuit.ts';
import type { Tail } from './tail.ts';

/** The heavy and the thin wires of a layout. */
export type Wires = { readonly bus: WireStock; readonly thin: WireStock };

/** What a layout's wires come to: what each district gives, and the thin wires as they lie. */
export type Served = { readonly districts: readonly DistrictFigures[]; readonly tails: readonly Tail[] };

/** The circuit as computed, with a way to lay it anew with other wires. */
export type Computed = Served & {
  readonly unfed: readonly RailBranch[];
  readonly gaps: readonly Gap[];
  readonly feeders: readonly Feeder[];
  readonly served: (wires: Wires) => Served;
  /** the smallest wires in stock that serve every district; null when none do. Found once, when it is first asked */
  readonly sized: () => Wires | null;
};
