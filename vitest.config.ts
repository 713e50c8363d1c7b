import { globSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

const TESTS = ['scripts/*.test.mjs', 'packages/*/src/**/*.test.{ts,tsx}', 'packages/*/test/**/*.test.ts'];
/** Whoever puts another module in the place of a real one, or loads one anew, must leave none of it to another file. */
const replacing = globSync(TESTS).filter((file) => /vi\.(mock|resetModules)\(/.test(readFileSync(file, 'utf8')));

export default defineConfig({
  test: {
    setupFiles: ['scripts/test-without-reader.ts'],
    // Vitest would leave one processor to whoever sits before the machine.
    maxWorkers: '100%',
    // For a machine that is busy with others: no test is judged by the clock.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    projects: [
      { extends: true, test: { name: 'together', include: TESTS, exclude: replacing, isolate: false } },
      { extends: true, test: { name: 'apart', include: replacing, isolate: true } },
    ],
  },
});
