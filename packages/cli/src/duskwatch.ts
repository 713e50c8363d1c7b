import { commandLine } from './command-line.ts';
import { EXIT } from './outcome.ts';
import { endWhenNobodyReads } from './terminal.ts';

/** Runs one command and leaves what it tells the shell in `process.exitCode`. */
export async function main(args: readonly string[]): Promise<void> {
  endWhenNobodyReads();
  try {
    await commandLine().parseAsync(args, { from: 'user' });
  } catch (error) {
    process.exitCode = exitCodeOf(error);
  }
}

function exitCodeOf(error: unknown): number {
  if (!(error instanceof Error)) throw error;
  // Commander has said what was wrong, or shown the help that was asked for.
  if ('exitCode' in error && 'code' in error && String(error.code).startsWith('commander.')) {
    return error.exitCode === 0 ? EXIT.done : EXIT.usage;
  }
  // A file or database that cannot be used is no fault of ours; its message says what to do.
  if (error.name === 'StoreError' || 'syscall' in error) {
    process.stderr.write(`${error.message}\n`);
    return EXIT.problems;
  }
  process.stderr.write(`This is a fault in Duskwatch, not in your data:\n${error.stack ?? error.message}\n`);
  return EXIT.internal;
}
