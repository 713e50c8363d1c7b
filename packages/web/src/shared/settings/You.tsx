import { useQuery, useQueryClient } from '@tanstack/react-query';
import { send } from '../../api/client.ts';
import { forgetSession, sessionQuery } from '../../api/session.ts';
import { peopleWords } from '../../text/people.ts';
import { Setting } from '../../ui/Setting.tsx';
import { useDesk } from '../record/desk.ts';
import { ChangePassword } from './ChangePassword.tsx';
import { PassKeys } from './PassKeys.tsx';
import { Sessions } from './Sessions.tsx';

/** Who is signed in here, and the ways out. */
export function You() {
  const w = peopleWords.you;
  const queries = useQueryClient();
  const { data: session } = useQuery(sessionQuery);
  const waiting = useDesk().status?.pending ?? 0;
  if (!session?.person) return null;
  if (session.mode === 'single-user')
    return (
      <Setting title={w.title}>
        <p>{w.single}</p>
      </Setting>
    );
  const { name, role, farms } = session.person;
  const leave = async (path: '/api/session' | '/api/sessions') => {
    await send('DELETE', path);
    forgetSession();
    queries.clear();
    location.assign('/sign-in');
  };
  return (
    <>
      <Setting title={w.title} note={w.everywhereText}>
        <p>
          <b>{name}</b>. {w.as(peopleWords.roles[role].name)}. {farms.join(', ')}
        </p>
        <Sessions />
        {waiting > 0 && <p className="entries-fault">{w.unsent(waiting)}</p>}
        <p className="actions">
          <button type="button" className="button" onClick={() => leave('/api/session')}>
            {w.signOut}
          </button>
          <button type="button" className="button" onClick={() => leave('/api/sessions')}>
            {w.everywhere}
          </button>
          <ChangePassword name={name} />
        </p>
      </Setting>
      <PassKeys />
    </>
  );
}
