import type { Person } from '@duskwatch/core';
import { useState } from 'react';
import { send } from '../api/client.ts';
import type { Session } from '../api/session.ts';
import { PasswordEntry, TextEntry } from '../shared/entry/entries.tsx';
import { Form } from '../shared/entry/Form.tsx';
import { type Faults, hasFault, serverFaults } from '../shared/faults.ts';
import { peopleWords } from '../text/people.ts';

/** Name and password. `signedIn` gets whoever they belong to. */
export function SignInForm({ name: known = '', signedIn }: { name?: string; signedIn: (person: Person) => void }) {
  const w = peopleWords;
  const [name, setName] = useState(known);
  const [password, setPassword] = useState('');
  const [faults, setFaults] = useState<Faults>({});
  const submit = async () => {
    const missing = {
      name: name.trim() === '' ? w.faults.name.missing : null,
      password: password === '' ? w.faults.password.missing : null,
    };
    setFaults(missing);
    if (hasFault(missing)) return;
    try {
      const { person } = await send<Session>('POST', '/api/session', { name, password });
      signedIn(person!);
    } catch (error) {
      setFaults(serverFaults(error, { form: w.faults.wrong }));
    }
  };
  return (
    <Form faults={faults} submitText={w.signIn.submit} submit={submit}>
      <TextEntry label={w.entry.name} value={name} change={setName} fault={faults.name ?? null} autoComplete="username" />
      <PasswordEntry
        label={w.entry.password}
        value={password}
        change={setPassword}
        fault={faults.password ?? null}
        autoComplete="current-password"
      />
    </Form>
  );
}
