import { cp, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { printProblem } from '../reading/print.ts';
import { openBooks } from './books.ts';
import type { Desk, ExitCode, RunningSite } from './desk.ts';
import { firstPort } from './serve.ts';
import { listen } from './static-site.ts';

async function freePort(): Promise<number> {
  const server = createServer();
  const address = await listen(server, firstPort);
  await new Promise((closed) => server.close(closed));
  return Number(new URL(address).port);
}

/** The site as it runs now, and the folder of content it shows. */
type Showing = { site: RunningSite | null; readonly kept: string; readonly port: number };

/** Shows the content as it is now if it has no problems; else tells them and leaves what is shown. */
async function refresh(desk: Desk, showing: Showing): Promise<void> {
  const { problems, slugs } = await openBooks(desk.content, join(desk.root, 'content'));
  if (problems.length > 0) {
    const pages =
      showing.site === null ? 'pages come when they are mended' : 'pages show the last content without problems';
    return desk.warn(`${problems.map(printProblem).join('\n')}\n${problems.length} to mend; ${pages}.\n`);
  }
  await showing.site?.stop();
  await rm(showing.kept, { recursive: true, force: true });
  await cp(desk.content, showing.kept, { recursive: true });
  showing.site = await desk.startSite(showing.kept, showing.port);
  desk.write(`${slugs.join(', ')}: http://127.0.0.1:${showing.port}/\n`);
}

/**
 * Shows the site while it is written: problems as `check` prints them after every change, and on the pages the last
 * content without problems, from a copy kept beside the built site.
 */
export async function dev(desk: Desk): Promise<ExitCode> {
  const showing: Showing = { site: null, kept: `${desk.dist}-dev`, port: await freePort() };
  let turn: Promise<void> = Promise.resolve();
  const look = () => {
    // One look after another; a bug of ours is told and the next change is looked at all the same.
    turn = turn
      .then(() => refresh(desk, showing))
      .catch((error: Error) => desk.warn(`${error.stack ?? error.message}\n`));
    return turn;
  };
  const unwatch = desk.watch(desk.content, look);
  await look();
  await desk.untilStopped();
  unwatch();
  await turn;
  await showing.site?.stop();
  await rm(showing.kept, { recursive: true, force: true });
  return 0;
}
