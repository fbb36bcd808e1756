import type { FigureUnit, Finding, Level } from '../finding.ts';
import type { Sentence } from '../units/say.ts';

type Given = {
  readonly rule: string;
  readonly level: Level;
  readonly where: string;
  readonly what: Sentence;
  readonly mend: Sentence;
  readonly source: string;
  readonly figure?: number;
  readonly limit?: number;
  readonly unit?: FigureUnit;
};

/** A finding of this chapter. */
export function found({ figure, limit, unit, ...rest }: Given): Finding {
  return {
    ...rest,
    chapter: 'scenery',
    figure: figure ?? null,
    limit: limit ?? null,
    unit: unit ?? 'mm',
    accepted: null,
  };
}

export const PRACTICE = 'common practice, no source';
