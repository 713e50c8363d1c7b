/**
 * `npm run check`: what a change must pass before it is shown to others. Style, types, who imports whom, and the unit
 * tests of whatever depends on what was changed since the main branch, all of it side by side. `npm test` runs all there is.
 */
import { execFileSync } from 'node:child_process';
import { runChecks } from './checks.mjs';
import { node, root, tool } from './lib.mjs';
import { install, onFittingNode } from './setup.mjs';

if (await onFittingNode()) process.exitCode = (await check()) ? 0 : 1;

async function check() {
  if (!(await install({ tests: true }))) return false;
  const failed = [];
  const tell = ({ name, passed, output }) => {
    console.log(`${passed ? 'ok    ' : 'FAILED'} ${name}`);
    if (passed) return;
    failed.push(name);
    console.log(output);
  };
  await Promise.all([runChecks(tell), testsOfTheChange().then(tell)]);
  console.log(failed.length === 0 ? 'All passed.' : `Failed: ${failed.join(', ')}`);
  return failed.length === 0;
}

async function testsOfTheChange() {
  const since = changedSince();
  const changed = git('diff', '--name-only', since) + git('ls-files', '--others', '--exclude-standard');
  // One contract holds for both databases, and SQLite keeps to it here: PostgreSQL is started where the store itself changed.
  const env = /^packages\/store\//m.test(changed) ? {} : { DUSKWATCH_SKIP_POSTGRES: '1' };
  let output = '';
  const heard = (part) => {
    output += part;
  };
  const args = ['run', '--changed', since, '--passWithNoTests', '--reporter=dot'];
  const code = await node([tool('vitest/vitest.mjs'), ...args], { env, heard });
  return { name: 'tests of what depends on the change', passed: code === 0, output };
}

/** The commit at which this branch left the main one; the last commit where there is no other branch. */
function changedSince() {
  for (const main of ['origin/main', 'main']) {
    try {
      return git('merge-base', 'HEAD', main).trim();
    } catch {
      // Not every checkout has that branch.
    }
  }
  return 'HEAD';
}

function git(...args) {
  return execFileSync('git', args, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
}
