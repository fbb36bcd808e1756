import { nearest } from '../core/units/nearest.ts';
import { build } from './build.ts';
import { check, LEVELS } from './check.ts';
import { type Desk, type ExitCode, refuse } from './desk.ts';
import { dev } from './dev.ts';
import { exportBook } from './export.ts';
import { writeEntry } from './log.ts';
import { startBook } from './new.ts';
import { serve } from './serve.ts';
import { type Takes, type Words, wordsOf } from './words.ts';

type Command = {
  readonly usage: string;
  readonly does: string;
  readonly takes: Takes;
  readonly run: (desk: Desk, words: Words) => Promise<ExitCode>;
};

const none: Takes = { least: 0, most: 0, options: [] };

async function checkLine(desk: Desk, { words, options }: Words): Promise<ExitCode> {
  const { format = 'text' } = options;
  const level = LEVELS.find((one) => one === (options.level ?? 'care'));
  if (level === undefined)
    return refuse(desk, {
      what: `There is no level ${JSON.stringify(options.level)}.`,
      mend: `write --level ${LEVELS.join(', --level ')}`,
    });
  if (format === 'text' || format === 'json') return check(desk, { slug: words[0] ?? null, format, level });
  return refuse(desk, {
    what: `There is no format ${JSON.stringify(format)}.`,
    mend: 'write --format text or --format json',
  });
}

async function exportLine(desk: Desk, { words, options }: Words): Promise<ExitCode> {
  const [slug = ''] = words;
  if (options.out !== undefined) return exportBook(desk, { slug, out: options.out });
  return refuse(desk, { what: 'It is not said where to.', mend: `npm run export -- ${slug} --out FOLDER` });
}

const commands: Readonly<Record<string, Command>> = {
  build: { usage: 'build', does: 'builds the site', takes: none, run: build },
  serve: { usage: 'serve', does: 'builds the site and serves it to this machine', takes: none, run: serve },
  dev: { usage: 'dev', does: 'shows the site while you write', takes: none, run: dev },
  check: {
    usage: 'check -- [notebook] [--level halt|care|note] [--format text|json]',
    does: 'tells every mistake and every finding',
    takes: { least: 0, most: 1, options: ['format', 'level'] },
    run: checkLine,
  },
  export: {
    usage: 'export -- notebook --out FOLDER',
    does: "writes a notebook's figures, cut list and drawings",
    takes: { least: 1, most: 1, options: ['out'] },
    run: exportLine,
  },
  log: {
    usage: 'log -- notebook [--step STEP] [--words WORDS]',
    does: 'starts an entry of today with what is next filled in',
    takes: { least: 1, most: 1, options: ['step', 'words'] },
    run: (desk, { words: [slug = ''], options: { step = null, words = null } }) =>
      writeEntry(desk, { slug, step, words }),
  },
  new: {
    usage: 'new -- notebook',
    does: 'starts a notebook as a copy of window-shelf',
    takes: { least: 1, most: 1, options: [] },
    run: (desk, { words: [slug = ''] }) => startBook(desk, slug),
  },
};

function usage(): string {
  const rows = Object.values(commands).map((command) => [`  npm run ${command.usage}`, command.does] as const);
  const widest = Math.max(...rows.map(([left]) => left.length));
  return `Usage\n${rows.map(([left, does]) => `${left.padEnd(widest)}   ${does}`).join('\n')}\n`;
}

function unknownCommand(desk: Desk, name: string): ExitCode {
  const near = nearest(name, Object.keys(commands));
  desk.warn(`There is no command ${JSON.stringify(name)}.${near === null ? '' : ` Did you mean ${near}?`}\n${usage()}`);
  return 1;
}

async function runCommand(desk: Desk, line: readonly string[]): Promise<ExitCode> {
  const [name = '', ...rest] = line;
  if (name === '' || line.some((word) => word === '--help' || word === '-h' || word === 'help')) {
    desk.write(usage());
    return name === '' ? 1 : 0;
  }
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (command === undefined) return unknownCommand(desk, name);
  const taken = wordsOf(rest, command.takes);
  if (taken.ok) return command.run(desk, taken);
  desk.warn(`Usage: npm run ${command.usage}\n`);
  return refuse(desk, taken.refusal);
}

/** Runs one command line; whatever is thrown on the way is a bug of ours and the only thing shown with its stack. */
export async function run(desk: Desk, line: readonly string[]): Promise<ExitCode> {
  try {
    return await runCommand(desk, line);
  } catch (error) {
    const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
    desk.warn(`This is a bug of Fettlebook, not of your notebook:\n${stack}\n`);
    return 2;
  }
}
