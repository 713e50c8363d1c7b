/** `npm run bench [name …]`: runs the benches, each against a reference in the same run, and says which target they miss. */
import { existsSync, readdirSync } from 'node:fs';
import { onFittingNode, setUp } from '../scripts/setup.mjs';

const all = readdirSync(new URL('.', import.meta.url))
  .filter((name) => existsSync(new URL(`${name}/bench.mjs`, import.meta.url)))
  .sort();
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !all.includes(name));

if (unknown.length > 0) {
  console.error(`No bench called ${unknown.join(', ')}. There are: ${all.join(', ')}`);
  process.exitCode = 2;
} else if (await onFittingNode()) {
  if (await setUp({ tests: true })) await runBenches(wanted.length > 0 ? wanted : all);
  else process.exitCode = 1;
}

async function runBenches(names) {
  for (const name of names) {
    console.log(`\n── ${name}`);
    const { run } = await import(`./${name}/bench.mjs`);
    for (const result of [await run()].flat()) report(result);
  }
}

/** A bench without its reference (no compiler at hand, say) is told, and is neither met nor missed. */
function report({
  name,
  milliseconds,
  referenceMilliseconds,
  ratio,
  target,
  met = ratio === null ? null : ratio <= target,
  note,
}) {
  console.log(name);
  console.log(`  Duskwatch  ${milliseconds.toFixed(1)} ms`);
  if (ratio !== null) console.log(`  reference  ${referenceMilliseconds.toFixed(1)} ms, ratio ${ratio.toFixed(2)}`);
  if (note) console.log(`  ${note}`);
  console.log(met === null ? '  no reference here: not judged' : met ? '  target met' : '  TARGET MISSED');
  if (met === false) process.exitCode = 1;
}
