import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { sessionQuery } from '../api/session.ts';
import { words } from '../text/index.ts';
import { peopleWords } from '../text/people.ts';
import { LanguageChoice } from '../ui/LanguageChoice.tsx';
import { useTitle } from '../ui/media.ts';
import { enter } from './enter.ts';
import { PassKeyButton } from './PassKeyButton.tsx';
import { SignInForm } from './SignInForm.tsx';

/** Stands at its own address, and in place of any page that needs somebody known. */
export function SignInPage() {
  const w = peopleWords.signIn;
  const { data: session } = useQuery(sessionQuery);
  useTitle(w.title);
  const here = location.pathname === '/sign-in' ? '/start' : undefined;
  return (
    <main className="page door" id="page">
      <h1>{w.title}</h1>
      {session?.person ? (
        <>
          <p>{session.mode === 'single-user' ? w.noAccounts : w.already(session.person.name)}</p>
          <p className="actions">
            <Link to="/" className="button">
              {words.failure.home}
            </Link>
          </p>
        </>
      ) : (
        <>
          <p>{w.lead}</p>
          <PassKeyButton signedIn={(person) => enter(person, here)} />
          <SignInForm signedIn={(person) => enter(person, here)} />
          <p className="door-foot">{w.forgot}</p>
          <LanguageChoice />
        </>
      )}
    </main>
  );
}
