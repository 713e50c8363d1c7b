/** Where the long sums are done. */
import { Worker } from 'node:worker_threads';
import type { Program } from '@duskwatch/core';
import { oneAtATime } from '../records/one-at-a-time.ts';
import { type ResultOf, type Task, work } from './tasks.ts';

export interface Sums {
  run<T extends Task>(task: T, program: Program): Promise<ResultOf<T>>;
  close(): Promise<void>;
}

/** In this thread, with room for other requests between the steps of a sum: for small programs, and where there is no other. */
export const sumsHere: Sums = {
  async run<T extends Task>(task: T, program: Program) {
    const steps = work(task, program);
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value as ResultOf<T>;
      await new Promise((resolve) => setImmediate(resolve));
    }
  },
  close: async () => {},
};

/**
 * In a thread of their own, one sum at a time, so that no request waits for them.
 * @param file the built `worker.ts`
 */
export function sumsApart(file: URL): Sums {
  const inTurn = oneAtATime();
  let running: Worker | null = null;
  let closed = false;
  return {
    run: <T extends Task>(task: T, program: Program) =>
      inTurn(
        () =>
          new Promise<ResultOf<T>>((resolve, reject) => {
            if (closed) return reject(new Error('the server is closing'));
            const worker = new Worker(file, { workerData: { task, program } });
            running = worker;
            worker.once('message', resolve);
            worker.once('error', reject);
            worker.once('exit', (code) => {
              running = null;
              reject(new Error(`a sum ended with ${code} and no result`));
            });
          }),
      ),
    async close() {
      closed = true;
      await running?.terminate();
    },
  };
}
