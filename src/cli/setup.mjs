// Plain JavaScript for Node 20 with nothing installed: this is what brings the rest.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { argv, env, execPath, exit, platform, stderr, stdout, versions } from 'node:process';
import { fileURLToPath } from 'node:url';
import { installedChromium, unpackChromium, unpackedChromium } from './chromium.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const stamp = join(root, 'node_modules', '.fettlebook-lock');

/** @param {string} text */
function say(text) {
  stdout.write(`${text}\n`);
}

function lockText() {
  return readFileSync(join(root, 'package-lock.json'), 'utf8');
}

function lockHash() {
  return createHash('sha256').update(lockText()).digest('hex');
}

/** What npm itself says is installed agrees with the lock file; packages for other machines may be missing. */
function npmAgrees() {
  const record = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  const wanted = Object.entries(JSON.parse(lockText()).packages);
  return wanted.every(([path, { version, optional }]) => {
    const there = installed[path];
    return path === '' || (there === undefined ? optional === true : there.version === version);
  });
}

/** Scripts run TypeScript directly: on the Node that npm brought, or on one that is new enough itself. */
function hasNode() {
  const [major = 0, minor = 0] = versions.node.split('.').map(Number);
  const shim = platform === 'win32' ? 'node.cmd' : 'node';
  return existsSync(join(root, 'node_modules', '.bin', shim)) || major > 22 || (major === 22 && minor >= 18);
}

function isInstalled() {
  if (!hasNode()) return false;
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lockHash()) return true;
  if (!npmAgrees()) return false;
  writeFileSync(stamp, lockHash());
  return true;
}

/** npm as this script was called by it, else the one on PATH. */
function runNpm(/** @type {string[]} */ ...words) {
  const cli = env.npm_execpath;
  const options = { cwd: root, stdio: /** @type {const} */ ('inherit') };
  if (cli !== undefined) return spawnSync(env.npm_node_execpath ?? execPath, [cli, ...words], options).status;
  return spawnSync('npm', words, { ...options, shell: platform === 'win32' }).status;
}

/** @returns {boolean} */
function install() {
  if (isInstalled()) return true;
  say('Installing what the lock file lists (npm ci) ...');
  if (runNpm('ci', '--loglevel=error') !== 0) {
    stderr.write('npm ci failed; its own message is above. Nothing else was started.\n');
    return false;
  }
  if (!hasNode()) {
    stderr.write(
      `Node ${versions.node} is too old to run this and npm brought no newer one; leave optional packages on.\n`,
    );
    return false;
  }
  writeFileSync(stamp, lockHash());
  say('Installed.');
  return true;
}

async function ensureBrowser() {
  if (installedChromium(env) !== null || unpackedChromium(root) !== null) return true;
  say('No Chromium on this machine: unpacking the one in node_modules ...');
  const path = await unpackChromium(root);
  if (path !== null) say(`Browser for the tests: ${path}`);
  else stderr.write('No Chromium runs here. Install one, or name it: CHROMIUM_PATH=/path/to/chromium npm test\n');
  return path !== null;
}

const ready = install() && (!argv.includes('--browser') || (await ensureBrowser()));
exit(ready ? 0 : 1);
