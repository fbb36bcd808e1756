import { existsSync, readdirSync } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { pid } from 'node:process';
import { printProblem } from '../reading/print.ts';
import { openBooks } from './books.ts';
import { type Desk, type ExitCode, refuse } from './desk.ts';

/** Whether `inner` is `outer` or lies inside it. */
function holds(outer: string, inner: string): boolean {
  const way = relative(resolve(outer), resolve(inner));
  return way === '' || !(way.startsWith('..') || resolve(way) === way);
}

/** Building replaces the whole folder, so it has to be a site that was built before, or nothing. */
function mayReplace({ dist, content, root }: Desk): boolean {
  if (holds(dist, content) || holds(dist, root)) return false;
  if (!existsSync(dist)) return true;
  const there = readdirSync(dist);
  return there.length === 0 || there.includes('index.html');
}

/** The new site takes the old one's place; if that fails half way the old one comes back. */
async function replace(dist: string, fresh: string): Promise<void> {
  const last = `${fresh}-last`;
  const had = existsSync(dist);
  if (had) await rename(dist, last);
  try {
    await rename(fresh, dist);
  } catch (error) {
    if (had) await rename(last, dist);
    throw error;
  }
  await rm(last, { recursive: true, force: true });
}

/** Builds the site beside the last one and puts it in its place only when it is whole. */
export async function build(desk: Desk): Promise<ExitCode> {
  const { dist, content } = desk;
  if (!mayReplace(desk)) {
    return refuse(desk, {
      what: `${dist} holds something else than a built site.`,
      mend: 'name another folder in FETTLEBOOK_OUT',
    });
  }
  const { problems, notebooks } = await openBooks(content, join(desk.root, 'content'));
  if (problems.length > 0) {
    desk.warn(`${problems.map(printProblem).join('\n')}\n`);
    desk.warn(`Nothing was built: ${problems.length} to mend. The last site is as it was.\n`);
    return 1;
  }
  const fresh = `${dist}-${pid}`;
  try {
    await desk.makeSite(content, fresh);
    await replace(dist, fresh);
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
  const halts = notebooks.flatMap(({ findings }) => findings.filter(({ level }) => level === 'halt'));
  const halted = halts.length === 0 ? '' : ` Open halts: ${halts.length}; see npm run check.`;
  desk.write(`Built ${notebooks.map(({ slug }) => slug).join(', ')} into ${dist}.${halted}\n`);
  return 0;
}
