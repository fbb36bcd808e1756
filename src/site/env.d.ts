/// <reference types="astro/client" />

declare module 'virtual:mdx-chapters' {
  import type { AstroComponentFactory } from 'astro/runtime/server/index.js';

  export const chapters: Readonly<Record<string, () => Promise<{ readonly default: AstroComponentFactory }>>>;
}
