import type { ProgramSettings } from '@duskwatch/core';
import { useState } from 'react';
import { useSettings } from '../../shared/settings/useSettings.ts';
import { settingsWords } from '../../text/settings.ts';
import { Field } from '../../ui/Field.tsx';
import { Setting } from '../../ui/Setting.tsx';

const w = settingsWords.program;

/** What the program is called and how its coordinator is reached, for whoever may change it. */
export function ProgramNames() {
  const { settings, mayWrite, keep } = useSettings();
  if (settings === null || !mayWrite) return null;
  return (
    <Setting title={w.title} note={w.note}>
      <Names key={`${settings.name}\n${settings.contact}`} settings={settings} keep={keep} />
    </Setting>
  );
}

function Names({ settings, keep }: { settings: ProgramSettings; keep: (change: Partial<ProgramSettings>) => void }) {
  const [name, writeName] = useState(settings.name);
  const [contact, writeContact] = useState(settings.contact ?? '');
  const empty = name.trim() === '';
  const changed = name !== settings.name || contact !== (settings.contact ?? '');
  return (
    <form
      className="program-names"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!empty && changed) keep({ name: name.trim(), contact: contact.trim() === '' ? null : contact.trim() });
      }}
    >
      <Field label={w.name} faults={empty ? [w.empty] : []}>
        {(box) => <input {...box} type="text" maxLength={120} value={name} onChange={({ target }) => writeName(target.value)} />}
      </Field>
      <Field label={w.contact} hint={w.contactHint}>
        {(box) => (
          <input {...box} type="text" maxLength={200} value={contact} onChange={({ target }) => writeContact(target.value)} />
        )}
      </Field>
      <button type="submit" className="button" aria-disabled={empty || !changed}>
        {w.save}
      </button>
    </form>
  );
}
