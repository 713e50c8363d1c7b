/**
 * `npm test`: sets the checkout up, then runs every check there is, and counts them in its last line.
 * An early failure does not hide a later one: everything runs, then the failures are named together.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runChecks } from './checks.mjs';
import { findChromium } from './chromium.mjs';
import { node, tool } from './lib.mjs';
import { onFittingNode, setUp } from './setup.mjs';

const reports = mkdtempSync(join(tmpdir(), 'duskwatch-test-'));
const outcomes = [];
const BROWSER = 'the app in a browser (Playwright)';
const UNITS = 'unit and process tests (Vitest)';

if (await onFittingNode()) await testAll();

async function testAll() {
  heading('set-up');
  record('set-up', await setUp({ tests: true }));
  if (existsSync(tool('vitest/vitest.mjs'))) {
    // Browser tests wait as much as they work: what needs none runs in their gaps, and is told of at its end.
    heading(BROWSER);
    await Promise.all([suite(BROWSER, playwright), checksAndUnits()]);
  }
  rmSync(reports, { recursive: true, force: true });
  summarise();
}

async function checksAndUnits() {
  await runChecks(
    ({ name, passed, output }) => {
      if (!passed) tell(name, output);
      record(name, passed);
    },
    { behind: true },
  );
  await suite(UNITS, vitest);
}

/** A check that passes or fails as a whole. */
function record(name, passed) {
  outcomes.push({ name, passed: passed ? 1 : 0, failed: passed ? 0 : 1, skipped: 0, failures: [] });
}

/** A suite that counts its own tests. A runner that fails beyond its tests, or ran none, is itself a failure. */
async function suite(name, runSuite) {
  const { code, passed = 0, failed = 0, skipped = 0, failures = [] } = await runSuite();
  const broken = failed === 0 && (code !== 0 || passed === 0);
  outcomes.push({ name, passed, failed: broken ? 1 : failed, skipped, failures });
}

function heading(name) {
  console.log(`\n── ${name}`);
}

function tell(name, output) {
  heading(name);
  console.log(output);
}

async function vitest() {
  const file = join(reports, 'vitest.json');
  let output = '';
  const heard = (part) => {
    output += part;
  };
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const code = await node([tool('vitest/vitest.mjs'), ...args], { behind: true, heard });
  tell(UNITS, output);
  const report = readReport(file);
  if (!report) return { code };
  // A file that could not even be loaded holds no tests, yet is one failure.
  const unloaded = report.testResults.filter((result) => result.status === 'failed' && result.assertionResults.length === 0);
  const failing = report.testResults.flatMap((result) => result.assertionResults.filter((test) => test.status === 'failed'));
  return {
    code,
    passed: report.numPassedTests,
    failed: report.numFailedTests + unloaded.length,
    skipped: report.numPendingTests + report.numTodoTests,
    failures: [...unloaded.map((result) => result.name), ...failing.map((test) => test.fullName)],
  };
}

async function playwright() {
  const chromium = await findChromium();
  if (!chromium) return { code: 1 };
  const file = join(reports, 'playwright.json');
  const code = await node([tool('@playwright/test/cli.js'), 'test', '--reporter=list,json'], {
    env: { CHROMIUM_PATH: chromium, PLAYWRIGHT_JSON_OUTPUT_NAME: file, PLAYWRIGHT_JSON_OUTPUT_FILE: file },
  });
  const stats = readReport(file)?.stats;
  if (!stats) return { code };
  if (stats.flaky > 0) console.log(`${stats.flaky} browser tests passed only when tried again: they are listed above as flaky.`);
  return { code, passed: stats.expected + stats.flaky, failed: stats.unexpected, skipped: stats.skipped };
}

function readReport(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
}

function summarise() {
  const total = (key) => outcomes.reduce((sum, outcome) => sum + outcome[key], 0);
  console.log('\n── summary');
  for (const { name, passed, failed, failures } of outcomes) {
    console.log(`${failed === 0 ? 'ok    ' : 'FAILED'} ${name}: ${passed} passed, ${failed} failed`);
    for (const failure of failures) console.log(`         ${failure}`);
  }
  const skipped = total('skipped');
  process.exitCode = total('failed') === 0 ? 0 : 1;
  console.log(`${total('passed')} passed, ${total('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
}
