import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';
import { roundChunks } from './round-files.ts';

/** What a phone may load before the round starts: script, compressed, in bytes. */
const BUDGET = 180_000;

/** Measures the first load of the round, says it, and fails the build when it grows too large for a field with one bar. */
export function roundBudget(): Plugin {
  return {
    name: 'duskwatch-round-budget',
    apply: 'build',
    enforce: 'post',
    writeBundle(_, bundle) {
      const sizes = roundChunks(bundle).map(({ fileName, code }) => ({ fileName, bytes: gzipSync(code).length }));
      const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
      const kB = (bytes: number) => `${(bytes / 1000).toFixed(1)} kB`;
      const said = `First load of the round: ${kB(total)} of compressed script, of ${kB(BUDGET)} allowed.`;
      if (total > BUDGET) this.error(`${said}\n${sizes.map(({ fileName, bytes }) => `  ${kB(bytes)} ${fileName}`).join('\n')}`);
      console.error(said);
    },
  };
}
