/**
 * `npm run check`: what a change must pass before it is shown to others. Style, types, who imports whom, and the unit
 * tests of whatever depends on what was changed since the main branch. `npm test` runs all there is.
 */
import { execFileSync } from 'node:child_process';
import { runChecks } from './checks.mjs';
import { node, root, tool } from './lib.mjs';
import { install, onFittingNode } from './setup.mjs';

if (await onFittingNode()) process.exitCode = (await check()) ? 0 : 1;

async function check() {
  if (!(await install({ tests: true }))) return false;
  const failed = [];
  await runChecks(({ name, passed, output }) => {
    console.log(`${passed ? 'ok    ' : 'FAILED'} ${name}`);
    if (passed) return;
    failed.push(name);
    console.log(output);
  });
  const tests = ['run', '--changed', changedSince(), '--passWithNoTests', '--reporter=dot'];
  if ((await node([tool('vitest/vitest.mjs'), ...tests])) !== 0) failed.push('tests of what depends on the change');
  console.log(failed.length === 0 ? 'All passed.' : `Failed: ${failed.join(', ')}`);
  return failed.length === 0;
}

/** The commit at which this branch left the main one; the last commit where there is no other branch. */
function changedSince() {
  for (const main of ['origin/main', 'main']) {
    try {
      return execFileSync('git', ['merge-base', 'HEAD', main], {
        cwd: root,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'ignore'],
      }).trim();
    } catch {
      // Not every checkout has that branch.
    }
  }
  return 'HEAD';
}
