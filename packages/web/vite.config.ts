import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { compressed } from './build/compressed.ts';
import { roundBudget } from './build/round-budget.ts';
import { serviceWorker } from './build/service-worker.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('.'),
  plugins: [react(), serviceWorker(here('public')), roundBudget(), compressed()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: { index: here('index.html'), 'service-worker': here('src/sync/service-worker.ts') },
      output: {
        // A worker is known by its address: a name with a hash would be another worker each time.
        entryFileNames: ({ name }) => (name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js'),
      },
    },
  },
  server: { proxy: { '/api': process.env.DUSKWATCH_API ?? 'http://localhost:4180' } },
});
