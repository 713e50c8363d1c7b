import type { ProgramSettings } from '@duskwatch/core';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';
import { sessionQuery } from '../../api/session.ts';
import type { StoredVersion } from '../../shared/record/queries.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { settingsWords } from '../../text/settings.ts';

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
  const { data: held } = useQuery({ ...settingsQuery, enabled: mayRead });
  const mayWrite = useMayWrite()('settings');
  const write = useWriteRecords();
  const keep = (change: Partial<ProgramSettings>) => {
    if (!held?.value) return;
    void write(settingsWords.rules.saved, {
      kind: 'settings',
      value: { ...held.value, ...change },
      base: { revisionId: held.revisionId, recordId: held.recordId },
      before: held.value,
    });
  };
  return { settings: held?.value ?? null, mayWrite, keep };
}
