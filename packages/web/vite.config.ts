import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { compressed } from './build/compressed.ts';
import { fontDisplay } from './build/font-display.ts';
import { roundBudget } from './build/round-budget.ts';
import { serviceWorker } from './build/service-worker.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/**
 * What every page needs, and what every page at a desk does, in a file each: a slow machine spends more on asking for
 * fifty small files than on reading them.
 */
const TOGETHER = [
  {
    name: 'start',
    test: /node_modules\/(react|react-dom|scheduler|use-sync-external-store|@tanstack)\/|web\/src\/(api|browser|app\/(router|useKeptHere)|ui\/(Failure|media)|text\/(index|en|es|language)|shared\/(advice\/(verbs|own-fields)|bar\/places|record\/kinds)|(\w+\/)+search)\b/,
  },
  {
    name: 'desk',
    test: /node_modules\/d3-|web\/src\/(ui\/(chart|DateControl|Toasts|toast)|desk\/week\/(?!FirstSteps|OpenEvidence)\w+|app\/(DayLine|Gate|Navigation|ProgramMenu|Search|Shell|places)|shared\/record\/(queries|useMayWrite)|text\/(first|pages))\b/,
  },
];

export default defineConfig({
  root: here('.'),
  plugins: [react(), fontDisplay(), serviceWorker(here('public')), roundBudget(), compressed()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    // MapLibre, one piece by nature and asked for by the map page alone. What everybody loads first has a budget of its own.
    chunkSizeWarningLimit: 1_200,
    rolldownOptions: {
      input: { index: here('index.html'), 'service-worker': here('src/sync/service-worker.ts') },
      output: {
        codeSplitting: { groups: TOGETHER, includeDependenciesRecursively: false },
        // A worker is known by its address: a name with a hash would be another worker each time.
        entryFileNames: ({ name }) => (name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js'),
      },
    },
  },
  server: { proxy: { '/api': process.env.DUSKWATCH_API ?? 'http://localhost:4180' } },
});
