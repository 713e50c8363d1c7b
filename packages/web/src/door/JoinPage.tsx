import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { ApiError, send } from '../api/client.ts';
import { type Session, sessionQuery } from '../api/session.ts';
import { dayText } from '../format/day.ts';
import { localDay } from '../format/local-day.ts';
import { Form } from '../shared/entry/Form.tsx';
import { type Faults, hasFault, serverFaults } from '../shared/faults.ts';
import { language } from '../text/language.ts';
import { peopleWords } from '../text/people.ts';
import { Failure } from '../ui/Failure.tsx';
import { LanguageChoice } from '../ui/LanguageChoice.tsx';
import { useTitle } from '../ui/media.ts';
import { enter } from './enter.ts';
import { IntroductionEntries, introductionFaults } from './Introduction.tsx';
import { type InvitedTo, invitationQuery } from './queries.ts';

const route = getRouteApi('/join/$token');

/** Opened with the link that a coordinator made: joins, or chooses a new password. */
export function JoinPage() {
  const w = peopleWords.join;
  const { token } = route.useParams();
  const { data: session } = useQuery(sessionQuery);
  const { data: invited, error, refetch } = useQuery(invitationQuery(token));
  useTitle(invited ? titleOf(invited) : w.reading);
  if (error instanceof ApiError && error.kind !== 'not-found' && error.status !== 409)
    return <Failure error={error} again={refetch} />;
  if (error)
    return (
      <main className="page door" id="page">
        <h1>{w.invalid}</h1>
        <p>{w.invalidText}</p>
      </main>
    );
  if (!invited) return <main className="page door" id="page" aria-busy="true" aria-label={w.reading} />;
  const { role, farms, name, expiresAt } = invited;
  return (
    <main className="page door" id="page">
      <h1>{titleOf(invited)}</h1>
      <p>
        {name === null ? w.as(peopleWords.roles[role].name) : w.again(name)} {name === null && peopleWords.roles[role].means}{' '}
        {farms.length > 0 && w.farms(farms.join(', '))}
      </p>
      {session?.mode === 'accounts' && session.person ? (
        <p className="entries-fault">{w.signedIn(session.person.name)}</p>
      ) : (
        <Joining token={token} invited={invited} />
      )}
      <p className="door-foot">
        {w.until(dayText(localDay(expiresAt)))} {name === null && w.homeScreen}
      </p>
      <LanguageChoice />
    </main>
  );
}

const titleOf = ({ name, program }: InvitedTo) => (name === null ? peopleWords.join.title(program) : peopleWords.join.titleAgain);

function Joining({ token, invited }: { token: string; invited: InvitedTo }) {
  const w = peopleWords.join;
  const known = invited.name !== null;
  const [person, setPerson] = useState({ name: invited.name ?? '', password: '' });
  const [faults, setFaults] = useState<Faults>({});
  const submit = async () => {
    const wrong = introductionFaults(person, invited.program);
    setFaults(wrong);
    if (hasFault(wrong)) return;
    try {
      const joined = await send<Session>('POST', '/api/invitations/accept', { token, ...person, language });
      enter(joined.person!, '/start');
    } catch (error) {
      if (error instanceof ApiError && error.kind === 'not-found') setFaults({ form: w.invalidText });
      else setFaults(serverFaults(error, { form: w.invalidText }));
    }
  };
  return (
    <Form faults={faults} submitText={known ? w.submitAgain : w.submit} submit={submit}>
      <IntroductionEntries value={person} change={setPerson} faults={faults} nameKnown={known} />
    </Form>
  );
}
