import type { FigureUnit, Finding, Level } from '../finding.ts';
import type { Sentence } from '../units/say.ts';

export const PRACTICE = 'common practice, no source';

type Words = {
  readonly rule: string;
  readonly where: string;
  readonly what: Sentence;
  readonly figure: number | null;
  readonly limit: number | null;
  readonly mend: Sentence;
  readonly unit?: FigureUnit;
  readonly source?: string;
};

/** A finding of the benchwork; in mm and by common practice where nothing else is said. */
export function told(level: Level, { unit = 'mm', source = PRACTICE, ...words }: Words): Finding {
  return { ...words, level, unit, source, chapter: 'benchwork', accepted: null };
}
