import type { Finding } from '../finding.ts';
import { atLeast, atMost, length, say } from '../units/say.ts';
import type { Seam } from './bench.ts';
import { ASSUMED_BIT, bays, type Grid } from './grid.ts';
import { tidy } from './machining.ts';

const PRACTICE = 'common practice, no source';
/** Wood under each edge of a seam. */
const LEAST_BEARING = 12;
/** A strut goes in by hand and does not rattle. */
const CLEARANCE = { least: 0.1, most: 0.4 };
const RELIEF = { least: 0.3, most: 0.5 };

type Words = Pick<Finding, 'rule' | 'level' | 'where' | 'what' | 'figure' | 'limit' | 'mend'>;

function finding(words: Words): Finding {
  return { ...words, chapter: 'benchwork', unit: 'mm', source: PRACTICE, accepted: null };
}

/** Checks of a lapped grid against common practice; `bench` is the bench's id, for what is about all of it. */
export function gridFindings(grid: Grid, bench: string): readonly Finding[] {
  return [
    ...dadoFindings(grid, bench),
    ...playFindings(grid, bench),
    ...bitFindings(grid, bench),
    ...woodFindings(grid, bench),
  ];
}

function dadoFindings(grid: Grid, bench: string): readonly Finding[] {
  const most = tidy(grid.t / 2);
  if (grid.dado <= most) return [];
  const what = say`dados ${length(grid.dado)} deep leave ${length(grid.t - grid.dado)} of ${length(grid.t)}`;
  const mend = say`set the machine in finer steps, so that a dado comes near ${length(grid.t / 3)}`;
  return [finding({ rule: 'dado-too-deep', level: 'halt', where: bench, what, figure: grid.dado, limit: most, mend })];
}

function playFindings(grid: Grid, bench: string): readonly Finding[] {
  const slack = range('clearance-unusual', { figure: grid.clearance, ...CLEARANCE });
  const relief = range('lap-relief-unusual', { figure: grid.relief, ...RELIEF });
  return [
    ...slack.map((one) =>
      finding({ ...one, where: bench, what: say`slots are ${length(grid.clearance)} wider than what enters them` }),
    ),
    ...relief.map((one) =>
      finding({
        ...one,
        where: bench,
        what: say`each half of a lap is ${length(grid.relief)} deeper than half the strut`,
      }),
    ),
  ];
}

type Range = { readonly figure: number; readonly least: number; readonly most: number };

/** A care when a figure lies more than a hundredth outside its usual range, so that 1/64 in counts as 0.4 mm. */
function range(rule: string, { figure, least, most }: Range): readonly Omit<Words, 'where' | 'what'>[] {
  if (figure >= least - 0.01 && figure <= most + 0.01) return [];
  const limit = figure < least ? least : most;
  return [
    {
      rule,
      level: 'care',
      figure,
      limit,
      mend: say`usual are ${length(least)} to ${length(most)}; try one joint in scrap first`,
    },
  ];
}

function bitFindings(grid: Grid, bench: string): readonly Finding[] {
  if (grid.bit < grid.slot) return [];
  const what = say`a bit of ${length(grid.bit)} is too wide for dados of ${length(grid.slot)}`;
  const mend = say`use a bit under ${length(grid.slot)}, such as ${length(ASSUMED_BIT)}`;
  return [
    finding({ rule: 'bit-too-wide', level: 'halt', where: bench, what, figure: grid.bit, limit: grid.slot, mend }),
  ];
}

/** Says which bit was taken when nobody named one. */
export function bitNote(bench: string): Finding {
  const what = say`no bit is named; stopped dados are drawn for one of ${length(ASSUMED_BIT)}`;
  const mend = say`name yours: "machining: { bit: ... }", or the router's bits among the tools`;
  return finding({ rule: 'bit-not-named', level: 'note', where: bench, what, figure: ASSUMED_BIT, limit: null, mend });
}

function woodFindings(grid: Grid, bench: string): readonly Finding[] {
  return [
    ...lapFindings(grid, bench),
    ...webFindings(grid, { centres: grid.across, outside: grid.length, family: 'across', bench }),
    ...webFindings(grid, { centres: grid.along, outside: grid.width, family: 'along', bench }),
  ];
}

/** What a lap leaves of a strut should be no less than the strut is thick. */
function lapFindings(grid: Grid, bench: string): readonly Finding[] {
  const left = tidy(grid.strut - grid.lap);
  if (grid.across.length === 0 || grid.along.length === 0 || left >= grid.t) return [];
  const level = left < grid.t / 2 ? 'halt' : 'care';
  const what = say`slots ${length(grid.lap)} deep leave ${length(left)} of a strut ${length(grid.strut)} deep`;
  const mend = say`make the struts at least ${atLeast(2 * (grid.t + grid.relief))} deep`;
  return [finding({ rule: 'lap-leaves-little', level, where: bench, what, figure: left, limit: grid.t, mend })];
}

type Family = {
  readonly centres: readonly number[];
  readonly outside: number;
  readonly family: 'across' | 'along';
  readonly bench: string;
};

/** Short grain between two slots splits off; it should be twice as long as the strut is thick. */
function webFindings(grid: Grid, { centres, outside, family, bench }: Family): readonly Finding[] {
  if (centres.length === 0) return [];
  const narrowest = bays(centres, outside, grid.t).reduce((least, bay) => Math.min(least, bay));
  const web = tidy(narrowest - (grid.slot - grid.t));
  const limit = tidy(2 * grid.t);
  if (web >= limit) return [];
  const level = web < grid.t / 2 ? 'halt' : 'care';
  const what = say`${family} struts stand so close that ${length(web)} of wood is left between their slots`;
  const mend = say`use fewer, or keep bays of at least ${atLeast(limit + grid.slot - grid.t)}`;
  return [finding({ rule: 'struts-too-close', level, where: bench, what, figure: web, limit, mend })];
}

/** Deck edges that rest on too little. */
export function seamFindings(seams: readonly Seam[], grid: Grid): readonly Finding[] {
  return seams.flatMap((seam) => {
    const bearing = Math.min(...seam.bearing);
    if (bearing >= LEAST_BEARING) return [];
    const batten = tidy(LEAST_BEARING - bearing);
    const what = say`the deck's edges bear on ${length(bearing)} each of ${seam.on}`;
    const mend = say`double the strut, which gives ${length(grid.t)} a side, or glue a batten at least ${atLeast(batten)} thick to each face of it`;
    return [
      finding({
        rule: 'deck-seam-bearing',
        level: 'care',
        where: seam.id,
        what,
        figure: bearing,
        limit: LEAST_BEARING,
        mend,
      }),
    ];
  });
}

/** Flange strips that hang below the sides are knocked off when the frame is set down. */
export function flangeFindings(grid: Grid, bench: string): readonly Finding[] {
  const below = tidy(grid.strut + grid.t - grid.side);
  if (below <= 0) return [];
  const what = say`flange strips hang ${length(below)} below the sides`;
  const mend = say`make the sides at least ${atLeast(grid.strut + grid.t)}, or the struts at most ${atMost(grid.side - grid.t)}`;
  return [
    finding({ rule: 'flange-strips-below-sides', level: 'care', where: bench, what, figure: below, limit: 0, mend }),
  ];
}
