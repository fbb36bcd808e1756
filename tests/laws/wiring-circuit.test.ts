import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { alongBranch, lostAt, worstAlong } from '../../src/core/wiring/along-branch.ts';
import { type Branch, branchAmps, drops, loopResistance, network } from '../../src/core/wiring/circuit.ts';
import { exact, exactSolution, type Fraction, negative, ratio, reciprocal, sum } from './exact-solution.ts';
import { type RandomCircuit, randomCircuit } from './random-circuit.ts';

const SEED = 20261125;
const RUNS = 500;
const samples = fc.sample(randomCircuit, { numRuns: RUNS, seed: SEED });

type Law = (sample: RandomCircuit, lost: ReadonlyMap<string, number>) => readonly string[];

function near(a: number, b: number, within = 1e-9): boolean {
  return Math.abs(a - b) <= within * Math.max(1, Math.abs(a), Math.abs(b));
}

/** Nodes that branches without resistance join count as one. */
function groups({ circuit, nodes }: RandomCircuit): ReadonlyMap<string, string> {
  const group = new Map(nodes.map((node) => [node, node]));
  for (const { from, to, ohm } of circuit.branches) {
    const [a, b] = [group.get(from), group.get(to)];
    if (ohm === 0) for (const node of nodes) if (group.get(node) === a) group.set(node, b ?? node);
  }
  return group;
}

/** What flows into a node is what is drawn there (Kirchhoff's current law), from the drops alone. */
const currentsBalance: Law = (sample, lost) => {
  const group = groups(sample);
  const source = group.get(sample.circuit.source);
  return [...new Set(group.values())].flatMap((one) => {
    if (one === source) return [];
    const members = sample.nodes.filter((node) => group.get(node) === one);
    const inward = ({ from, to, ohm }: Branch) => {
      const flow = ohm === 0 ? 0 : ((lost.get(to) ?? Number.NaN) - (lost.get(from) ?? Number.NaN)) / ohm;
      return members.includes(to) === members.includes(from) ? 0 : members.includes(to) ? flow : -flow;
    };
    const flows = sample.circuit.branches.reduce((total, branch) => total + inward(branch), 0);
    const drawn = members.reduce((total, node) => total + (sample.draws[node] ?? 0), 0);
    return near(flows, drawn, 1e-7) ? [] : [`${one}: ${flows} A in, ${drawn} A drawn`];
  });
};

/** Nodes, conductances between them and currents drawn, set up here from the branches alone. */
type Equations = {
  readonly free: readonly string[];
  readonly matrix: readonly (readonly Fraction[])[];
  readonly drawn: readonly Fraction[];
};

function equations(sample: RandomCircuit): Equations {
  const group = groups(sample);
  const source = group.get(sample.circuit.source);
  const free = [...new Set(group.values())].filter((one) => one !== source);
  const matrix = free.map((a) =>
    free.map((b) =>
      sample.circuit.branches
        .filter(({ from, to, ohm }) => ohm > 0 && group.get(from) !== group.get(to))
        .map(({ from, to, ohm }) => {
          const ends = [group.get(from), group.get(to)];
          const g = reciprocal(exact(ohm));
          if (a === b) return ends.includes(a) ? g : exact(0);
          return ends.includes(a) && ends.includes(b) ? negative(g) : exact(0);
        })
        .reduce(sum, exact(0)),
    ),
  );
  const drawn = free.map((one) =>
    sample.nodes
      .filter((node) => group.get(node) === one)
      .map((node) => exact(sample.draws[node] ?? 0))
      .reduce(sum, exact(0)),
  );
  return { free, matrix, drawn };
}

function otherThan(free: readonly string[], lost: ReadonlyMap<string, number>, wanted: readonly number[]) {
  return free.flatMap((one, i) =>
    near(lost.get(one) ?? Number.NaN, wanted[i] ?? Number.NaN) ? [] : [`${one}: ${lost.get(one)}, not ${wanted[i]}`],
  );
}

/** The same drops by elimination over fractions. */
const sameAsExact: Law = (sample, lost) => {
  const { free, matrix, drawn } = equations(sample);
  return otherThan(free, lost, exactSolution(matrix, drawn));
};

/** The same drops by a general library of linear algebra. */
const sameAsLibrary: Law = (sample, lost) => {
  const { free, matrix, drawn } = equations(sample);
  if (free.length === 0) return [];
  const rows = matrix.map((row) => row.map(ratio));
  return otherThan(free, lost, solve(new Matrix(rows), Matrix.columnVector(drawn.map(ratio))).to1DArray());
};

/** More copper on any branch never loses more anywhere. */
const thickerNeverLosesMore: Law = (sample, lost) => {
  const branches = sample.circuit.branches.map((branch, i) => (i === 0 ? { ...branch, ohm: branch.ohm / 2 } : branch));
  const better = drops(network({ ...sample.circuit, branches }), sample.draws);
  return sample.nodes.flatMap((node) => ((better.get(node) ?? 0) <= (lost.get(node) ?? 0) + 1e-9 ? [] : [node]));
};

/** A place on a branch answers as a node put there does. */
const placeIsNode: Law = ({ circuit, draws }) => {
  const branch = circuit.branches.find(({ ohm }) => ohm > 0);
  if (branch === undefined) return [];
  const line = alongBranch(network(circuit), branch.id, draws);
  if (line === null) return ['not fed'];
  const split = (share: number) => [
    ...circuit.branches.filter(({ id }) => id !== branch.id),
    { ...branch, to: 'here', ohm: branch.ohm * share },
    { ...branch, id: 'rest', from: 'here', ohm: branch.ohm * (1 - share) },
  ];
  const wrong = [0.2, 0.5, 0.9].filter((share) => {
    const own = drops(network({ ...circuit, branches: split(share) }), { ...draws, here: 1.5 }).get('here');
    return !near(own ?? Number.NaN, lostAt(line, share, 1.5));
  });
  const worst = worstAlong(line, 1.5);
  const missed = Array.from({ length: 51 }, (_, i) => i / 50).filter(
    (share) => lostAt(line, share, 1.5) > worst.lost + 1e-9,
  );
  return [...wrong, ...missed].map((share) => `at ${share}`);
};

const laws: readonly (readonly [string, Law])[] = [
  ['what flows into a node is drawn there', currentsBalance],
  ['elimination over fractions gives the same', sameAsExact],
  ['a general library of linear algebra gives the same', sameAsLibrary],
  ['thicker never loses more', thickerNeverLosesMore],
  ['a place on a branch answers as a node there', placeIsNode],
];

function broken(law: Law, change: (lost: ReadonlyMap<string, number>) => ReadonlyMap<string, number>): number {
  return samples.filter((sample) => law(sample, change(drops(network(sample.circuit), sample.draws))).length > 0)
    .length;
}

describe(`${RUNS} random networks`, () => {
  it('are valid in at least 70 %', () => {
    const valid = samples.filter(({ circuit, nodes }) => nodes.every((node) => drops(network(circuit), {}).has(node)));
    console.log(`random networks: ${valid.length} of ${samples.length} are fed everywhere`);
    expect(valid.length / samples.length).toBeGreaterThanOrEqual(0.7);
  });

  for (const [name, law] of laws) it(name, () => expect(broken(law, (lost) => lost)).toBe(0));

  it('a planted fault breaks the laws: one drop a thousandth too great', () => {
    const planted = (lost: ReadonlyMap<string, number>) =>
      new Map([...lost].map(([node, value]) => [node, node === 'n1' ? value * 1.001 : value]));
    expect(broken(currentsBalance, planted)).toBeGreaterThan(RUNS / 2);
    expect(broken(sameAsExact, planted)).toBeGreaterThan(RUNS / 2);
    expect(broken(sameAsLibrary, planted)).toBeGreaterThan(RUNS / 2);
  });

  it('a planted fault breaks the law of copper: drops of a feed at half the current', () => {
    expect(
      broken(thickerNeverLosesMore, (lost) => new Map([...lost].map(([node, value]) => [node, value * 0.5]))),
    ).toBeGreaterThan(0);
  });
});

describe('closed forms', () => {
  it('a ladder of one-ohm rungs: 1 + 1/(1 + 1/(1 + ...)) ohm, ratios of Fibonacci numbers', () => {
    const rungs = 12;
    const branches = Array.from({ length: rungs }, (_, i): readonly Branch[] => [
      { id: `s${i}`, from: `a${i + 1}`, to: `a${i}`, ohm: 1 },
      { id: `r${i}`, from: `a${i}`, to: 'ground', ohm: 1 },
    ]).flat();
    const net = network({ source: 'ground', branches });
    let [a, b] = [1, 1];
    for (let i = 0; i < 2 * rungs; i += 1) [a, b] = [a + b, a];
    expect(Math.abs((loopResistance(net, `a${rungs}`) ?? 0) - a / b)).toBeLessThan(1e-9);
  });

  it('a bridge out of balance: the known answer of Wheatstone with 1, 2, 3, 4 and 5 ohm', () => {
    // delta a-b-c of 1, 2, 5 becomes a star of 2/8, 5/8 and 10/8; then 3 and 4 join it in parallel
    const branches: readonly Branch[] = [
      { id: 'ab', from: 'a', to: 'b', ohm: 1 },
      { id: 'ac', from: 'a', to: 'c', ohm: 2 },
      { id: 'bc', from: 'b', to: 'c', ohm: 5 },
      { id: 'bd', from: 'b', to: 'd', ohm: 3 },
      { id: 'cd', from: 'c', to: 'd', ohm: 4 },
    ];
    const star = 2 / 8 + 1 / (1 / (5 / 8 + 3) + 1 / (10 / 8 + 4));
    expect(Math.abs((loopResistance(network({ source: 'd', branches }), 'a') ?? 0) - star)).toBeLessThan(1e-9);
  });

  it('the currents of a pair in parallel share as their conductances', () => {
    const net = network({
      source: 's',
      branches: [
        { id: 'thin', from: 's', to: 'x', ohm: 3 },
        { id: 'thick', from: 's', to: 'x', ohm: 1 },
      ],
    });
    const amps = branchAmps(net, drops(net, { x: 4 }));
    expect(amps.get('thin')).toBeCloseTo(1, 12);
    expect(amps.get('thick')).toBeCloseTo(3, 12);
  });

  it('a node on an island has no drop at all', () => {
    const net = network({ source: 's', branches: [{ id: 'b', from: 'x', to: 'y', ohm: 1 }] });
    expect(drops(net, { x: 1 }).has('x')).toBe(false);
    expect(loopResistance(net, 'y')).toBeNull();
    expect(alongBranch(net, 'b', {})).toBeNull();
  });
});
