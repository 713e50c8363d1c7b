import type { Person } from '@duskwatch/core';
import type { PublicKeyCredentialRequestOptionsJSON } from '@simplewebauthn/browser';
import { useState } from 'react';
import { send } from '../api/client.ts';
import type { Session } from '../api/session.ts';
import { findPassKey, hasPassKeys, PassKeyDeclined } from '../browser/pass-keys.ts';
import { serverFaults } from '../shared/faults.ts';
import { peopleWords } from '../text/people.ts';

/** Signs in with a key that this device keeps, where a browser can. */
export function PassKeyButton({ signedIn }: { signedIn: (person: Person) => void }) {
  const w = peopleWords.passKeys;
  const [fault, setFault] = useState<string | null>(null);
  if (!hasPassKeys()) return null;
  const signIn = async () => {
    setFault(null);
    try {
      const options = await send<PublicKeyCredentialRequestOptionsJSON>('POST', '/api/session/pass-key-options', {});
      const { person } = await send<Session>('POST', '/api/session/pass-key', await findPassKey(options));
      signedIn(person!);
    } catch (error) {
      setFault(error instanceof PassKeyDeclined ? w.declined : (serverFaults(error, { form: w.unknown }).form ?? w.unknown));
    }
  };
  return (
    <div className="door-key">
      {fault && (
        <p className="entries-fault" role="alert">
          {fault}
        </p>
      )}
      <button type="button" className="button" onClick={signIn}>
        {w.signIn}
      </button>
    </div>
  );
}
