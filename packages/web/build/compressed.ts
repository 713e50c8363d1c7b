import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { Plugin } from 'vite';

const TEXT = /\.(m?js|css|html|svg|json|webmanifest)$/;
/** Bytes; below it there is nothing to gain. */
const WORTHWHILE = 1_000;

const packed = { br: promisify(brotliCompress), gz: promisify(gzip) };
const options = { br: { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } }, gz: { level: 9 } };

/** Puts each text of the build also compressed beside it, for the server to give out as it is. */
export function compressed(): Plugin {
  return {
    name: 'duskwatch-compressed',
    apply: 'build',
    enforce: 'post',
    async writeBundle({ dir }) {
      const files = readdirSync(dir!, { recursive: true, encoding: 'utf8' }).filter((file) => TEXT.test(file));
      for (const file of files) {
        const path = join(dir!, file);
        const bytes = readFileSync(path);
        if (bytes.length < WORTHWHILE) continue;
        writeFileSync(`${path}.br`, await packed.br(bytes, options.br));
        writeFileSync(`${path}.gz`, await packed.gz(bytes, options.gz));
      }
    },
  };
}
