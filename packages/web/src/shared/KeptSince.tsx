import { type Query, useQueryClient } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import { failureOf } from '../api/client.ts';
import { oldestReading } from '../api/read-at.ts';
import { instantText } from '../format/instant.ts';
import { offlineWords as w } from '../text/offline.ts';

/** Without signal: that what the page shows is what the device kept, and from when. Nothing while the server answers. */
export function KeptSince() {
  const ms = useKeptSince();
  return (
    <p className="kept-since" role="status">
      {ms !== null && w.since(instantText(new Date(ms).toISOString()))}
    </p>
  );
}

/** When the oldest of what the page shows was read; null: it is all as the server has just said. */
function useKeptSince(): number | null {
  const queries = useQueryClient().getQueryCache();
  return useSyncExternalStore(
    (tell) => queries.subscribe(tell),
    () => {
      const read = queries.findAll({ type: 'active' }).flatMap((query) => readMs(query) ?? []);
      return read.length === 0 ? null : Math.min(...read);
    },
  );
}

function readMs({ state: { data, error, dataUpdatedAt }, queryKey }: Query): number | null {
  // Who is signed in and the name of the program are no records.
  if (data === undefined || queryKey[0] === 'session' || queryKey[0] === 'program') return null;
  return oldestReading(data) ?? (error && failureOf(error) === 'unreachable' ? dataUpdatedAt : null);
}
