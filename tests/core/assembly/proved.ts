import type { Assembly } from '../../../src/core/assembly/assembly.ts';
import { type AssemblyInput, proveAssembly } from '../../../src/core/assembly/prove.ts';
import { USUAL_WORKSHOP } from '../../../src/core/assembly/workshop.ts';
import type { BenchworkInput, BenchworkModel } from '../../../src/core/benchwork/input.ts';
import { joinsPieces } from '../../../src/core/stock/fastener.ts';

/** A built bench as the assembly takes it. */
export function kit(input: BenchworkInput, built: BenchworkModel, more: Partial<AssemblyInput> = {}): AssemblyInput {
  const { parts, joints, fasteners } = built;
  const thicknesses = Object.values(input.materials).map(({ thickness }) => thickness);
  const plain = {
    bench: 'table',
    groups: [],
    steps: new Map<string, number>(),
    tilts: [],
    corner: 'front-left',
    workshop: USUAL_WORKSHOP,
  };
  return { ...plain, parts, joints, fasteners: fasteners.filter(joinsPieces), thicknesses, ...more };
}

export function proved(input: BenchworkInput, built: BenchworkModel, more: Partial<AssemblyInput> = {}): Assembly {
  return proveAssembly(kit(input, built, more));
}
