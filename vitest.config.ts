import { globSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

const TESTS = ['scripts/*.test.mjs', 'packages/*/src/**/*.test.{ts,tsx}', 'packages/*/test/**/*.test.ts'];
/** Whoever puts another module in the place of a real one must not meet a file that has the real one already. */
const replacing = globSync(TESTS).filter((file) => readFileSync(file, 'utf8').includes('vi.mock('));

export default defineConfig({
  test: {
    setupFiles: ['scripts/test-without-reader.ts'],
    // For a machine that is busy with others: no test is judged by the clock.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    projects: [
      { extends: true, test: { name: 'together', include: TESTS, exclude: replacing, isolate: false } },
      { extends: true, test: { name: 'apart', include: replacing, isolate: true } },
    ],
  },
});
