import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: { include: ['tests/bench/**/*.bench.ts'], testTimeout: 1_800_000, fileParallelism: false },
});
