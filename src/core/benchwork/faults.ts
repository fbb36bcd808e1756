import type { Fault } from '../units/problem.ts';
import { fault, mm } from './fault.ts';
import type { BenchInput, BenchworkInput, Struts } from './input.ts';
import { dadoDepth } from './machining.ts';
import { flangeFaults, MOST_STRUTS, spacingFaults } from './spacing-faults.ts';

const LONGEST = 20_000;

const NEEDED = ['length', 'width', 'height', 'side', 'strut', 'clearance', 'lap-relief'] as const;
const MAY_BE_ZERO: readonly string[] = ['clearance', 'lap-relief'];

/** What keeps a lapped grid from being laid out at all, with the most or least that can be had; empty when it can be. */
export function lappedGridFaults(input: BenchworkInput, bench: BenchInput): readonly Fault[] {
  const missing = [...dimensionFaults(input), ...materialFaults(input, bench), ...strutFaults(bench)];
  if (missing.length > 0) return missing;
  const early = [...heightFaults(input, bench), ...settingFaults(input), ...spacingFaults(input, bench)];
  return early.length > 0 ? early : [...seamFaults(bench), ...overhangFaults(bench), ...flangeFaults(input, bench)];
}

function dimensionFaults({ dimensions }: BenchworkInput): readonly Fault[] {
  return NEEDED.flatMap((name) => {
    const value = dimensions[name];
    if (value === undefined) {
      const words = {
        what: `a lapped grid needs the dimension ${name}`,
        mend: `add "${name}: ..." with its unit under dimensions`,
      };
      return [fault('dimension-missing', 'benchwork.dimensions', words)];
    }
    const least = MAY_BE_ZERO.includes(name) ? 'at least 0' : 'more than 0';
    const holds = value <= LONGEST && (MAY_BE_ZERO.includes(name) ? value >= 0 : value > 0);
    if (holds) return [];
    const words = {
      what: `${name} comes to ${mm(value)}`,
      mend: `${name} must be ${least} and at most ${mm(LONGEST)}`,
    };
    return [fault('dimension-impossible', `benchwork.dimensions.${name}`, words)];
  });
}

function materialFaults({ materials }: BenchworkInput, bench: BenchInput): readonly Fault[] {
  const roles = bench.deck === null ? ['frame'] : ['frame', 'deck'];
  return roles
    .filter((role) => materials[role] === undefined)
    .map((role) =>
      fault('material-missing', 'benchwork.materials', {
        what: `nothing says what the ${role} is cut from`,
        mend: `add "${role}: ..." with the id of a sheet under materials`,
      }),
    );
}

function strutFaults(bench: BenchInput): readonly Fault[] {
  const { struts, at } = bench;
  if (struts === null) {
    const words = { what: 'a lapped grid needs struts', mend: 'add "struts: { along: 1, across: 3 }", or 0 for none' };
    return [fault('struts-missing', at, words)];
  }
  return (['along', 'across'] as const).flatMap((way) => countFaults(struts[way], `${at}.struts.${way}`));
}

function countFaults(struts: Struts, at: string): readonly Fault[] {
  const count = struts.kind === 'even' ? struts.count : struts.at.length;
  if (Number.isInteger(count) && count >= 0 && count <= MOST_STRUTS) return [];
  const what = `${count} is no number of struts this can lay out`;
  return [fault('strut-count', at, { what, mend: `use a whole number from 0 to ${MOST_STRUTS}` })];
}

function heightFaults({ dimensions, materials }: BenchworkInput, bench: BenchInput): readonly Fault[] {
  const { side = 0, strut = 0, height = 0 } = dimensions;
  const deck = bench.deck === null ? 0 : (materials.deck?.thickness.mean ?? 0);
  const low = height - deck - side;
  const deep = fault('strut-deeper-than-side', 'benchwork.dimensions.strut', {
    what: `struts of ${mm(strut)} are deeper than the sides of ${mm(side)}`,
    mend: `make the struts at most ${mm(side)}, or the sides at least ${mm(strut)}`,
  });
  const sunk = fault('below-the-floor', 'benchwork.dimensions.height', {
    what: `the sides would reach ${mm(-low)} below the floor`,
    mend: `make the height at least ${mm(side + deck)}, or the sides at most ${mm(Math.max(0, height - deck))}`,
  });
  return [...(strut > side ? [deep] : []), ...(low < 0 ? [sunk] : [])];
}

function settingFaults({ materials, machining }: BenchworkInput): readonly Fault[] {
  const t = materials.frame?.thickness.mean ?? 0;
  const at = 'benchwork.machining';
  if (!(machining.step > 0)) {
    return [
      fault('setting-step', `${at}.round-to`, {
        what: 'settings need a step above 0',
        mend: 'write "round-to: 0.1 mm"',
      }),
    ];
  }
  if (machining.bit !== null && !(machining.bit > 0)) {
    return [
      fault('bit-size', `${at}.bit`, {
        what: `a bit of ${mm(machining.bit)} cuts nothing`,
        mend: 'write its diameter',
      }),
    ];
  }
  const depth = dadoDepth(t, machining.step);
  if (depth > 0 && depth < t) return [];
  const what = `in steps of ${mm(machining.step)} a dado in ${mm(t)} comes to ${mm(depth)}`;
  return [fault('setting-step', `${at}.round-to`, { what, mend: `use a step of at most ${mm(t / 3)}` })];
}

function seamFaults(bench: BenchInput): readonly Fault[] {
  const { deck, struts, at } = bench;
  if (deck === null || struts === null) return [];
  return deck.seams.flatMap(({ parallelTo, on }, i) => {
    const way = parallelTo === 'y' ? 'across' : 'along';
    const count = struts[way].kind === 'even' ? struts[way].count : struts[way].at.length;
    const choices = Array.from({ length: count }, (_, k) => `strut.${way}-${k + 1}`);
    const again = deck.seams.findIndex((seam) => seam.parallelTo === parallelTo && seam.on === on) !== i;
    if (choices.includes(on) && !again) return [];
    const what =
      again && choices.includes(on) ? `a second seam on ${on}` : `a seam parallel to ${parallelTo} can't lie on ${on}`;
    const mend =
      count === 0
        ? `there is no strut that way; add one under struts.${way}`
        : `lay it on one of ${choices.join(', ')}`;
    const many = deck.seams.length > 1 ? `.seams.${i}` : '.seam';
    return [fault('seam-without-strut', `${at}.deck${many}.on`, { what, mend })];
  });
}

function overhangFaults({ deck, at }: BenchInput): readonly Fault[] {
  if (deck === null || (deck.overhang >= 0 && deck.overhang <= 500)) return [];
  const what = `an overhang of ${mm(deck.overhang)} can't be trimmed`;
  return [fault('deck-overhang', `${at}.deck.overhang`, { what, mend: `use 0 to ${mm(500)}; a few millimetres do` })];
}
