import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  // its package.json names a script that Node takes for a module without exports
  resolve: { alias: { 'maxrects-packer': 'maxrects-packer/dist/maxrects-packer.mjs' } },
  test: { include: ['tests/bench/**/*.bench.ts'], testTimeout: 1_800_000, fileParallelism: false },
});
