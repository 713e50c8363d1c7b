#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { handOver } from '../../../runtime/node.mjs';

const bundle = new URL('../dist/duskwatch.mjs', import.meta.url);

if (!existsSync(bundle)) {
  console.error('duskwatch is not built yet. In the folder of the checkout, run: npm run setup');
  process.exitCode = 3;
} else if (!(await handOver())) {
  const { main } = await import(bundle);
  await main(process.argv.slice(2));
}
