import { emptyProgram, type ProgramSettings } from '@duskwatch/core';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';
import { sessionQuery } from '../../api/session.ts';
import { settingsWords } from '../../text/settings.ts';
import type { StoredVersion } from '../record/queries.ts';
import { useMayWrite } from '../record/useMayWrite.ts';
import { useWriteRecords } from '../record/write-records.ts';

const settingsQuery = queryOptions({
  queryKey: ['records', 'settings'],
  queryFn: async ({ signal }) => {
    const [held] = await getJson<readonly StoredVersion<'settings'>[]>('/api/records/settings', signal);
    return held ?? null;
  },
});

/** The program's settings, null to whom they are not open or while they are read, and how a part of them is changed. */
export function useSettings() {
  const { data: session } = useQuery(sessionQuery);
  const mayRead = session?.person !== null && session?.person !== undefined && session.person.role !== 'reader';
  const { data: held, isSuccess } = useQuery({ ...settingsQuery, enabled: mayRead });
  const mayWrite = useMayWrite()('settings');
  const write = useWriteRecords();
  // A program that was begun by hand has none until somebody changes them.
  const settings = held?.value ?? (isSuccess ? emptyProgram().settings : null);
  const keep = (change: Partial<ProgramSettings>) => {
    if (settings === null) return;
    void write(settingsWords.rules.saved, {
      kind: 'settings',
      value: { ...settings, ...change },
      base: held ? { revisionId: held.revisionId, recordId: held.recordId } : null,
      before: held?.value ?? null,
    });
  };
  return { settings, mayWrite, keep };
}
