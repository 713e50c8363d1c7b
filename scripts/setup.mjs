/**
 * Makes a checkout ready to run: the packages of the lock file installed, the command and the web app built.
 * What is already in order is left alone, so that it can run before every start.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildWhatChanged } from './build.mjs';
import { hashOf, isMain, npm, root } from './lib.mjs';

const OLDEST_NODE = [20, 19];

/** Installs and builds what is missing or out of date. Returns whether everything is in order afterwards. */
export async function setUp() {
  if (!nodeIsNewEnough()) {
    console.error(
      `Duskwatch needs Node.js ${OLDEST_NODE.join('.')} or newer; this is ${process.version}. Get it from nodejs.org.`,
    );
    return false;
  }
  return (await install()) && (await buildWhatChanged());
}

function nodeIsNewEnough() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  return major > OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor >= OLDEST_NODE[1]);
}

async function install() {
  const stampFile = join(root, 'node_modules', '.duskwatch-installed');
  // Native add-ons are compiled for one version of Node's binary interface.
  const wanted = `${hashOf(['package-lock.json'])} ${process.versions.modules} ${process.platform}-${process.arch}\n`;
  if (existsSync(stampFile)) {
    if (readFileSync(stampFile, 'utf8') === wanted) return true;
  } else if (npmInstalledTheLock()) {
    writeFileSync(stampFile, wanted);
    return true;
  }
  console.error('Installing packages (some minutes the first time: one is compiled here) …');
  const code = await npm(['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  if (code !== 0) {
    console.error('Installing failed: what npm said is above. Check the network, then run the same command again.');
    return false;
  }
  writeFileSync(stampFile, wanted);
  return true;
}

/** Somebody ran npm by hand: its own record of what it installed says whether that was this lock. */
function npmInstalledTheLock() {
  const record = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  const locked = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  return Object.entries(locked).every(
    ([path, entry]) =>
      !path.startsWith('node_modules/') ||
      entry.link ||
      (entry.optional && !installed[path]) ||
      installed[path]?.version === entry.version,
  );
}

if (isMain(import.meta.url)) {
  const ready = await setUp();
  if (ready) console.error('Ready. Try: npx duskwatch --help');
  process.exitCode = ready ? 0 : 1;
}
