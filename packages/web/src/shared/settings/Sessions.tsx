import { queryOptions, useQuery } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';
import { dayText } from '../../format/day.ts';
import { localDay } from '../../format/local-day.ts';
import { peopleWords } from '../../text/people.ts';

interface OwnSession {
  readonly startedAt: string;
  readonly seenAt: string;
  readonly here: boolean;
}

const sessionsQuery = queryOptions({
  queryKey: ['sessions'],
  queryFn: ({ signal }) => getJson<OwnSession[]>('/api/sessions', signal),
});

/** Where one is signed in. */
export function Sessions() {
  const w = peopleWords.you;
  const { data: sessions = [] } = useQuery(sessionsQuery);
  if (sessions.length === 0) return null;
  return (
    <ul className="sessions">
      {sessions.map(({ startedAt, seenAt, here }) => (
        <li key={`${startedAt} ${seenAt}`}>
          {here ? w.sessionHere : w.sessionElsewhere}: {w.session(dayText(localDay(startedAt)), dayText(localDay(seenAt)))}
        </li>
      ))}
    </ul>
  );
}
