import type { Assembly, Tilt } from '../assembly/assembly.ts';
import { groupsOf } from '../assembly/group.ts';
import { machiningOf } from '../assembly/machining/machining.ts';
import { type Machining, USUAL_MACHINES } from '../assembly/machining/operation.ts';
import { proveAssembly } from '../assembly/prove.ts';
import { USUAL_WORKSHOP } from '../assembly/workshop.ts';
import type { BenchworkModel } from '../benchwork/input.ts';
import type { Finding } from '../finding.ts';
import type { HeadValues } from '../head.ts';
import type { Plan } from '../plan.ts';
import type { KnownThickness } from '../stock/thickness.ts';

/** How every bench goes together and how its parts are machined. */
export type AssemblyStage = {
  readonly assembly: readonly Assembly[];
  readonly machining: readonly Machining[];
  readonly findings: readonly Finding[];
};

/** What stands before the assembly: the benchwork, its sheets, and the workshop's tools. */
export type Before = {
  readonly model: BenchworkModel;
  readonly thicknesses: readonly KnownThickness[];
  readonly head: HeadValues;
  readonly tilts: ReadonlyMap<string, readonly Tilt[]>;
};

/** Stage 8: fit, order of assembly and machining, bench by bench. */
export function assemblyStage(plan: Plan, { model, thicknesses, head, tilts }: Before): AssemblyStage {
  const { clamps, bits } = head;
  const assembly = model.benches.map(({ id }): Assembly => {
    const parts = model.parts.filter((part) => part.bench === id && part.chapter === 'benchwork');
    const written = plan.benchwork.benches.find((bench) => bench.id === id);
    return proveAssembly({
      bench: id,
      parts,
      joints: model.joints,
      thicknesses,
      fasteners: model.fasteners,
      groups: groupsOf(parts.flatMap(({ places }) => places.map((place) => place.id))),
      tilts: tilts.get(id) ?? [],
      corner: written?.deck?.flush ?? 'front-left',
      workshop: { ...USUAL_WORKSHOP, clamps },
    });
  });
  const machines = bits.length > 0 ? { ...USUAL_MACHINES, bits } : USUAL_MACHINES;
  const wooden = model.parts.filter(({ chapter }) => chapter === 'benchwork');
  return {
    assembly,
    machining: machiningOf(wooden, machines),
    findings: assembly.flatMap(({ findings }) => findings),
  };
}
