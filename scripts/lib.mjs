/** What the scripts share: where the checkout is, how to run a command in it, and what a set of files hashes to. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { setPriority } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url)).replace(/[/\\]$/, '');

/** The path of a tool's own script among the installed packages. */
export const tool = (path) => join(root, 'node_modules', path);

/** Whether the module at this URL is the script that Node was told to run. */
export const isMain = (url) => process.argv[1] !== undefined && url === pathToFileURL(process.argv[1]).href;

/**
 * Runs a command in the checkout, its output going where ours goes, or to `heard`; resolves to its exit code.
 * With `behind` it takes what others leave of the processor.
 */
export function run(command, args, { env = {}, cwd = root, heard, behind = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd,
      env: { ...process.env, ...env },
      stdio: ['ignore', heard ? 'pipe' : 'inherit', heard ? 'pipe' : 'inherit'],
      shell: process.platform === 'win32' && !command.endsWith('.exe'),
    });
    if (behind && child.pid) stepBack(child.pid);
    child.stdout?.on('data', heard);
    child.stderr?.on('data', heard);
    child.on('error', () => resolve(127));
    child.on('close', (code, signal) => resolve(code ?? (signal ? 130 : 1)));
  });
}

function stepBack(pid) {
  try {
    setPriority(pid, 10);
  } catch {
    // It is over already.
  }
}

export const node = (args, options) => run(process.execPath, args, options);

/** SHA-256 over names and contents of files and of everything in folders, tests apart. */
export function hashOf(paths) {
  const hash = createHash('sha256');
  for (const path of paths) {
    for (const file of filesIn(join(root, path)))
      hash.update(relative(root, file)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}

function filesIn(path) {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return [path];
  return readdirSync(path)
    .filter((name) => name !== 'node_modules' && name !== 'dist' && !name.endsWith('.tsbuildinfo') && !/\.test\.tsx?$/.test(name))
    .sort()
    .flatMap((name) => filesIn(join(path, name)));
}
