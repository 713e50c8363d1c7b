/**
 * Makes a checkout ready to run: a Node.js that Duskwatch runs on, the packages of the lock file, the command and the web
 * app built. What is already in order is left alone, so that it can run before every start.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bringNode, handOver, linkNode } from '../runtime/node.mjs';
import { buildWhatChanged } from './build.mjs';
import { hashOf, isMain, root } from './lib.mjs';
import { npmCi } from './npm-ci.mjs';

/** Whether this process may go on; where not, another did the work with a Node that fits, or there is none to be had. */
export async function onFittingNode() {
  if (await bringNode(npmCi)) return !(await handOver());
  process.exitCode = 1;
  return false;
}

/**
 * Installs and builds what is missing or out of date: what running takes, or with `tests` also what testing takes.
 * Returns whether everything is in order afterwards.
 */
export async function setUp({ tests = false } = {}) {
  return (await install({ tests })) && (await buildWhatChanged());
}

/** The packages alone. */
export async function install({ tests = false } = {}) {
  const stampFile = join(root, 'node_modules', '.duskwatch-installed');
  const lock = `${hashOf(['package-lock.json'])} ${process.platform}-${process.arch}`;
  const stamped = existsSync(stampFile) ? readFileSync(stampFile, 'utf8') : installedByHand(lock);
  if (stamped !== `${lock} all` && (tests || stamped !== `${lock} running`)) {
    console.error(`Installing what ${tests ? 'testing' : 'running'} takes …`);
    if (!(await npmCi(root, ...(tests ? [] : ['--omit=dev'])))) return false;
    writeFileSync(stampFile, `${lock} ${tests ? 'all' : 'running'}`);
  }
  linkNode();
  return true;
}

/** Somebody ran npm: its own record of what it installed says whether that was this lock, and how much of it. */
function installedByHand(lock) {
  const record = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return null;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  const locked = Object.entries(JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages);
  const isThere = ([path, entry]) =>
    !path.includes('node_modules/') ||
    entry.link ||
    (entry.optional && !installed[path]) ||
    installed[path]?.version === entry.version;
  if (locked.every(isThere)) return `${lock} all`;
  return locked.filter(([, { dev, devOptional }]) => !dev && !devOptional).every(isThere) ? `${lock} running` : null;
}

if (isMain(import.meta.url) && (await onFittingNode())) {
  const ready = await setUp();
  if (ready) console.error('Ready. Try: npx duskwatch --help');
  process.exitCode = ready ? 0 : 1;
}
