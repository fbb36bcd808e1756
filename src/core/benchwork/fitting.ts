import type { Finding } from '../finding.ts';
import type { Fastener, HardwareUse } from '../stock/fastener.ts';
import type { Envelope, Joint } from '../stock/part.ts';
import type { Goods } from './goods.ts';
import type { Grid } from './grid.ts';
import type { Material } from './input.ts';
import type { Instance } from './instance.ts';
import type { BoardCut } from './side-view.ts';

/** What legs, drawers and shelves are fitted to. */
export type Site = {
  readonly grid: Grid;
  readonly bench: string;
  readonly materials: Readonly<Record<string, Material>>;
  readonly flangeStrips: number | null;
  readonly step: number;
  readonly goods: Goods | null;
};

/** What one set of drawers, legs or shelves adds to a bench. */
export type Fitting = {
  readonly instances: readonly Instance[];
  readonly joints: readonly Joint[];
  readonly envelopes: readonly Envelope[];
  readonly cuts: readonly BoardCut[];
  readonly fasteners: readonly Fastener[];
  /** besides the fasteners */
  readonly hardware: readonly HardwareUse[];
  readonly findings: readonly Finding[];
};

export const NOTHING: Fitting = {
  instances: [],
  joints: [],
  envelopes: [],
  cuts: [],
  fasteners: [],
  hardware: [],
  findings: [],
};

/** Several fittings as one. */
export function together(fittings: readonly Fitting[]): Fitting {
  return {
    instances: fittings.flatMap((one) => one.instances),
    joints: fittings.flatMap((one) => one.joints),
    envelopes: fittings.flatMap((one) => one.envelopes),
    cuts: fittings.flatMap((one) => one.cuts),
    fasteners: fittings.flatMap((one) => one.fasteners),
    hardware: fittings.flatMap((one) => one.hardware),
    findings: fittings.flatMap((one) => one.findings),
  };
}

/** A fitting that only says something. */
export function saying(...findings: readonly Finding[]): Fitting {
  return { ...NOTHING, findings };
}
