import { defineConfig } from 'vitest/config';

// A failure is told whole: the report has nothing but its message.
const chaiConfig = { truncateThreshold: 2000 };

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    // on two cores vitest would use one
    maxWorkers: '100%',
    projects: ['core', 'published', 'laws', 'reading', 'drawing', 'writing', 'cli', 'site', 'cases', 'browser'].map(
      (name) => ({
        test: { name, include: [`tests/${name}/**/*.test.ts`], testTimeout: 120_000, hookTimeout: 300_000, chaiConfig },
      }),
    ),
  },
});
