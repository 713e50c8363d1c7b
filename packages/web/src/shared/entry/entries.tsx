import { useState } from 'react';
import { peopleWords } from '../../text/people.ts';
import { type BoxProps, Field } from '../../ui/Field.tsx';

interface EntryProps {
  readonly label: string;
  readonly value: string;
  readonly change: (value: string) => void;
  readonly hint?: string;
  /** What is wrong with it; null: nothing known. */
  readonly fault: string | null;
  readonly autoComplete: string;
}

/** A line to type in. */
export function TextEntry(props: EntryProps) {
  return (
    <Entry {...props}>
      {(box) => (
        <input
          {...box}
          {...typed(props)}
          type="text"
          autoCapitalize={props.autoComplete === 'one-time-code' ? 'characters' : 'words'}
          spellCheck={false}
        />
      )}
    </Entry>
  );
}

/** A password can be pasted, seen, and filled in by a password manager. */
export function PasswordEntry(props: EntryProps) {
  const w = peopleWords.entry;
  const [shown, show] = useState(false);
  return (
    <Entry {...props}>
      {(box) => (
        <span className="entry-password">
          <input
            {...box}
            {...typed(props)}
            type={shown ? 'text' : 'password'}
            autoCapitalize="none"
            autoCorrect="off"
            spellCheck={false}
          />
          <button type="button" className="button" onClick={() => show(!shown)} aria-label={shown ? w.hideLabel : w.showLabel}>
            {shown ? w.hide : w.show}
          </button>
        </span>
      )}
    </Entry>
  );
}

const Entry = ({ label, hint, fault, children }: EntryProps & { children: (box: BoxProps) => React.ReactNode }) => (
  <Field label={label} hint={hint} faults={fault === null ? [] : [fault]} className="entry">
    {children}
  </Field>
);

const typed = ({ value, change, autoComplete }: EntryProps) => ({
  value,
  autoComplete,
  onChange: (event: { currentTarget: { value: string } }) => change(event.currentTarget.value),
});
