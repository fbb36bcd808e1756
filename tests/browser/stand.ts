import type { Browser } from 'playwright-core';
import type { BuiltSite } from './built-site.ts';

/** The one site and the one browser that all browser tests share; filled before the first of them. */
export type Stand = { site: BuiltSite; browser: Browser };
