/** Run as a process of its own, to be killed: imports checks, says how far it is, and halts where it is told to. */
import { writeSync } from 'node:fs';
import { openStore } from '../open.ts';
import { check } from './samples.ts';

const [file, count, haltAt] = process.argv.slice(2) as [string, string, string];
const halt = (): void => void Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);

const checks = Array.from({ length: Number(count) }, (_, n) =>
  check(n % 9, { trapId: `t-${n % 400}`, visit: 1 + (Math.floor(n / 400) % 99), note: 'a long note '.repeat(20) }),
);
async function main(): Promise<void> {
  const store = await openStore(file);
  await store.importProgram(
    { checks },
    {
      author: 'Ida',
      at: '2026-07-14T21:00:00Z',
      onProgress: ({ done }) => {
        writeSync(1, `${done}\n`);
        if (done >= Number(haltAt)) halt();
      },
    },
  );
  writeSync(1, 'committed\n');
  halt();
}

void main();
