import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin, Rolldown } from 'vite';
import { phoneChunks } from './round-files.ts';

/** The letters of the app's languages; other scripts come when a page needs them. */
const FONT = /inter-latin-wght-normal/;
const WORKER = 'service-worker.js';

/** Writes into the service worker which files it is to keep, and a version that changes with any of them. */
export function serviceWorker(publicFolder: string): Plugin {
  return {
    name: 'duskwatch-service-worker',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const worker = bundle[WORKER];
        if (worker?.type !== 'chunk' || worker.imports.length > 0) this.error('the service worker must be one file of its own');
        const hash = createHash('sha256');
        const publicFiles = readdirSync(publicFolder).sort();
        for (const file of publicFiles) hash.update(readFileSync(join(publicFolder, file)));
        const document = bundle['index.html'];
        hash.update(document?.type === 'asset' ? document.source : '').update(worker.code);
        const assets = phoneAssets(bundle).sort();
        const pages = pageAssets(bundle, new Set(assets)).sort();
        // Names of assets hold a hash of what is in them.
        const version = hash
          .update([...assets, ...pages].join())
          .digest('hex')
          .slice(0, 16);
        const files = ['index.html', ...publicFiles, ...assets].map((file) => `/${file}`);
        const later = pages.map((file) => `/${file}`);
        worker.code = `const __PRECACHE__=${JSON.stringify({ version, files, later })};\n${worker.code}`;
      },
    },
  };
}

/** The map's drawn ground needs a graphics card and the network; without either the map is a plan. */
const ONLINE_ONLY = /maplibre|pmtiles|GlGround/;

/** Script and style of every other page. */
function pageAssets(bundle: Rolldown.OutputBundle, without: ReadonlySet<string>): string[] {
  return Object.values(bundle)
    .filter((file) => /^assets\/.*\.(js|css)$/.test(file.fileName) && !ONLINE_ONLY.test(file.fileName))
    .map(({ fileName }) => fileName)
    .filter((fileName) => !without.has(fileName));
}

function phoneAssets(bundle: Rolldown.OutputBundle): string[] {
  const chunks = phoneChunks(bundle);
  const styles = chunks.flatMap((chunk) => [...(chunk.viteMetadata?.importedCss ?? [])]);
  const fonts = Object.keys(bundle).filter((file) => FONT.test(file));
  return [...new Set([...chunks.map(({ fileName }) => fileName), ...styles, ...fonts])];
}
