import type { CutCaution } from '../core/cutting/job.ts';
import type { FigureUnit, Finding } from '../core/finding.ts';
import type { Step } from '../core/steps/step.ts';
import { lengthPair, type Pair } from './lengths.ts';

function same(words: string): Pair {
  return { mm: words, in: words };
}

/** What to mind at a cut. */
export const CUT_CAUTIONS: Readonly<Record<CutCaution, string>> = {
  'narrow-rip': 'narrow: push stick and riving knife',
  'two-people': 'two people hold it',
  'short-crosscut': 'too short to hold by hand: use the sled and a stop',
  'short-rip': 'too short for the fence: sled',
  'beyond-fence': 'further than the fence goes: mark it, and saw along a straightedge',
};

/** The unit a table's figures are in. */
export const UNIT_NAMES: Pair = { mm: 'millimetres', in: 'inches' };

/** A name as people say it: `table-saw` is a table saw. */
export function plainName(id: string): string {
  return id.replaceAll('-', ' ').replaceAll('.', ', ');
}

/** Time as people say it. Unit min. */
export function duration(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = Math.round(minutes % 60);
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** One or many, with the number. */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

const UNIT_WORDS: Readonly<Record<FigureUnit, string>> = {
  mm: 'mm',
  deg: '°',
  '%': ' %',
  N: ' N',
  kg: ' kg',
  V: ' V',
  A: ' A',
  ohm: ' Ω',
  count: '',
  min: ' min',
  month: ' months',
  money: '',
  ratio: '',
  litre: ' l',
};

/** A finding's figure or limit in both units. */
export function figureWords(value: number, unit: Finding['unit']): Pair {
  if (unit === 'mm') return lengthPair(value);
  return same(`${Number(value.toFixed(2))}${UNIT_WORDS[unit]}`);
}

/** What a step needs and who can do it, in a few words. */
export function stepFacts(step: Step): readonly string[] {
  const child = {
    away: 'children away',
    watches: 'a child may watch',
    'does with an adult': 'a child does it with an adult',
    'does alone': 'a child can do it alone',
  };
  return [
    step.people > 1 ? `${step.people} people` : 'one person',
    ...(step.minutes === null ? [] : [`about ${duration(step.minutes)}`]),
    ...(step.wait > 0 ? [`then ${duration(step.wait)} of waiting`] : []),
    { workshop: 'in the workshop', room: 'in the room', outdoors: 'outdoors' }[step.where],
    child[step.child],
  ];
}

/** A time between two rounds of upkeep. */
export function monthsWords(months: number): string {
  return counted(Number(months.toFixed(1)), 'month');
}
