import { afterAll, beforeAll } from 'vitest';
import { builtSite } from './built-site.ts';
import { launchChromium } from './chromium.ts';
import { drawings, switches, tickBoxes } from './controls.ts';
import { barbedNotebook, builtFiles, photosAnew } from './harmless.ts';
import { entryPage, logPages } from './log.ts';
import { everyPage } from './pages.ts';
import { onPaper } from './print.ts';
import type { Stand } from './stand.ts';

// One build for all of it: a build is the slowest thing here.
const stand = {} as Stand;

beforeAll(async () => {
  [stand.site, stand.browser] = await Promise.all([builtSite(), launchChromium()]);
});

afterAll(async () => {
  await stand.browser?.close();
  await stand.site?.close();
});

barbedNotebook(stand);
photosAnew(stand);
builtFiles(stand);
switches(stand);
tickBoxes(stand);
entryPage(stand);
logPages(stand);
drawings(stand);
onPaper(stand);
everyPage(stand);
