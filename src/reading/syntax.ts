import { lineIndex, lineText, type Source } from './source.ts';
import { type ReadError, TOO_DEEP, type Trap, tokensOf } from './traps.ts';

type Explanation = (source: Source, error: ReadError) => Trap | null;

function lineOf(
  source: Source,
  offset: number,
): { readonly index: number; readonly start: number; readonly text: string } {
  const index = lineIndex(source, offset);
  return { index, start: source.lines[index] ?? 0, text: lineText(source, index) };
}

const gluedColon: Explanation = (source, error) => {
  const line = lineOf(source, error.offset);
  const glued = /^(\s*(?:- )?)([A-Za-z][\w.-]*):([^\s:].*)$/.exec(line.text);
  if (glued === null || error.code !== 'MULTILINE_IMPLICIT_KEY') return null;
  const [, indent = '', key = '', value = ''] = glued;
  const offset = line.start + indent.length + key.length + 1;
  return {
    offset,
    rule: 'colon-space',
    what: `\`${key}:\` has no space after its colon`,
    mend: `write \`${key}: ${value}\``,
  };
};

const innerQuote: Explanation = (source, error) => {
  if (error.code !== 'UNEXPECTED_TOKEN') return null;
  const line = lineOf(source, error.offset);
  const before = line.text.slice(0, error.offset - line.start).trimEnd();
  const quote = before.at(-1);
  if (quote !== '"' && quote !== "'") return null;
  if (before.indexOf(quote) === before.length - 1) return null;
  const mend =
    quote === '"'
      ? `write \\" for a quote inside quotes, or put the whole text in single quotes: '...'`
      : `write '' for a single quote inside single quotes, or put the whole text in double quotes: "..."`;
  return {
    offset: line.start + before.length - 1,
    rule: 'quote-in-quotes',
    what: `this ${quote} ended the text in quotes before its end`,
    mend,
  };
};

const innerColon: Explanation = (source, error) => {
  if (error.code !== 'BLOCK_AS_IMPLICIT_KEY') return null;
  const line = lineOf(source, error.offset);
  const found = /^(.*?[\w-]): (.*?): (.*)$/.exec(line.text);
  if (found === null) return null;
  const [, key = '', start = '', rest = ''] = found;
  return {
    offset: line.start + key.length + 2 + start.length,
    rule: 'colon-in-text',
    what: 'a colon with a space after it made a key inside the text',
    mend: `put the whole text in quotes: "${start}: ${rest}"`,
  };
};

/** The bracket or brace that is still open at an offset. */
function openBracket(source: Source, offset: number): { readonly text: string; readonly offset: number } | undefined {
  const open: { text: string; offset: number }[] = [];
  for (const token of tokensOf(source.text)) {
    if (token.offset >= offset) break;
    if (token.text === '[' || token.text === '{') open.push(token);
    if (token.text === ']' || token.text === '}') open.pop();
  }
  return open[0];
}

const openFlow: Explanation = (source, error) => {
  if (!/^Flow (?:map|sequence)/.test(error.message)) return null;
  const open = openBracket(source, error.offset);
  if (open === undefined) return null;
  const close = open.text === '[' ? ']' : '}';
  return {
    offset: open.offset,
    rule: 'unclosed-bracket',
    what: `\`${open.text}\` is never closed`,
    mend: `write \`${close}\` at its end`,
  };
};

const openQuote: Explanation = (source, error) => {
  if (!/^Missing closing/.test(error.message)) return null;
  const last = tokensOf(source.text).findLast((token) => /^["']/.test(token.text) && token.offset < error.offset);
  if (last === undefined) return null;
  const quote = last.text.charAt(0);
  return {
    offset: last.offset,
    rule: 'unclosed-quote',
    what: `the text in quotes that begins here never ends`,
    mend: `write ${quote} at its end`,
  };
};

const strangeStart: Explanation = (_source, error) => {
  if (error.code !== 'BAD_SCALAR_START') return null;
  return {
    offset: error.offset,
    rule: 'text-start',
    what: 'a text cannot begin with @, ` or %',
    mend: 'put the whole text in quotes',
  };
};

const tooDeep: Explanation = (_source, error) => {
  if (error.code !== 'RESOURCE_EXHAUSTION') return null;
  return { offset: error.offset, ...TOO_DEEP };
};

function isKeyLine(text: string): boolean {
  return /^\s*(?:- )?[\w.-]+:(?:\s|$)/.test(text) || /^\s*- /.test(text);
}

/** The line at fault is the first one whose indent fits no line above it. */
const brokenIndent: Explanation = (source, error) => {
  const first = lineIndex(source, error.offset);
  const index = error.code === 'BLOCK_AS_IMPLICIT_KEY' || error.code === 'MULTILINE_IMPLICIT_KEY' ? first + 1 : first;
  const text = lineText(source, index);
  if (!isKeyLine(text) || !/INDENT|IMPLICIT_KEY|MISSING_CHAR/.test(error.code)) return null;
  const indent = text.length - text.trimStart().length;
  return {
    offset: (source.lines[index] ?? 0) + indent,
    rule: 'indent',
    what: `this line is indented by ${indent} spaces, which fits none of the lines above it`,
    mend: 'give all keys of one map, and all hyphens of one list, the same number of spaces',
  };
};

const EXPLANATIONS: readonly Explanation[] = [
  tooDeep,
  gluedColon,
  innerQuote,
  openFlow,
  openQuote,
  innerColon,
  strangeStart,
  brokenIndent,
];

/** What most likely went wrong where the YAML reader stopped, in the words of who wrote it. */
export function explained(source: Source, error: ReadError): Trap {
  for (const explain of EXPLANATIONS) {
    const trap = explain(source, error);
    if (trap !== null) return trap;
  }
  const sentence = error.message.charAt(0).toLowerCase() + error.message.slice(1).split('\n')[0];
  return {
    offset: error.offset,
    rule: 'yaml',
    what: `this cannot be read: ${sentence}`,
    mend: 'compare it with the lines around it; texts with : # , [ ] { } " or \' in them go in quotes',
  };
}
