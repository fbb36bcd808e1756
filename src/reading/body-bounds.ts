import type { Problem } from '../core/units/problem.ts';
import { lineText, problemOn, type Source, spotAt, type Telling } from './source.ts';

/** Marks that a Markdown reader has to weigh against each other; far above what prose needs. */
const MOST_MARKS = 20_000;
const MOST_MARKS_A_PARAGRAPH = 4_000;
const MOST_BLOCKS = 200;
const DEEPEST_QUOTE = 12;
const DEEPEST_INDENT = 60;

function marksIn(line: string): number {
  return line.length - line.replace(/[*_[\]`~:<&!\\]/g, '').length;
}

/** Quotes and list items begun on one line. */
function nesting(line: string): number {
  const start = /^(?:\s*(?:>|[-*+](?=\s)|\d{1,9}[.)](?=\s)))*/.exec(line)?.[0] ?? '';
  return (start.match(/>|[-*+]|\d+[.)]/g) ?? []).length;
}

const TOO_MANY: Telling = {
  rule: 'too-many-marks',
  what: 'there are more marks of Markdown here than any text needs',
  mend: 'take this text apart',
};
const TOO_DEEP: Telling = {
  rule: 'too-deep',
  what: 'lists or quotes are nested too deep here',
  mend: 'take this text apart',
};

/** Texts that a Markdown reader would need more than linear time for are told before it reads them. */
export function bodyBounds(source: Source): Problem | null {
  let [all, paragraph, blocks] = [0, 0, 0];
  for (let index = 0; index < source.lines.length; index += 1) {
    const line = lineText(source, index);
    const spot = () => spotAt(source, source.lines[index] ?? 0, '');
    const marks = marksIn(line);
    paragraph = line.trim() === '' ? 0 : paragraph + marks;
    all += marks;
    blocks += /^[\s>]*:::/.test(line) ? 1 : 0;
    if (all > MOST_MARKS || paragraph > MOST_MARKS_A_PARAGRAPH || blocks > MOST_BLOCKS)
      return problemOn(spot(), TOO_MANY);
    const indent = line.length - line.trimStart().length;
    if (nesting(line) > DEEPEST_QUOTE || (indent > DEEPEST_INDENT && nesting(line) > 0))
      return problemOn(spot(), TOO_DEEP);
  }
  return null;
}
