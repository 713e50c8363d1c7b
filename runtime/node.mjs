/**
 * Which Node.js runs Duskwatch: the one at hand where package.json names its version, else one of Duskwatch's own, which
 * npm brings from its registry as this folder's lock pins it. Read by whatever Node there is, so it keeps to what old
 * ones know.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const manifest = (folder) => JSON.parse(readFileSync(join(here, folder, 'package.json'), 'utf8'));

/** Whether a version is in a range that is written as package.json's: `^22.16.0 || ^24.0.0 || >=26.0.0`. */
function inRange(range, version) {
  const [major, minor] = version.split('.').map(Number);
  return range.split('||').some((part) => {
    const [, sign, ...oldest] = /(\^|>=)(\d+)\.(\d+)/.exec(part);
    const [oldestMajor, oldestMinor] = oldest.map(Number);
    return major === oldestMajor ? minor >= oldestMinor : sign === '>=' && major > oldestMajor;
  });
}

const fits = () => inRange(manifest('..').engines.node, process.versions.node);
const SHORTFALL = `This is Node.js ${process.versions.node}; Duskwatch runs on version 22 (from 22.16), 24 or 26.`;

/** Where Duskwatch's own Node for this machine is, or would be; null where the registry has none. */
function ownNode() {
  const platform = process.platform === 'win32' ? 'win' : process.platform;
  const names = Object.keys(manifest('.').optionalDependencies);
  const name = names.find((one) => one.endsWith(`-${platform}-${process.arch}`));
  return name ? join(here, 'node_modules', name, 'bin', platform === 'win' ? 'node.exe' : 'node') : null;
}

/**
 * Sees to it that there is a Node which Duskwatch runs on. Where the one at hand is none, `install` is given this folder
 * to run `npm ci` in, and resolves to whether that went well. Resolves to false when it said why there is none.
 */
export async function bringNode(install) {
  const own = ownNode();
  if (fits() || (own && starts(own))) return true;
  if (own) {
    console.error(`${SHORTFALL} Fetching one for it alone …`);
    if (!(await install(here))) return false;
    if (starts(own)) return true;
  }
  console.error(
    `${SHORTFALL} ${own ? 'The one that npm has' : 'npm has none that'} runs on this machine. Get one from nodejs.org.`,
  );
  return false;
}

const starts = (path) => existsSync(path) && spawnSync(path, ['--version']).status === 0;

/**
 * Where the Node at hand is too old, runs the same command with Duskwatch's own instead; its exit code becomes ours.
 * Resolves to whether that was so, and nothing is left to do here.
 */
export async function handOver() {
  if (fits()) {
    withoutNotice();
    return false;
  }
  const own = ownNode();
  if (!own || !existsSync(own)) {
    console.error(`${SHORTFALL} In the folder of the checkout, run: npm run setup`);
    process.exitCode = 3;
    return true;
  }
  const env = { ...process.env, PATH: `${dirname(own)}${delimiter}${process.env.PATH ?? ''}` };
  const child = spawn(own, process.argv.slice(1), { env, stdio: 'inherit' });
  // The interrupt of a terminal reaches both of us; what is sent to one process was meant for the other.
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
    process.on(signal, () => (signal === 'SIGINT' && process.stdin.isTTY) || child.kill(signal));
  process.exitCode = await new Promise((resolve) => {
    child.on('error', () => resolve(3));
    child.on('close', (code) => resolve(code ?? 1));
  });
  return true;
}

/** Node 22 tells at every start that its SQLite is an experiment; the same code is past that in 24. */
function withoutNotice() {
  const { emitWarning } = process;
  process.emitWarning = (warning, ...details) => {
    if (!String(warning).startsWith('SQLite is an experimental feature')) emitWarning.call(process, warning, ...details);
  };
}

/** Puts Duskwatch's own Node, where it is the one that is needed, before the other for `npx` and the scripts of npm. */
export function linkNode() {
  const own = ownNode();
  // Windows lets nobody make a link without asking; there only what hands over runs.
  if (process.platform === 'win32' || !own || (fits() && process.execPath !== own)) return;
  const bin = join(here, '..', 'node_modules', '.bin');
  mkdirSync(bin, { recursive: true });
  rmSync(join(bin, 'node'), { force: true });
  symlinkSync(own, join(bin, 'node'));
}
