import { editDistance } from '../units/nearest.ts';
import { CAUTIONS } from './cautions.ts';

/** Tools of the trade by the names the cautions and the computed steps use; common practice, no source. */
const HAND_TOOLS: readonly string[] = [
  ...['band-clamp', 'brush', 'caliper', 'clamp', 'clamps', 'compass', 'coping-saw', 'countersink', 'drill', 'file'],
  ...['flush-trim-bit', 'fretsaw', 'hammer', 'handsaw', 'keyhole-saw', 'level', 'mallet', 'multimeter', 'packers'],
  ...['pencil', 'pin-pusher', 'plane', 'pliers', 'push-stick', 'rail-cutter', 'rasp', 'razor-saw', 'ruler', 'scissors'],
  ...[
    'screwdriver',
    'sealer',
    'shims',
    'spanner',
    'spirit-level',
    'square',
    'steel-rule',
    'stop-block',
    'straightedge',
  ],
  ...[
    'tape',
    'tape-measure',
    'tenon-saw',
    'track-gauge',
    'trammel',
    'tweezers',
    'weights',
    'wire-cutters',
    'wire-strippers',
  ],
];

const KNOWN: readonly string[] = [...new Set([...CAUTIONS.flatMap(({ words }) => words), ...HAND_TOOLS])].sort();

/** A name without capitals, spaces and hyphens, so that `Table Saw`, `tablesaw` and `table-saw` are one. */
function squashed(name: string): string {
  return name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

const BY_LETTERS: ReadonlyMap<string, string> = new Map(KNOWN.map((name) => [squashed(name), name]));

/** A tool by the name its cautions know it by, however it is spaced or capitalised; any other name as it was typed. */
export function toolNamed(typed: string): string {
  return BY_LETTERS.get(squashed(typed)) ?? typed;
}

/** Shorter names than this are too like each other to guess. */
const SHORTEST = 5;

/** The known tool a name was probably meant to be: at most two letters away, a swap counted as one; null where none is, or where it is known. */
export function toolMeant(typed: string): string | null {
  const letters = squashed(typed);
  if (letters.length < SHORTEST || BY_LETTERS.has(letters)) return null;
  const most = letters.length < 8 ? 1 : 2;
  const near = KNOWN.map((name) => ({ name, away: editDistance(letters, squashed(name)) })).filter(
    ({ name, away }) => away <= most && squashed(name).length >= SHORTEST,
  );
  return (
    near.reduce<(typeof near)[number] | null>((best, one) => (best === null || one.away < best.away ? one : best), null)
      ?.name ?? null
  );
}
