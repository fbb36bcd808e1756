import type { Problem, Spot } from '../core/units/problem.ts';
import type { ContentFile } from './content-file.ts';
import { LONGEST_LINE } from './content-file.ts';

/** A stretch of a file's text and the line on which it starts, from 1. */
export type Source = {
  readonly file: string;
  readonly text: string;
  readonly firstLine: number;
  /** offsets at which lines begin */
  readonly lines: readonly number[];
};

export function sourceOf(file: string, text: string, firstLine: number): Source {
  const lines = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) lines.push(at + 1);
  return { file, text, firstLine, lines };
}

/** Index of the line that holds an offset, from 0. */
export function lineIndex(source: Source, offset: number): number {
  let low = 0;
  let high = source.lines.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((source.lines[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

export function lineText(source: Source, index: number): string {
  const start = source.lines[index] ?? source.text.length;
  const end = source.lines[index + 1];
  return source.text.slice(start, end === undefined ? source.text.length : end - 1);
}

/** Line and column of an offset, counted from 1 in the whole file. */
export function spotAt(source: Source, offset: number, path: string): Spot {
  const index = lineIndex(source, offset);
  return {
    file: source.file,
    line: source.firstLine + index,
    column: offset - (source.lines[index] ?? 0) + 1,
    path,
  };
}

export type Telling = { readonly rule: string; readonly what: string; readonly mend: string };

export function problemOn(spot: Spot, telling: Telling): Problem {
  return { ...spot, ...telling };
}

/** A problem of a whole file. */
export function fileProblem(file: string, telling: Telling): Problem {
  return problemOn({ file, line: 1, column: 1, path: '' }, telling);
}

export type Text = { readonly text: string; readonly problems: readonly Problem[] };

const NOT_READ: Readonly<Record<Exclude<ContentFile['kind'], 'file'>, readonly [string, string]>> = {
  link: ['this is a link, and links are not followed', 'put the file itself here'],
  other: ['this is neither a file nor a folder', 'take it out of the content folder'],
  'too-large': [
    'the file is too large to be read',
    'keep texts under 1 MB and photos under 60 MB; split long texts into more log entries',
  ],
  'too-many': ['the folder holds more than 20000 files', 'take out what is not part of a notebook'],
  unreadable: ['the file cannot be opened', 'check its name and its permissions'],
};

/** The problem of a file that was listed but not read, or null. */
export function unreadProblem(file: ContentFile): Problem | null {
  if (file.kind === 'file') return null;
  const [what, mend] = NOT_READ[file.kind];
  return fileProblem(file.path, { rule: `file-${file.kind}`, what, mend });
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

function lineOfBadByte(bytes: Uint8Array): number {
  let line = 1;
  let from = 0;
  for (let at = bytes.indexOf(10); at !== -1; at = bytes.indexOf(10, from)) {
    if (decoded(bytes.subarray(from, at)) === null) return line;
    line += 1;
    from = at + 1;
  }
  return line;
}

/** Control characters that no text needs; tab and line ends are told elsewhere. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\u2028\u2029]/;

function textProblem(file: string, text: string): Problem | null {
  const source = sourceOf(file, text, 1);
  const at = text.search(CONTROL);
  if (at !== -1) {
    const code = text.charCodeAt(at).toString(16).padStart(4, '0');
    const what = `there is an invisible character here (U+${code.toUpperCase()})`;
    return problemOn(spotAt(source, at, ''), {
      rule: 'control-character',
      what,
      mend: 'delete it; save the file as plain text',
    });
  }
  const long = source.lines.findIndex((start, i) => (source.lines[i + 1] ?? text.length) - start > LONGEST_LINE);
  if (long === -1) return null;
  const what = `this line is longer than ${LONGEST_LINE} characters`;
  return problemOn(spotAt(source, source.lines[long] ?? 0, ''), {
    rule: 'long-line',
    what,
    mend: 'break it into several lines',
  });
}

/** A file's text with one kind of line end and without a byte order mark, or the problem that prevents it. */
export function textOf(file: ContentFile): Text {
  const unread = unreadProblem(file);
  if (unread !== null) return { text: '', problems: [unread] };
  const raw = decoded(file.bytes);
  if (raw === null) {
    const telling = {
      rule: 'not-utf-8',
      what: 'this line is not UTF-8 text',
      mend: 'save the file with the encoding UTF-8',
    };
    const spot = { file: file.path, line: lineOfBadByte(file.bytes), column: 1, path: '' };
    return { text: '', problems: [problemOn(spot, telling)] };
  }
  const text = raw.replace(/\r\n?/g, '\n');
  const problem = textProblem(file.path, text);
  return problem === null ? { text, problems: [] } : { text: '', problems: [problem] };
}
