import { Lexer } from 'yaml';
import { DEEPEST_VALUE } from './content-file.ts';
import { lineIndex, lineText, type Source, type Telling } from './source.ts';

/** Something the author meant otherwise, found at an offset of the source. */
export type Trap = Telling & { readonly offset: number };

/** What the YAML reader says about a place it could not read. */
export type ReadError = { readonly code: string; readonly offset: number; readonly message: string };

export const TOO_DEEP: Telling = {
  rule: 'too-deep',
  what: 'lists and maps are nested too deep here',
  mend: 'no notebook needs this; take it apart',
};

type Token = { readonly text: string; readonly offset: number };

/** The lexer's tokens that are text of the source, in order. */
export function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let offset = 0;
  for (const token of new Lexer().lex(text)) {
    // three marks of the lexer itself, which stand for nothing in the text
    if (token === '\u0002' || token === '\u001f' || token === '\u0018') continue;
    tokens.push({ text: token, offset });
    offset += token.length;
  }
  return tokens;
}

function startOfLine(source: Source, offset: number): string {
  return source.text.slice(source.lines[lineIndex(source, offset)] ?? 0, offset);
}

function commentTrap(source: Source, token: Token): Trap | null {
  if (!/^#[\p{L}\p{N}]/u.test(token.text)) return null;
  const before = startOfLine(source, token.offset);
  if (before.trim() === '') return null;
  const value = /(?:^|[:,[{-] )\s*([^:,[{]*)$/.exec(before.trimEnd())?.[1] ?? '';
  const word = /^#[^\s,\]}]+/.exec(token.text)?.[0] ?? '#';
  const inBraces = /[{[][^}\]]*$/.test(before);
  const rest = inBraces ? (/^[^,\]}]*/.exec(token.text)?.[0] ?? '') : token.text;
  return {
    offset: token.offset,
    rule: 'comment-in-text',
    what: `\` ${word}\` began a comment: the rest of this line was not read`,
    mend: `put the whole text in quotes: "${`${value.trimEnd()} ${rest}`.trim()}"; for a comment leave a space after #`,
  };
}

function lineTrap(source: Source, index: number): Trap | null {
  const line = lineText(source, index);
  const offset = source.lines[index] ?? 0;
  const tab = /^ *\t/.exec(line);
  if (tab !== null) {
    return {
      offset: offset + tab[0].length - 1,
      rule: 'tab',
      what: 'this line is indented with a tab',
      mend: 'use spaces, two a step',
    };
  }
  if (/^(?:---|\.\.\.)(?:\s|$)/.test(line)) {
    return {
      offset,
      rule: 'second-document',
      what: `\`${line.slice(0, 3)}\` ends the keys before their end`,
      mend: 'take the line away',
    };
  }
  if (line.startsWith('%')) {
    return {
      offset,
      rule: 'yaml-directive',
      what: 'a line that begins with % sets up the YAML reader',
      mend: 'take the line away',
    };
  }
  return null;
}

/** The first bracket or brace that is nested deeper than any notebook needs. */
function depthTrap(tokens: readonly Token[]): Trap | null {
  let depth = 0;
  for (const token of tokens) {
    if (token.text === '[' || token.text === '{') depth += 1;
    if (token.text === ']' || token.text === '}') depth -= 1;
    if (depth > DEEPEST_VALUE) return { offset: token.offset, ...TOO_DEEP };
  }
  return null;
}

/** Traps that YAML itself takes for good text, in the order of the text. */
export function trapsIn(source: Source, tokens: readonly Token[]): readonly Trap[] {
  const comments = tokens.flatMap((token) => commentTrap(source, token) ?? []);
  const lines = source.lines.flatMap((_, index) => lineTrap(source, index) ?? []);
  const deep = depthTrap(tokens);
  return [...comments, ...lines, ...(deep === null ? [] : [deep])].sort((a, b) => a.offset - b.offset);
}
