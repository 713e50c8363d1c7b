/**
 * `npm run check`: what a change must pass before it is shown to others. Style, types, who imports whom, and the unit
 * tests of whatever depends on what was changed since the main branch, all of it side by side, within a minute on two
 * processors. `npm test` runs all there is.
 */
import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { runChecks } from './checks.mjs';
import { node, root, tool } from './lib.mjs';
import { install, onFittingNode } from './setup.mjs';

/** Of a change that so many test files depend on, the edges are left to `npm test`: they start servers and processes, and take half of the time. */
const MANY = 60;
const EDGES = ['server', 'cli'];

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
  const left = (await testFiles(since)) > MANY ? EDGES.filter((name) => !changed.includes(`packages/${name}/`)) : [];
  const places = ['scripts', ...readdirSync(join(root, 'packages')).map((name) => `packages/${name}`)];
  const kept = left.length > 0 ? places.filter((place) => !left.includes(place.replace('packages/', ''))) : [];
  const args = ['run', '--changed', since, '--passWithNoTests', '--reporter=dot'];
  const { code, output } = await vitest([...args, ...kept.map((place) => `${place}/`)], env);
  const name = `tests of what depends on the change${left.length > 0 ? `, but for ${left.join(' and ')}: npm test` : ''}`;
  return { name, passed: code === 0, output };
}

async function testFiles(since) {
  const { output } = await vitest(['list', '--changed', since, '--filesOnly']);
  return output.split('\n').filter((line) => /\.test\.\w+$/.test(line.trim())).length;
}

async function vitest(args, env) {
  let output = '';
  const heard = (part) => {
    output += part;
  };
  const code = await node([tool('vitest/vitest.mjs'), ...args], { env, heard });
  return { code, output };
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
