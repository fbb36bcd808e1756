import { type Browser, chromium } from 'playwright-core';
import { installedChromium, unpackChromium, unpackedChromium } from '../../src/cli/chromium.mjs';

const root = new URL('../..', import.meta.url).pathname;

/** No network of its own, no first-run pages, no sandbox (the tests may run as root). */
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A Chromium that is installed, else the one an npm package carries. */
async function executable(): Promise<string> {
  const path = installedChromium(process.env) ?? unpackedChromium(root) ?? (await unpackChromium(root));
  if (path === null) throw new Error('no Chromium runs here: set CHROMIUM_PATH to one');
  return path;
}

export async function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: await executable(), args: FLAGS });
}
