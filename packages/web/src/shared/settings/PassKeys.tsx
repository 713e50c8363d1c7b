import type { PublicKeyCredentialCreationOptionsJSON } from '@simplewebauthn/browser';
import { queryOptions, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { getJson, send } from '../../api/client.ts';
import { hasPassKeys, makePassKey, PassKeyDeclined } from '../../browser/pass-keys.ts';
import { shortDay } from '../../format/day.ts';
import { localDay } from '../../format/local-day.ts';
import { peopleWords } from '../../text/people.ts';
import { Panel } from '../../ui/Panel.tsx';
import { Setting } from '../../ui/Setting.tsx';
import { PasswordEntry, TextEntry } from '../entry/entries.tsx';
import { Form } from '../entry/Form.tsx';
import { type Faults, hasFault, serverFaults } from '../faults.ts';

interface PassKey {
  readonly id: string;
  readonly name: string;
  readonly madeAt: string;
  readonly usedAt: string | null;
}

const passKeysQuery = queryOptions({
  queryKey: ['pass-keys'],
  queryFn: ({ signal }) => getJson<PassKey[]>('/api/pass-keys', signal),
});

/** The keys with which one signs in without a password, and the offer of one more. */
export function PassKeys() {
  const w = peopleWords.passKeys;
  const queries = useQueryClient();
  const { data: keys = [] } = useQuery(passKeysQuery);
  const [adding, add] = useState(false);
  const changed = () => queries.invalidateQueries({ queryKey: passKeysQuery.queryKey });
  const remove = async (id: string) => {
    await send('DELETE', `/api/pass-keys?id=${encodeURIComponent(id)}`);
    await changed();
  };
  return (
    <Setting title={w.title} note={w.note}>
      {keys.length > 0 && (
        <ul className="pass-keys">
          {keys.map(({ id, name, madeAt, usedAt }) => (
            <li key={id}>
              <span>
                <b>{name}</b>, {w.made(shortDay(localDay(madeAt)))}
                {usedAt && `, ${w.used(shortDay(localDay(usedAt)))}`}
              </span>
              <button type="button" className="plain-button" aria-label={w.removeNamed(name)} onClick={() => remove(id)}>
                {w.remove}
              </button>
            </li>
          ))}
        </ul>
      )}
      {hasPassKeys() ? (
        <p className="actions">
          <button type="button" className="button" onClick={() => add(true)}>
            {w.add}
          </button>
        </p>
      ) : (
        <p>{w.notHere}</p>
      )}
      {adding && (
        <Panel title={w.add} close={() => add(false)}>
          <NewKey
            done={async () => {
              await changed();
              add(false);
            }}
          />
        </Panel>
      )}
    </Setting>
  );
}

function NewKey({ done }: { done: () => Promise<void> }) {
  const w = peopleWords.passKeys;
  const [name, setName] = useState<string>(w.thisDevice);
  const [password, setPassword] = useState('');
  const [faults, setFaults] = useState<Faults>({});
  const submit = async () => {
    const missing = {
      name: name.trim() === '' ? w.noName : null,
      password: password === '' ? peopleWords.faults.password.missing : null,
    };
    setFaults(missing);
    if (hasFault(missing)) return;
    try {
      const options = await send<PublicKeyCredentialCreationOptionsJSON>('POST', '/api/pass-keys/options', { password });
      await send('POST', '/api/pass-keys', { name: name.trim(), response: await makePassKey(options) });
      await done();
    } catch (error) {
      setFaults(error instanceof PassKeyDeclined ? { form: w.declined } : serverFaults(error, { password: w.wrongPassword }));
    }
  };
  return (
    <Form faults={faults} submitText={w.make} submit={submit}>
      <p>{w.how}</p>
      <TextEntry label={w.name} value={name} change={setName} fault={faults.name ?? null} autoComplete="off" />
      <PasswordEntry
        label={peopleWords.entry.password}
        value={password}
        change={setPassword}
        fault={faults.password ?? null}
        autoComplete="current-password"
      />
    </Form>
  );
}
