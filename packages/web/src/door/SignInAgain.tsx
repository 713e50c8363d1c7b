import type { Person } from '@duskwatch/core';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { peopleWords } from '../text/people.ts';
import { enter } from './enter.ts';
import { PassKeyButton } from './PassKeyButton.tsx';
import { SignInForm } from './SignInForm.tsx';

/** Over the page of somebody whose session has ended. Their page stays as it was; another person begins anew. */
export function SignInAgain({ person }: { person: Person }) {
  const w = peopleWords.again;
  const queries = useQueryClient();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const signedIn = (next: Person) => {
    if (next.id === person.id) void queries.invalidateQueries();
    else enter(next);
  };
  return (
    <dialog ref={dialog} className="again" aria-labelledby="again-title" onCancel={(event) => event.preventDefault()}>
      <h2 id="again-title">{w.title}</h2>
      <p>{w.text}</p>
      <PassKeyButton signedIn={signedIn} />
      <SignInForm name={person.name} signedIn={signedIn} />
      <p className="door-foot">
        <button type="button" className="plain-button" onClick={() => location.assign('/sign-in')}>
          {w.other}
        </button>
      </p>
    </dialog>
  );
}
