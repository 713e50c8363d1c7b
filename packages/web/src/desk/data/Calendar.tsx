import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { getJson, send } from '../../api/client.ts';
import { sessionQuery } from '../../api/session.ts';
import { copyText } from '../../browser/clipboard.ts';
import { longDay } from '../../format/day.ts';
import { settingsWords } from '../../text/settings.ts';
import { Field } from '../../ui/Field.tsx';
import { NOT_YET, Setting } from '../../ui/Setting.tsx';

interface Feed {
  readonly madeAt: string | null;
}

/** One's own calendar address: made, shown once, taken back. */
export function Calendar() {
  const w = settingsWords.calendar;
  const queries = useQueryClient();
  const { data: session } = useQuery(sessionQuery);
  const mayHave = session?.person !== null && session?.person !== undefined && session.person.role !== 'reader';
  const { data: feed } = useQuery({
    queryKey: ['calendar'],
    queryFn: ({ signal }) => getJson<Feed>('/api/calendar', signal),
    enabled: mayHave,
  });
  const [address, show] = useState<string | null>(null);
  const [said, say] = useState('');
  if (!mayHave) return null;
  const attempt = async (what: () => Promise<string | null>) => {
    try {
      show(await what());
      say('');
    } catch {
      say(w.failed);
    }
    await queries.invalidateQueries({ queryKey: ['calendar'] });
  };
  const make = () => attempt(async () => location.origin + (await send<{ path: string }>('POST', '/api/calendar')).path);
  const revoke = () =>
    attempt(async () => {
      await send('DELETE', '/api/calendar');
      return null;
    });
  return (
    <Setting title={w.title} note={w.note}>
      <p>{w.text}</p>
      {address !== null && (
        <div className="calendar-address">
          <Field label={w.address}>
            {(box) => (
              <input {...box} type="text" readOnly value={address} onFocus={(event) => event.currentTarget.select()} />
            )}
          </Field>
          <button type="button" className="button" onClick={async () => say((await copyText(address)) ? w.copied : w.copyFailed)}>
            {w.copy}
          </button>
        </div>
      )}
      <p>{feed ? (feed.madeAt === null ? w.none : w.since(longDay(feed.madeAt.slice(0, 10)))) : NOT_YET}</p>
      <p className="actions">
        <button type="button" className="button" disabled={!feed} onClick={() => void make()}>
          {feed && feed.madeAt !== null ? w.another : w.make}
        </button>
        {feed && feed.madeAt !== null && (
          <button type="button" className="button" onClick={() => void revoke()}>
            {w.revoke}
          </button>
        )}
        <output className="said">{said}</output>
      </p>
    </Setting>
  );
}
