/**
 * Bundles the command, so that it starts from a few files instead of hundreds. What is heavy or native stays
 * outside and is loaded only by the subcommand that needs it. `node scripts/build-cli.mjs [FOLDER]`.
 */
import { rmSync } from 'node:fs';
import { isAbsolute, join, relative } from 'node:path';
import { build } from 'esbuild';
import { root } from './lib.mjs';

const outdir = process.argv[2] ?? join(root, 'packages/cli/dist');

rmSync(outdir, { recursive: true, force: true });
const { errors } = await build({
  absWorkingDir: root,
  entryPoints: { duskwatch: 'packages/cli/src/duskwatch.ts', worker: 'packages/server/src/work/worker.ts' },
  outdir,
  outExtension: { '.js': '.mjs' },
  chunkNames: 'part-[name]-[hash]',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node22',
  plugins: [leaveOutside(/^(pg|hucre|@e965\/xlsx|fastify|@fastify\/.+|@node-rs\/.+|pdfkit|qrcode|ical-generator)$/)],
  // CommonJS packages inside the bundle ask for Node's own modules with `require`.
  banner: {
    js: "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
  },
  logLevel: 'warning',
}).catch((failure) => failure);
if (errors.length > 0) process.exitCode = 1;

/** Keeps packages out of the bundle, each named by the file that its importer would have got, wherever npm put it. */
function leaveOutside(packages) {
  const resolving = Symbol('resolving');
  return {
    name: 'leave-outside',
    setup({ onResolve, resolve }) {
      onResolve({ filter: packages }, async ({ path, pluginData, ...where }) => {
        if (pluginData === resolving) return undefined;
        const found = await resolve(path, { ...where, pluginData: resolving });
        if (found.errors.length > 0 || !isAbsolute(found.path)) return found;
        return { path: relative(outdir, found.path).replaceAll('\\', '/'), external: true };
      });
    },
  };
}
