import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { problemsOf } from './problems-of.ts';

const HEAD = '---\ntitle: Trap\nshow: mm\nscale: N\nmakers: [nobody]\nlicence: CC-BY-4.0\n---\n';
const ENTRY = '---\ndate: 2026-01-01\nchapter: benchwork\n---\n';
const entry = (yaml: string, body = '') => `---\ndate: 2026-01-01\nchapter: benchwork\n${yaml}\n---\n${body}`;
const bombs = Array.from(
  { length: 9 },
  (_, i) => `a${i}: &a${i} [${'*a'.concat(String(i - 1), ', ').repeat(9)}x]`,
).join('\n');
const N = 'notebooks/trap';

/** Each input by its path, and a word that the problem told of it has; null for one that is harmless. */
const inputs: readonly (readonly [path: string, text: string | Uint8Array, told: string | null])[] = [
  [`${N}/log/2026-01-01-bomb.md`, entry(bombs), 'names a value'],
  [`${N}/log/2026-01-01-flow.md`, entry(`done: ${'['.repeat(100_000)}`), 'longer than'],
  [`${N}/log/2026-01-01-lines.md`, entry(`done: ${'[\n'.repeat(90_000)}`), 'nested too deep'],
  [
    `${N}/log/2026-01-01-steps.md`,
    entry(Array.from({ length: 600 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')),
    'nested too deep',
  ],
  [
    `${N}/log/2026-01-01-keys.md`,
    entry(Array.from({ length: 15_000 }, (_, i) => `k${i}: 1`).join('\n')),
    'is not a key',
  ],
  [`${N}/log/2026-01-01-one-key.md`, entry('people: 1\n'.repeat(15_000)), 'written twice'],
  [`${N}/log/2026-01-01-tag.md`, entry('people: !!js/function "x"'), 'tag'],
  [`${N}/log/2026-01-01-merge.md`, entry('<<: { date: 1 }'), 'merge'],
  [`${N}/log/2026-01-01-proto.md`, entry('__proto__: { polluted: 1 }'), 'cannot be used as a name'],
  [`${N}/log/2026-01-01-nul.md`, `${ENTRY}a\u0000b`, 'invisible character'],
  [`${N}/log/2026-01-01-escape.md`, `${ENTRY}\u001b[2J`, 'invisible character'],
  [`${N}/log/2026-01-01-bytes.md`, new Uint8Array([45, 45, 45, 10, 255, 254, 10]), 'not UTF-8'],
  [`${N}/log/2026-01-01-empty.md`, '', 'empty'],
  [`${N}/log/2026-01-01-open.md`, '---\ndate: 2026-01-01\n', 'never ends'],
  [`${N}/log/2026-01-01-none.md`, 'words\n', 'does not begin'],
  [`${N}/log/2026-01-01-long-line.md`, `${ENTRY}${'x'.repeat(900_000)}`, 'longer than'],
  [`${N}/log/2026-01-01-stars.md`, `${ENTRY}${'**a_'.repeat(4_900)}\n`.repeat(1), 'marks'],
  [`${N}/log/2026-01-01-blocks.md`, `${ENTRY}${':::note\n'.repeat(20_000)}`, 'marks'],
  [`${N}/log/2026-01-01-quotes.md`, `${ENTRY}${'>'.repeat(3_000)} a\n`, 'nested too deep'],
  [`${N}/log/2026-01-01-lists.md`, `${ENTRY}${'- '.repeat(3_000)} a\n`, 'nested too deep'],
  [`${N}/log/2026-01-01-brackets.md`, `${ENTRY}${'[a]('.repeat(4_900)}\n`, 'marks'],
  [
    `${N}/log/2026-01-01-backticks.md`,
    `${ENTRY}${Array.from({ length: 300 }, (_, i) => '`'.repeat(i)).join('\n')}\n`,
    'marks',
  ],
  [`${N}/log/2026-01-01-number.md`, entry(`minutes: ${'9'.repeat(400)}`), '2026-01-01-number.md:4'],
  [`${N}/log/2026-01-01-sums.md`, entry(`spent: ${'('.repeat(5_000)}`), '2026-01-01-sums.md:4'],
  [`${N}/log/2026-01-01-html.md`, `${ENTRY}<script>alert(1)</script> [x](javascript:alert(1))\n`, null],
  [
    `${N}/log/2026-01-01-path.md`,
    entry(
      'photos: [ { file: ../../../etc/passwd, alt: no }, { file: "C:\\\\x.jpg", alt: no }, { file: "https://example.org/x.jpg", alt: no } ]',
    ),
    'plain name',
  ],
  [`${N}/log/2026-01-01-bom.md`, `\ufeff${ENTRY.replaceAll('\n', '\r\n')}`, null],
  [`${N}/log/2026-99-99-date.md`, ENTRY, 'no day of the calendar'],
  [`${N}/photos/drawn.svg`, '<svg onload="alert(1)"/>', 'SVG'],
  [`${N}/photos/${'p'.repeat(200)}.exe`, 'MZ', 'no photo'],
  ['notebooks/UP..per/notebook.md', HEAD, 'cannot name a notebook'],
  ['notebooks/stock/notebook.md', HEAD, 'another page'],
  ['notebooks/new\nline/notebook.md', HEAD, 'new\\u000aline'],
  ['notebooks/loose.md', HEAD, 'no part of the content'],
  ['stock/mine.yml', 'stock: []\n', 'no file of stock'],
  ['stock/mine.yaml', 'stock: [ { kind: sheet, id: birch-ply-18 } ]\n', '`name` is missing'],
  ['trains/mine.yaml', '- 1\n', 'takes a map'],
];

let folder = '';
let told = '';

function put(path: string, text: string | Uint8Array): void {
  const full = join(folder, path);
  mkdirSync(dirname(full), { recursive: true });
  writeFileSync(full, text);
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hostile-'));
  put(`${N}/notebook.md`, HEAD);
  for (const [path, text] of inputs) put(path, text);
  symlinkSync('/etc/passwd', join(folder, N, 'log/2026-01-01-link.md'));
  symlinkSync('/etc', join(folder, 'notebooks/linked'));
  symlinkSync('loop', join(folder, 'stock/loop'));
  execFileSync('mkfifo', [join(folder, N, 'log/2026-01-01-pipe.md')]);
  put(`${N}/log/2026-01-01-huge.md`, '');
  truncateSync(join(folder, N, 'log/2026-01-01-huge.md'), 10_000_000_000);
  put(`${N}/photos/huge.jpg`, '');
  truncateSync(join(folder, N, 'photos/huge.jpg'), 10_000_000_000);
  told = await problemsOf(folder);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('every hostile input is refused or harmless, and none hides another', () => {
  expect(inputs.length).toBeGreaterThanOrEqual(20);
  const wrong = inputs.filter(([path, , words]) => {
    const lines = told.split('\n').filter((line) => line.includes(path.replace('\n', '\\u000a')));
    return words === null ? lines.length > 0 : !lines.some((line) => line.includes(words));
  });
  expect(wrong.map(([path]) => path)).toEqual([]);
});

test('links, pipes and huge files are listed and not read', () => {
  for (const path of [`${N}/log/2026-01-01-link.md`, 'notebooks/linked', 'stock/loop']) {
    expect(told).toContain(`${path}:1:1  this is a link, and links are not followed`);
  }
  expect(told).toContain(`${N}/log/2026-01-01-pipe.md:1:1  this is neither a file nor a folder`);
  expect(told).toContain(`${N}/log/2026-01-01-huge.md:1:1  the file is too large`);
  expect(told).toContain(`${N}/photos/huge.jpg:1:1  the file is too large`);
  expect(told).not.toContain('root:');
});

test('no problem is told of a control character that could reach a terminal', () => {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  expect(/[\u0000-\u0009\u000b-\u001f\u007f]/.test(told)).toBe(false);
});

test('the same problems in the same order whatever order the files come in', async () => {
  const files = await loadContent(folder);
  const there = readContent(files).problems;
  expect(readContent([...files].reverse()).problems).toEqual(there);
  expect(there.length).toBeGreaterThan(30);
});
