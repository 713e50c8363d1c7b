import { useEffect, useRef } from 'react';
import type { Answer, Ask } from './messages.ts';

/** Asks the worker, one thing at a time; a newer question ends an older one, and the reading of a file that nobody waits for. */
export function useReader(): (ask: Ask) => Promise<Answer> {
  const worker = useRef<Worker | null>(null);
  useEffect(() => () => worker.current?.terminate(), []);
  return (ask) => {
    if (ask.ask === 'propose') {
      worker.current?.terminate();
      worker.current = new Worker(new URL('./import.worker.ts', import.meta.url), { type: 'module' });
    }
    const asked = worker.current!;
    return new Promise((resolve, reject) => {
      asked.onmessage = (event: MessageEvent<Answer>) => resolve(event.data);
      asked.onerror = (event) => reject(new Error(event.message));
      asked.postMessage(ask);
    });
  };
}
