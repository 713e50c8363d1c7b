import { styleText } from 'node:util';

/** Emphasis where a person looks; plain text into a file or a pipe, and wherever NO_COLOR is set. */
export function bold(text: string, stream: NodeJS.WriteStream = process.stdout): string {
  return stream.isTTY && !process.env.NO_COLOR ? styleText('bold', text) : text;
}

/** Whether progress may be drawn: only for a person watching. */
export const isWatched = (): boolean => process.stderr.isTTY === true;

/** Something to say about the run that is not its result. */
export function note(text: string): void {
  process.stderr.write(`${text}\n`);
}

export function print(text: string): void {
  process.stdout.write(`${text}\n`);
}

/** A reader that stops listening (`duskwatch advise | head`) ends the command quietly. */
export function endWhenNobodyReads(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
      process.exit(0);
    });
  }
}
