import { type FormEvent, type ReactNode, useEffect, useRef, useState } from 'react';
import { peopleWords } from '../../text/people.ts';
import { type Faults, hasFault } from '../faults.ts';

/** A form that keeps what was typed, says what is wrong, and leads to the first entry that needs a look. */
export function Form(props: {
  readonly faults: Faults;
  readonly submitText: string;
  readonly submit: () => Promise<void>;
  readonly children: ReactNode;
  readonly foot?: ReactNode;
}) {
  const { faults } = props;
  const [busy, setBusy] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (hasFault(faults)) form.current?.querySelector<HTMLElement>('[aria-invalid="true"], [role="alert"]')?.focus();
  }, [faults]);
  const onSubmit = async (event: FormEvent) => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    try {
      await props.submit();
    } finally {
      setBusy(false);
    }
  };
  return (
    <form ref={form} className="entries" onSubmit={onSubmit} noValidate>
      {faults.form && (
        <p className="entries-fault" role="alert" tabIndex={-1}>
          {faults.form}
        </p>
      )}
      {props.children}
      <p className="actions">
        <button type="submit" className="button primary" aria-disabled={busy}>
          {busy ? peopleWords.entry.working : props.submitText}
        </button>
        {props.foot}
      </p>
    </form>
  );
}
