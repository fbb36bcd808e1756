import { build } from './build.ts';
import type { Desk, ExitCode } from './desk.ts';
import { listen, siteServer } from './static-site.ts';

/** Where the search for a free port begins. */
export const firstPort = 4321;

/** Builds, then serves the site to this machine until it is stopped. */
export async function serve(desk: Desk): Promise<ExitCode> {
  const built = await build(desk);
  if (built !== 0) return built;
  const server = siteServer(desk.dist);
  const address = await listen(server, firstPort);
  desk.write(`Open ${address}   (Ctrl+C stops)\n`);
  await desk.untilStopped();
  server.closeAllConnections();
  server.close();
  return 0;
}
