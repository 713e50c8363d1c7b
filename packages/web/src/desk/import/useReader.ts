import { useEffect, useMemo, useRef } from 'react';
import type { Answer, Ask, Progress } from './messages.ts';

export interface Reader {
  /** Resolves to null when it was stopped. */
  ask(ask: Ask, heard?: (progress: Progress) => void): Promise<Answer | null>;
  /** Ends whatever is being read; nothing of it is left. */
  stop(): void;
}

/** Asks the worker, one thing at a time; a newer file ends the reading of an older one. */
export function useReader(): Reader {
  const worker = useRef<Worker | null>(null);
  const stopped = useRef<(() => void) | null>(null);
  const reader = useMemo<Reader>(() => {
    const stop = () => {
      worker.current?.terminate();
      worker.current = null;
      stopped.current?.();
      stopped.current = null;
    };
    return {
      stop,
      ask(ask, heard) {
        if (ask.ask === 'propose') {
          stop();
          worker.current = new Worker(new URL('./import.worker.ts', import.meta.url), { type: 'module' });
        }
        const asked = worker.current;
        if (asked === null) return Promise.resolve(null);
        return new Promise((resolve, reject) => {
          stopped.current = () => resolve(null);
          asked.onmessage = ({ data }: MessageEvent<Answer | Progress>) =>
            data.is === 'progress' ? heard?.(data) : resolve(data);
          asked.onerror = (event) => reject(new Error(event.message));
          asked.postMessage(ask);
        });
      },
    };
  }, []);
  useEffect(() => reader.stop, [reader]);
  return reader;
}
