import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './lib.mjs';

/** A server with a program of its own, once it prints its address; `stop` takes both away. */
export async function served(port, ...options) {
  const data = mkdtempSync(join(tmpdir(), 'duskwatch-served-'));
  const args = ['packages/cli/bin/duskwatch.mjs', 'serve', '--port', String(port), '--data', data, ...options];
  const child = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  let printed = '';
  const stop = async () => {
    child.kill('SIGTERM');
    if (child.exitCode === null) await once(child, 'exit');
    rmSync(data, { recursive: true, force: true });
  };
  await new Promise((resolve, reject) => {
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}`)));
    child.stdout.on('data', (part) => {
      printed += part;
      if (printed.includes('http://')) resolve();
    });
  });
  return { address: `http://127.0.0.1:${port}`, printed: () => printed, stop };
}
