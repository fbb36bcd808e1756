import type { Finding } from '../finding.ts';
import type { Sentence } from '../units/say.ts';
import { PRACTICE, told } from './told.ts';

type Words = { readonly rule: string; readonly where: string; readonly mend: Sentence };

/** One note that lists what nobody wrote, with the figures used instead; none when there is nothing to tell. */
export function listedAs(assumed: readonly Sentence[], words: Words): readonly Finding[] {
  if (assumed.length === 0) return [];
  const what: Sentence = [
    'not written, so assumed: ',
    ...assumed.flatMap((one, i) => (i === 0 ? one : ['; ', ...one])),
  ];
  return [told('note', { ...words, what, figure: null, limit: null, source: PRACTICE })];
}
