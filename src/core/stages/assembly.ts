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
import type { Step } from '../steps/step.ts';
import { joinsPieces } from '../stock/fastener.ts';
import type { KnownThickness } from '../stock/thickness.ts';

/** How every bench goes together and how its parts are machined. */
export type AssemblyStage = {
  readonly assembly: readonly Assembly[];
  readonly machining: readonly Machining[];
  readonly findings: readonly Finding[];
};

/** Which step puts an instance in, counted in their order; the first that says so. */
export function putInBy(steps: readonly Step[]): ReadonlyMap<string, number> {
  return new Map(steps.flatMap(({ fits = [] }, i) => fits.map((id) => [id, i] as const)).reverse());
}

/** What stands before the assembly: the benchwork, its sheets, and the workshop's tools. */
export type Before = {
  readonly model: BenchworkModel;
  readonly thicknesses: readonly KnownThickness[];
  readonly head: HeadValues;
  readonly tilts: ReadonlyMap<string, readonly Tilt[]>;
  /** the steps of all chapters in their order */
  readonly steps: readonly Step[];
};

/** Stage 8: fit, order of assembly and machining, bench by bench. */
export function assemblyStage(plan: Plan, { model, thicknesses, head, tilts, steps }: Before): AssemblyStage {
  const { clamps, bits } = head;
  const putIn = putInBy(steps);
  const assembly = model.benches.map(({ id }): Assembly => {
    const parts = model.parts.filter((part) => part.bench === id && part.chapter === 'benchwork');
    const written = plan.benchwork.benches.find((bench) => bench.id === id);
    return proveAssembly({
      bench: id,
      parts,
      joints: model.joints,
      thicknesses,
      fasteners: model.fasteners.filter(joinsPieces),
      told: model.findings.filter(({ rule }) => rule === 'no-room-for-driver').map(({ where }) => where),
      groups: groupsOf(parts.flatMap(({ places }) => places.map((place) => place.id))),
      steps: putIn,
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
