/** Where long work is done. */
import { Worker } from 'node:worker_threads';
import type { Program } from '@duskwatch/core';
import { oneAtATime } from '../records/one-at-a-time.ts';
import { type ResultOf, stepsOf, type Task } from './tasks.ts';

export interface Work {
  /** `program` is null for a task that says itself all it is about. */
  run<T extends Task>(task: T, program: T extends { readonly kind: 'way' } ? null : Program): Promise<ResultOf<T>>;
  close(): Promise<void>;
}

/** In this thread, with room for other requests between the steps: for small programs, and where there is no other. */
export const workHere: Work = {
  async run<T extends Task>(task: T, program: Program | null) {
    const steps = stepsOf(task, program);
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value as ResultOf<T>;
      await new Promise((resolve) => setImmediate(resolve));
    }
  },
  close: async () => {},
};

/**
 * In threads of their own, so that no request waits for the work of another: sums over seasons one at a time, and beside
 * them one driving order at a time, for which somebody stands in the yard.
 * @param file the built `worker.ts`
 */
export function workInThreads(file: URL): Work {
  const lanes = { seasons: oneAtATime(), ways: oneAtATime() };
  const running = new Set<Worker>();
  let closed = false;
  return {
    run: <T extends Task>(task: T, program: Program | null) =>
      lanes[task.kind === 'way' ? 'ways' : 'seasons'](
        () =>
          new Promise<ResultOf<T>>((resolve, reject) => {
            if (closed) return reject(new Error('the server is closing'));
            const worker = new Worker(file, { workerData: { task, program } });
            running.add(worker);
            worker.once('message', resolve);
            worker.once('error', reject);
            worker.once('exit', (code) => {
              running.delete(worker);
              reject(new Error(`work ended with ${code} and no result`));
            });
          }),
      ),
    async close() {
      closed = true;
      await Promise.all([...running].map((worker) => worker.terminate()));
    },
  };
}
