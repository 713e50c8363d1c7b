import { type ReactNode, useId, useState } from 'react';
import { peopleWords } from '../text/people.ts';

interface EntryProps {
  readonly label: string;
  readonly value: string;
  readonly change: (value: string) => void;
  readonly hint?: string;
  /** What is wrong with it; null: nothing known. */
  readonly fault: string | null;
  readonly autoComplete: string;
}

/** A labelled line to type in, with its hint, and what is wrong with it, told to every kind of reader. */
export function TextEntry(props: EntryProps) {
  const id = useId();
  return (
    <Labelled id={id} {...props}>
      <input
        {...common(id, props)}
        type="text"
        autoCapitalize={props.autoComplete === 'one-time-code' ? 'characters' : 'words'}
        spellCheck={false}
      />
    </Labelled>
  );
}

/** A password can be pasted, seen, and filled in by a password manager. */
export function PasswordEntry(props: EntryProps) {
  const id = useId();
  const w = peopleWords.entry;
  const [shown, show] = useState(false);
  return (
    <Labelled id={id} {...props}>
      <span className="entry-password">
        <input
          {...common(id, props)}
          type={shown ? 'text' : 'password'}
          autoCapitalize="none"
          autoCorrect="off"
          spellCheck={false}
        />
        <button type="button" className="button" onClick={() => show(!shown)} aria-label={shown ? w.hideLabel : w.showLabel}>
          {shown ? w.hide : w.show}
        </button>
      </span>
    </Labelled>
  );
}

const common = (id: string, { value, change, fault, hint, autoComplete }: EntryProps) =>
  ({
    id,
    value,
    autoComplete,
    onChange: (event: { currentTarget: { value: string } }) => change(event.currentTarget.value),
    'aria-invalid': fault !== null,
    'aria-describedby': [hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(' ') || undefined,
  }) as const;

function Labelled({ id, label, hint, fault, children }: EntryProps & { id: string; children: ReactNode }) {
  return (
    <div className="entry">
      <label htmlFor={id}>{label}</label>
      {hint && (
        <p className="entry-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {children}
      {fault && (
        <p className="entry-fault" id={`${id}-fault`}>
          {fault}
        </p>
      )}
    </div>
  );
}
