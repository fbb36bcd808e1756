// Plain JavaScript, because setup runs it before the project's own Node is there.
import { spawnSync } from 'node:child_process';
import { accessSync, chmodSync, constants, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];

const elsewhere = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** @param {string} path */
function runs(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * The Chromium that is already on this machine: CHROMIUM_PATH first, then PATH, then the usual places; null if none.
 * @param {Readonly<Record<string, string | undefined>>} env
 * @returns {string | null}
 */
export function installedChromium(env) {
  if (env.CHROMIUM_PATH) return env.CHROMIUM_PATH;
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const onPath = folders.flatMap((folder) => names.map((name) => join(folder, name)));
  return [...onPath, ...elsewhere].find(runs) ?? null;
}

/** Starts the packaged binary; the libraries and fonts that came with it serve only where the system has none. */
const wrapper = `#!/bin/sh
here=$(cd "$(dirname "$0")" && pwd)
if [ ! -e /etc/fonts/fonts.conf ]; then export FONTCONFIG_FILE="$here/fonts.conf"; fi
if ldd "$here/chromium" 2>/dev/null | grep -q 'not found'; then
  export LD_LIBRARY_PATH="$here/al2023/lib\${LD_LIBRARY_PATH:+:$LD_LIBRARY_PATH}"
fi
exec "$here/chromium" "$@"
`;

const fontSettings = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir prefix="relative">fonts/fonts</dir>
  <cachedir prefix="xdg">fontconfig</cachedir>
</fontconfig>
`;

/** @param {string} root */
function packagedPath(root) {
  return join(root, 'node_modules', '.browser', 'run-chromium');
}

/**
 * The Chromium that an npm package carries, if it was unpacked before; null if not.
 * @param {string} root the project's folder
 * @returns {string | null}
 */
export function unpackedChromium(root) {
  return existsSync(packagedPath(root)) ? packagedPath(root) : null;
}

/**
 * Unpacks the Chromium that an npm package carries (Linux on x64 only) and tells where it is; null if it does not run.
 * @param {string} root the project's folder
 * @returns {Promise<string | null>}
 */
export async function unpackChromium(root) {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  const folder = join(root, 'node_modules', '.browser');
  mkdirSync(folder, { recursive: true });
  // The package unpacks into the temporary folder and trusts whatever bears the right name there.
  process.env.TMPDIR = folder;
  const entry = createRequire(join(root, 'package.json')).resolve('@sparticuz/chromium');
  const { default: chromium, inflate } = await import(pathToFileURL(entry).href);
  const bin = join(entry, '..', '..', 'bin');
  chmodSync(await chromium.executablePath(bin), 0o755);
  await inflate(join(bin, 'al2023.tar.br'));
  writeFileSync(join(folder, 'fonts.conf'), fontSettings);
  writeFileSync(packagedPath(root), wrapper, { mode: 0o755 });
  const tried = spawnSync(packagedPath(root), ['--version'], { encoding: 'utf8' });
  return tried.status === 0 ? packagedPath(root) : null;
}
