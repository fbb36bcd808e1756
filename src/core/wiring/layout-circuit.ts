import { alongBranch, lostAt, worstAlong } from './along-branch.ts';
import { type Draws, drops, isFed, type Network, network } from './circuit.ts';
import { warmResistance } from './copper.ts';
import { districtName, districtOf, districtsOf } from './districts.ts';
import type { Feeder } from './feeders.ts';
import type { Gap } from './gap.ts';
import type { WiringInput } from './input.ts';
import { trips } from './protection.ts';
import { feederNode, type RailBranch, railBranches } from './rail-circuit.ts';
import { type Laid, SOURCE, wireBranches } from './wire-circuit.ts';

/** Everything that conducts: wires of given resistance, ohm per m at 20 degrees Celsius. */
export type Conductors = {
  readonly input: WiringInput;
  readonly gaps: readonly Gap[];
  readonly feeders: readonly Feeder[];
  readonly laid: Laid | null;
  readonly bus: number;
  readonly tail: number;
};

/** The whole layout as one circuit, with what its steady loads draw; pairs are branches there and back. */
export type LayoutCircuit = { readonly net: Network; readonly rails: readonly RailBranch[]; readonly draws: Draws };

export function layoutCircuit({ input, gaps, feeders, laid, bus, tail }: Conductors): LayoutCircuit {
  const both = (ohmPerMetre: number, length: number) => (2 * warmResistance(ohmPerMetre, input.warm) * length) / 1000;
  const { rails, turnouts } = railBranches(input.rails, { gaps, feeders, ohmPerMetre: input.rail.ohmPerMetre });
  const wired = laid === null ? [] : wireBranches(laid, { bus: (mm) => both(bus, mm), tail: (mm) => both(tail, mm) });
  const draws: Record<string, number> = {};
  for (const { tap, amps } of laid?.tails ?? []) if (amps > 0) draws[feederNode(tap.drop)] = amps;
  return { net: network({ source: SOURCE, branches: [...wired, ...turnouts, ...rails] }), rails, draws };
}

/** A place on a line and a figure there. */
export type AtPlace = { readonly line: string; readonly at: number };

/** What a district gives at its worst places. V, A, ohm. */
export type DistrictFigures = {
  readonly id: string;
  /** what it is called */
  readonly name: string;
  readonly lines: readonly string[];
  readonly tripsAt: number;
  readonly steady: number;
  /** what trains may draw at once: the trip current less the steady loads */
  readonly forTrains: number;
  /** with all of that drawn by trains at the worst place; null where nothing is fed */
  readonly worst: (AtPlace & { readonly volts: number }) | null;
  /** a short at the place of the longest loop */
  readonly short: (AtPlace & { readonly amps: number; readonly loop: number }) | null;
  readonly trips: boolean;
  /** all that its steady loads draw for a moment as they are switched on together */
  readonly startUp: number;
  /** what each load has at its own place: with the steady loads on, and a pulse thrown alone */
  readonly loads: readonly LoadFigures[];
};

/** A load as its circuit serves it; V, A. `volts` is null where nothing feeds it. */
export type LoadFigures = {
  readonly load: string;
  readonly kind: 'steady' | 'pulse';
  readonly amps: number;
  readonly volts: number | null;
};

/** Worst voltage and worst short of every district. */
export function districtFigures(input: WiringInput, circuit: LayoutCircuit): readonly DistrictFigures[] {
  const { net, rails, draws } = circuit;
  return districtsOf(input).map(({ id, lines, tripsAt }) => {
    const steady = steadyAmps(input, id);
    const forTrains = Math.max(0, tripsAt - steady);
    const mine = rails.filter(({ line }) => districtOf(input.districts, line) === id);
    const spots = mine.flatMap((branch) => {
      const along = alongBranch(net, branch.id, draws);
      if (along === null) return [];
      const place = (share: number): AtPlace => ({
        line: branch.line,
        at: branch.start + share * (branch.end - branch.start),
      });
      const low = worstAlong(along, forTrains);
      const far = worstAlong({ ...along, loads: { a: 0, b: 0, c: 0 } }, 1);
      return [{ low: { ...place(low.share), lost: low.lost }, far: { ...place(far.share), loop: far.lost } }];
    });
    const low = most(
      spots.map((spot) => spot.low),
      ({ lost }) => lost,
    );
    const far = most(
      spots.map((spot) => spot.far),
      ({ loop }) => loop,
    );
    return {
      ...{ id, name: districtName(input, id), lines, tripsAt, steady, forTrains },
      worst: low === null ? null : { line: low.line, at: low.at, volts: input.supply.volts - low.lost },
      short: far === null ? null : { ...far, amps: far.loop === 0 ? Number.MAX_VALUE : input.supply.volts / far.loop },
      trips: far !== null && trips({ volts: input.supply.volts, loop: far.loop, tripsAt }),
      startUp: startUpAmps(input, id),
      loads: loadFigures(input, circuit, id),
    };
  });
}

/** Loads of a district with the volts they have: steady ones all at once, pulses one after another. */
function loadFigures(input: WiringInput, { net, draws }: LayoutCircuit, district: string): readonly LoadFigures[] {
  return input.loads
    .filter((load) => loadDistrict(input, load) === district)
    .map(({ amps, id, kind }) => {
      const node = feederNode(`load.${id}`);
      const lost = drops(net, kind === 'pulse' ? { ...draws, [node]: amps } : draws).get(node);
      return { load: id, kind, amps, volts: lost === undefined ? null : input.supply.volts - lost };
    });
}

/** Current of a district's steady loads as they are all switched on together, A. */
function startUpAmps(input: WiringInput, district: string): number {
  return input.loads
    .filter((load) => load.kind === 'steady' && loadDistrict(input, load) === district)
    .reduce((sum, { amps, inrush }) => sum + Math.max(amps, inrush ?? amps), 0);
}

function most<T>(all: readonly T[], figure: (one: T) => number): T | null {
  return all.reduce<T | null>((best, one) => (best === null || figure(one) > figure(best) + 1e-12 ? one : best), null);
}

/** Current that a district's steady loads draw together, A. */
export function steadyAmps(input: WiringInput, district: string): number {
  return input.loads
    .filter((load) => load.kind === 'steady' && loadDistrict(input, load) === district)
    .reduce((sum, { amps }) => sum + amps, 0);
}

/** The district a load hangs on: its line's, its turnout's line's, or the supply's own. */
export function loadDistrict(
  { districts, rails }: Pick<WiringInput, 'districts' | 'rails'>,
  { place }: WiringInput['loads'][number],
): string {
  if (place.kind === 'line') return districtOf(districts, place.line);
  const turnout = place.kind === 'turnout' ? rails.turnouts.find(({ id }) => id === place.turnout) : undefined;
  return districtOf(districts, turnout?.line ?? '');
}

/** Rails that nothing feeds, as stretches of their lines. */
export function unfedRails({ net, rails }: LayoutCircuit): readonly RailBranch[] {
  return rails.filter(({ from, to, start, end }) => end - start > 1e-6 && !(isFed(net, from) && isFed(net, to)));
}

/** Voltage at a train that draws all its district gives, along a line; V at distances in mm. */
export type LineVoltage = { readonly line: string; readonly points: readonly (readonly [number, number])[] };

/** Voltage along every line for the drawing, at the ends of each length of rail and between. */
export function lineVoltages(input: WiringInput, { net, rails, draws }: LayoutCircuit): readonly LineVoltage[] {
  const forTrains = new Map(
    districtsOf(input).map(({ id, tripsAt }) => [id, Math.max(0, tripsAt - steadyAmps(input, id))]),
  );
  return input.rails.lines.map(({ id }) => ({
    line: id,
    points: rails
      .filter(({ line }) => line === id)
      .flatMap((branch) => {
        const along = alongBranch(net, branch.id, draws);
        const amps = forTrains.get(districtOf(input.districts, id)) ?? 0;
        if (along === null) return [];
        return [0, 0.25, 0.5, 0.75, 1].map(
          (share) =>
            [
              branch.start + share * (branch.end - branch.start),
              input.supply.volts - lostAt(along, share, amps),
            ] as const,
        );
      }),
  }));
}
