import type { Finding } from '../finding.ts';
import type { MatingMark, Part, Placement } from '../stock/part.ts';
import { thicknessFindings } from '../stock/thickness-check.ts';
import { done, type Fault, failed, type Result } from '../units/problem.ts';
import { type Built, lappedBench } from './build.ts';
import { bitNote } from './checks.ts';
import { fault } from './fault.ts';
import { lappedGridFaults } from './faults.ts';
import { fittingFaults } from './fitting-faults.ts';
import { toldOnce } from './hardware/once.ts';
import type { BenchInput, BenchworkInput, BenchworkModel } from './input.ts';
import { neighbourFindings } from './neighbours.ts';

const MOST_BENCHES = 24;

/**
 * The parts, joints, seams and findings of all benches, in bench coordinates, from evaluated inputs. Faults where a bench
 * can't be laid out, each with the most or least that can be had.
 */
export function frame(input: BenchworkInput): Result<BenchworkModel> {
  const faults = [...benchFaults(input.benches), ...input.benches.flatMap((bench) => constructionFaults(input, bench))];
  if (faults.length > 0) return failed(...distinct(faults));
  const several = input.benches.length > 1;
  const built = input.benches
    .map((bench) => lappedBench(input, bench))
    .filter((one) => one !== null)
    .map((one, i) => named(one, several ? { id: `${one.bench.id}.`, label: `${i + 1}` } : { id: '', label: '' }));
  return done({
    benches: built.map(({ bench }) => bench),
    parts: built.flatMap(({ parts }) => parts),
    joints: built.flatMap(({ joints }) => joints),
    seams: built.flatMap(({ seams }) => seams),
    envelopes: built.flatMap(({ envelopes }) => envelopes),
    fasteners: built.flatMap(({ fasteners }) => fasteners),
    hardware: built.flatMap(({ hardware }) => hardware),
    findings: [
      ...materialFindings(input),
      ...toldOnce(built.flatMap(({ findings }) => findings)),
      ...neighbourFindings(built),
    ],
  });
}

function benchFaults(benches: readonly BenchInput[]): readonly Fault[] {
  const again = benches.filter(({ id }, i) => benches.findIndex((one) => one.id === id) !== i);
  const many = benches.length > MOST_BENCHES;
  return [
    ...again.map(({ id, at }) =>
      fault('bench-twice', `${at}.id`, { what: `two benches are called ${id}`, mend: 'give each its own id' }),
    ),
    ...(many
      ? [
          fault('benches-too-many', 'benchwork.benches', {
            what: `${benches.length} benches`,
            mend: `use at most ${MOST_BENCHES}`,
          }),
        ]
      : []),
  ];
}

function constructionFaults(input: BenchworkInput, bench: BenchInput): readonly Fault[] {
  if (bench.construction === 'lapped-grid') {
    const faults = lappedGridFaults(input, bench);
    return faults.length > 0 ? faults : fittingFaults(input, bench);
  }
  const what = `${bench.construction} can't be computed yet`;
  return [fault('construction-not-computed', `${bench.at}.construction`, { what, mend: 'use lapped-grid' })];
}

/** Two benches with one cause give one fault. */
function distinct(faults: readonly Fault[]): readonly Fault[] {
  return faults.filter((one, i) => faults.findIndex((other) => other.at === one.at && other.what === one.what) === i);
}

function materialFindings(input: BenchworkInput): readonly Finding[] {
  const first = input.benches[0];
  if (first === undefined) return [];
  const roles = new Set(['frame', ...input.benches.flatMap(rolesOf)]);
  const thickness = [...roles].flatMap((role) => {
    const material = input.materials[role];
    return material === undefined ? [] : thicknessFindings(material.thickness, role);
  });
  return input.machining.bit === null ? [...thickness, bitNote(first.id)] : thickness;
}

/** Roles of the materials a bench is made of, beside its frame. */
function rolesOf({ deck, drawers = [], legs, shelves = [] }: BenchInput): readonly string[] {
  return [
    ...(deck === null ? [] : ['deck']),
    ...drawers.flatMap(({ material, bottom }) => [material, bottom]),
    ...(legs == null ? [] : [legs.material]),
    ...shelves.map(({ material }) => material),
  ];
}

/** What sets one bench's ids and labels apart from another's; empty when there is one. */
type Prefix = { readonly id: string; readonly label: string };

/** Ids with their bench before them, and marks with their mates' labels in place of ids. */
function named(built: Built, prefix: Prefix): Built {
  const labels = new Map(
    built.parts.flatMap(({ places }) => places.map(({ id, label }) => [id, prefix.label + label])),
  );
  const full = (id: string) => prefix.id + id;
  return {
    bench: built.bench,
    parts: built.parts.map((part) => namedPart(part, prefix, labels)),
    joints: built.joints.map((one) => ({
      ...one,
      id: full(one.id),
      between: [full(one.between[0]), full(one.between[1])],
    })),
    seams: built.seams.map((seam) => ({ ...seam, id: full(seam.id), on: full(seam.on) })),
    envelopes: built.envelopes.map((one) => ({ ...one, id: full(one.id), of: full(one.of) })),
    fasteners: built.fasteners.map((one) => ({
      ...one,
      id: full(one.id),
      holds: full(one.holds),
      through: one.through.map(full),
    })),
    hardware: built.hardware.map((one) => (one.where === built.bench.id ? one : { ...one, where: full(one.where) })),
    findings: built.findings.map((one) => (one.where === built.bench.id ? one : { ...one, where: full(one.where) })),
  };
}

function namedPart(part: Part, prefix: Prefix, labels: ReadonlyMap<string, string>): Part {
  const mark = (one: MatingMark): MatingMark => ({
    ...one,
    text: one.kind === 'mate' ? (labels.get(one.text) ?? one.text) : one.text,
  });
  const place = (one: Placement): Placement => ({
    id: prefix.id + one.id,
    label: prefix.label + one.label,
    pose: one.pose,
    marks: one.marks.map(mark),
  });
  return {
    ...part,
    id: prefix.id + part.id,
    ...(part.from === undefined ? {} : { from: prefix.id + part.from }),
    label: part.label.replaceAll(/\b[A-Z]+/g, (letters) => prefix.label + letters),
    features: part.features.map((feature) =>
      feature.for === undefined ? feature : { ...feature, for: prefix.id + feature.for },
    ),
    places: part.places.map(place),
  };
}
