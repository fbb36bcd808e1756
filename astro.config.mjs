import { unified } from '@astrojs/markdown-remark';
import mdx from '@astrojs/mdx';
import { defineConfig } from 'astro/config';
import remarkGfm from 'remark-gfm';
import { chapterFiles } from './src/site/chapter-files.ts';

const outDir = process.env.FETTLEBOOK_OUT ?? './dist';

export default defineConfig({
  srcDir: './src/site',
  publicDir: './src/site/public',
  outDir,
  ...(process.env.FETTLEBOOK_SITE ? { site: process.env.FETTLEBOOK_SITE } : {}),
  ...(process.env.FETTLEBOOK_BASE ? { base: process.env.FETTLEBOOK_BASE } : {}),
  output: 'static',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never' },
  compressHTML: true,
  devToolbar: { enabled: false },
  markdown: {
    syntaxHighlight: false,
    processor: unified({ gfm: false, smartypants: false, remarkPlugins: [remarkGfm] }),
  },
  integrations: [mdx()],
  security: {
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self' data: blob:",
        "font-src 'self'",
        "object-src 'none'",
        "base-uri 'self'",
      ],
    },
  },
  vite: { plugins: [chapterFiles()], build: { assetsInlineLimit: 0 } },
});
