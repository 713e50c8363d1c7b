import type { Role } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { sessionQuery } from '../../api/session.ts';
import type { StoredKind } from '../../sync/types.ts';

/** What is offered to whom; the server decides for itself. */
const WRITES: Readonly<Record<Role, readonly StoredKind[] | 'all'>> = {
  coordinator: 'all',
  scout: ['checks', 'skips', 'lures', 'stages', 'samples', 'answers'],
  grower: ['treatments', 'decisions', 'samples', 'stages'],
  reader: [],
};

/** Without an answer everything is offered: a scout without signal must be able to write. */
export function useMayWrite(): (kind: StoredKind) => boolean {
  const { data } = useQuery(sessionQuery);
  const writes = data?.person ? WRITES[data.person.role] : 'all';
  return (kind) => writes === 'all' || writes.includes(kind);
}
