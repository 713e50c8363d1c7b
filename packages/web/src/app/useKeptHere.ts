import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { oldestReading } from '../api/read-at.ts';
import { sessionQuery } from '../api/session.ts';

/** After the page itself: a phone with one bar has that first. */
const QUIET_MS = 4_000;
const AGAIN_AFTER_MS = 20 * 60_000;

let lastKept: { readonly person: string; readonly atMs: number } | null = null;

/** Keeps on the device what its person needs without signal, in a quiet moment, and again when the app is taken up later. */
export function useKeptHere(): void {
  const { data: session } = useQuery(sessionQuery);
  const person = session?.kept ? null : (session?.person ?? null);
  useEffect(() => {
    if (!import.meta.env.PROD || !person || !('serviceWorker' in navigator)) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const soon = () => {
      clearTimeout(timer);
      if (document.visibilityState !== 'visible') return;
      timer = setTimeout(() => {
        if (lastKept?.person === person.id && Date.now() - lastKept.atMs < AGAIN_AFTER_MS) return;
        lastKept = { person: person.id, atMs: Date.now() };
        // Without signal, or where the browser keeps nothing, the page goes on as it is.
        void import('./keep-here.ts').then(({ keepHere }) => keepHere(person)).catch(() => undefined);
      }, QUIET_MS);
    };
    soon();
    document.addEventListener('visibilitychange', soon);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', soon);
    };
  }, [person]);
  useLateAnswers();
}

/** What came after the kept answer had been shown takes its place. */
function useLateAnswers(): void {
  const queries = useQueryClient();
  useEffect(() => {
    const worker = globalThis.navigator?.serviceWorker;
    const heard = ({ data }: MessageEvent<{ readonly came?: string } | string>) => {
      if (typeof data === 'object' && data.came)
        void queries.refetchQueries({ type: 'active', predicate: ({ state }) => oldestReading(state.data) !== null });
    };
    worker?.addEventListener('message', heard);
    return () => worker?.removeEventListener('message', heard);
  }, [queries]);
}
