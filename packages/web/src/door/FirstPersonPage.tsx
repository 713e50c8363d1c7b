import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { send } from '../api/client.ts';
import { type Session, sessionQuery } from '../api/session.ts';
import { TextEntry } from '../shared/entry/entries.tsx';
import { Form } from '../shared/entry/Form.tsx';
import { type Faults, hasFault, serverFaults } from '../shared/faults.ts';
import { language } from '../text/language.ts';
import { peopleWords } from '../text/people.ts';
import { LanguageChoice } from '../ui/LanguageChoice.tsx';
import { useTitle } from '../ui/media.ts';
import { enter } from './enter.ts';
import { IntroductionEntries, introductionFaults } from './Introduction.tsx';

/** The first start: the code from the terminal makes the first coordinator. */
export function FirstPersonPage() {
  const w = peopleWords;
  const { data: session } = useQuery(sessionQuery);
  const [code, setCode] = useState('');
  const [person, setPerson] = useState({ name: '', password: '' });
  const [faults, setFaults] = useState<Faults>({});
  useTitle(w.first.title);
  const submit = async () => {
    // The server, which knows the program's name, looks at the password again.
    const wrong = { code: code.trim() === '' ? w.faults.code.missing : null, ...introductionFaults(person, '') };
    setFaults(wrong);
    if (hasFault(wrong)) return;
    try {
      const made = await send<Session>('POST', '/api/first-person', { code: code.trim(), ...person, language });
      enter(made.person!, '/start');
    } catch (error) {
      setFaults(serverFaults(error, { code: w.faults.code.wrong }));
    }
  };
  if (session && !session.needsFirstPerson)
    return (
      <main className="page door" id="page">
        <h1>{w.first.title}</h1>
        <p>{session.mode === 'single-user' ? w.signIn.noAccounts : w.first.done}</p>
        <p className="actions">
          <Link to="/sign-in" className="button">
            {w.signIn.submit}
          </Link>
        </p>
      </main>
    );
  return (
    <main className="page door" id="page">
      <h1>{w.first.title}</h1>
      <p>{w.first.lead}</p>
      <Form faults={faults} submitText={w.first.submit} submit={submit}>
        <TextEntry
          label={w.first.code}
          hint={w.first.codeHint}
          value={code}
          change={setCode}
          fault={faults.code ?? null}
          autoComplete="one-time-code"
        />
        <IntroductionEntries value={person} change={setPerson} faults={faults} />
      </Form>
      <LanguageChoice />
    </main>
  );
}
