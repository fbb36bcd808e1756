/// <reference types="astro/client" />

declare module '*.astro' {
  import type { AstroComponentFactory } from 'astro/runtime/server/index.js';

  const component: AstroComponentFactory;
  // biome-ignore lint/style/noDefaultExport: Astro's components have no other
  export default component;
}

declare module 'virtual:mdx-chapters' {
  import type { AstroComponentFactory } from 'astro/runtime/server/index.js';

  export const chapters: Readonly<Record<string, () => Promise<{ readonly default: AstroComponentFactory }>>>;
}
