/** Bundles core files for Node, straight from their source: `files` are paths below packages/core/src. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

export async function fromCore(files) {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-'));
  try {
    const outfile = join(folder, 'core.mjs');
    await build({
      stdin: {
        contents: files.map((file) => `export * from './${file}.ts';`).join('\n'),
        resolveDir: fileURLToPath(new URL('../packages/core/src', import.meta.url)),
      },
      bundle: true,
      format: 'esm',
      platform: 'node',
      target: 'es2023',
      outfile,
    });
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
