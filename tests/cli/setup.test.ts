import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { installedChromium, unpackedChromium } from '../../src/cli/chromium.mjs';
import { freshFolder } from './desk.ts';

const lock = (version: string) =>
  JSON.stringify({
    packages: { '': {}, 'node_modules/a': { version }, 'node_modules/b': { version: '1', optional: true } },
  });

const ci = 'ci --loglevel=error\n';

/** What npm would do, written down in a file beside it: `ci` brings what the lock file lists. */
const npm = `
const fs = require('node:fs');
fs.appendFileSync('called', process.argv.slice(2).join(' ') + '\\n');
if (fs.existsSync('offline')) process.exit(1);
fs.mkdirSync('node_modules/.bin', { recursive: true });
fs.writeFileSync('node_modules/.bin/node', '');
fs.writeFileSync('node_modules/.package-lock.json', JSON.stringify({ packages: { 'node_modules/a': { version: '1' } } }));
`;

function checkout() {
  const root = freshFolder();
  mkdirSync(join(root, 'src', 'cli'), { recursive: true });
  for (const file of ['setup.mjs', 'chromium.mjs']) cpSync(join('src', 'cli', file), join(root, 'src', 'cli', file));
  writeFileSync(join(root, 'npm.cjs'), npm);
  writeFileSync(join(root, 'package-lock.json'), lock('1'));
  const setup = () => {
    const env = { ...process.env, npm_execpath: join(root, 'npm.cjs'), npm_node_execpath: process.execPath };
    const { status, stdout, stderr } = spawnSync(process.execPath, ['src/cli/setup.mjs'], {
      cwd: root,
      env,
      encoding: 'utf8',
    });
    const called = existsSync(join(root, 'called')) ? readFileSync(join(root, 'called'), 'utf8') : '';
    return { status, stdout, stderr, called };
  };
  return { root, setup };
}

test('what is missing is installed once', () => {
  const { setup } = checkout();
  expect(setup()).toMatchObject({ status: 0, called: ci, stdout: expect.stringContaining('Installed.') });
  expect(setup()).toMatchObject({ status: 0, called: ci, stdout: '' });
});

test('a changed lock file is installed', () => {
  const { root, setup } = checkout();
  setup();
  writeFileSync(join(root, 'package-lock.json'), lock('2'));
  expect(setup()).toMatchObject({ status: 0, called: `${ci}${ci}` });
});

test('what npm installed without us is taken as it is', () => {
  const { root, setup } = checkout();
  spawnSync(process.execPath, ['npm.cjs', 'install'], { cwd: root });
  expect(setup()).toMatchObject({ status: 0, called: 'install\n' });
});

test('an install that fails ends with 1 and is tried again', () => {
  const { root, setup } = checkout();
  writeFileSync(join(root, 'offline'), '');
  expect(setup()).toMatchObject({ status: 1, called: ci, stderr: expect.stringContaining('npm ci failed') });
  expect(setup()).toMatchObject({ status: 1, called: `${ci}${ci}` });
});

test('a browser is the one that was named, then the one on PATH, then the one that was unpacked', () => {
  const folder = freshFolder();
  writeFileSync(join(folder, 'chromium'), '#!/bin/sh\n');
  expect(installedChromium({ CHROMIUM_PATH: '/named', PATH: folder })).toBe('/named');
  expect(installedChromium({ PATH: folder })).not.toBe(join(folder, 'chromium'));
  chmodSync(join(folder, 'chromium'), 0o755);
  expect(installedChromium({ PATH: folder })).toBe(join(folder, 'chromium'));
  expect(unpackedChromium(folder)).toBeNull();
  mkdirSync(join(folder, 'node_modules', '.browser'), { recursive: true });
  symlinkSync(join(folder, 'chromium'), join(folder, 'node_modules', '.browser', 'run-chromium'));
  expect(unpackedChromium(folder)).toBe(join(folder, 'node_modules', '.browser', 'run-chromium'));
});
