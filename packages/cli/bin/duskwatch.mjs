#!/usr/bin/env node
import { existsSync } from 'node:fs';

const bundle = new URL('../dist/duskwatch.mjs', import.meta.url);

if (existsSync(bundle)) {
  const { main } = await import(bundle);
  await main(process.argv.slice(2));
} else {
  console.error('duskwatch is not built yet. In the folder of the checkout, run: npm run setup');
  process.exitCode = 3;
}
