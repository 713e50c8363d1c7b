import { useState } from 'react';
import { send } from '../../api/client.ts';
import { peopleWords } from '../../text/people.ts';
import { Panel } from '../../ui/Panel.tsx';
import { toast } from '../../ui/toast.ts';
import { PasswordEntry } from '../entry/entries.tsx';
import { Form } from '../entry/Form.tsx';
import { type Faults, hasFault, passwordTrouble, serverFaults } from '../faults.ts';

/** One's own new password: the old one first, so that a page left open is not enough. */
export function ChangePassword({ name }: { name: string }) {
  const w = peopleWords.you;
  const [asking, ask] = useState(false);
  return (
    <>
      <button type="button" className="button" onClick={() => ask(true)}>
        {w.changePassword}
      </button>
      {asking && (
        <Panel title={w.changePassword} close={() => ask(false)}>
          <NewPassword
            name={name}
            done={() => {
              ask(false);
              toast(w.passwordChanged);
            }}
          />
        </Panel>
      )}
    </>
  );
}

function NewPassword({ name, done }: { name: string; done: () => void }) {
  const w = peopleWords;
  const [old, setOld] = useState('');
  const [next, setNext] = useState('');
  const [faults, setFaults] = useState<Faults & { readonly next?: string | null }>({});
  const submit = async () => {
    const wrong = { password: old === '' ? w.faults.password.missing : null, next: passwordTrouble(next, [name]) };
    setFaults(wrong);
    if (hasFault(wrong)) return;
    try {
      await send('POST', '/api/session/password', { password: old, newPassword: next });
      done();
    } catch (error) {
      const { password, ...others } = serverFaults(error, { form: w.passKeys.wrongPassword });
      setFaults(password ? { next: password } : others);
    }
  };
  return (
    <Form faults={faults} submitText={w.you.changePassword} submit={submit}>
      <p>{w.you.passwordEnds}</p>
      <PasswordEntry
        label={w.you.oldPassword}
        value={old}
        change={setOld}
        fault={faults.password ?? null}
        autoComplete="current-password"
      />
      <PasswordEntry
        label={w.entry.newPassword}
        value={next}
        change={setNext}
        fault={faults.next ?? null}
        autoComplete="new-password"
      />
    </Form>
  );
}
