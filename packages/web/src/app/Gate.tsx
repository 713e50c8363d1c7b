import type { Person } from '@duskwatch/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { lazyRouteComponent, Outlet, useLocation } from '@tanstack/react-router';
import { type ReactNode, Suspense, useEffect, useState } from 'react';
import { type Session, sessionQuery } from '../api/session.ts';
import { desk, useDesk } from '../shared/record/desk.ts';

// Most visits are of people who are signed in.
const FirstPersonPage = lazyRouteComponent(() => import('../door/FirstPersonPage.tsx'), 'FirstPersonPage');
const SignInAgain = lazyRouteComponent(() => import('../door/SignInAgain.tsx'), 'SignInAgain');
const SignInPage = lazyRouteComponent(() => import('../door/SignInPage.tsx'), 'SignInPage');

/** Open to people who have not signed in. */
const OPEN = /^\/(sign-in|first|join\/.*)$/;

/**
 * The page, for whoever may see it. A session that ends in the middle of work leaves the page, and what was typed
 * into it, standing behind the question for a name and a password.
 */
export function Gate() {
  const { data: session, fetchStatus, failureCount } = useQuery(sessionQuery);
  // Without an answer, as in a field without signal, the page shows what this machine has kept.
  const asking = !session && fetchStatus === 'fetching' && failureCount === 0;
  const open = useLocation({ select: ({ pathname }) => OPEN.test(pathname) });
  const [worked, setWorked] = useState<Person | null>(null);
  useSignedOutWrites(session);
  const person = session?.person ?? null;
  if (person && person.id !== worked?.id) setWorked(person);

  if (asking && !open) return <Waiting />;
  if (open || !session || person) return <Outlet />;
  if (session.needsFirstPerson) return <AtTheDoor page={<FirstPersonPage />} />;
  if (!worked) return <AtTheDoor page={<SignInPage />} />;
  return (
    <>
      <Outlet />
      <Suspense>
        <SignInAgain person={worked} />
      </Suspense>
    </>
  );
}

const Waiting = () => <main className="page" id="page" aria-busy="true" />;

const AtTheDoor = ({ page }: { page: ReactNode }) => <Suspense fallback={<Waiting />}>{page}</Suspense>;

/** Records that could not be sent for want of a session tell that it has ended, and go on their way with the next one. */
function useSignedOutWrites(session: Session | undefined) {
  const queries = useQueryClient();
  const stuck = useDesk().status?.trouble === 'signed-out';
  const signedIn = session?.person !== null;
  useEffect(() => {
    if (stuck) void queries.invalidateQueries({ queryKey: sessionQuery.queryKey });
  }, [stuck, queries]);
  useEffect(() => {
    if (stuck && signedIn) void desk().then((outbox) => outbox.sync());
  }, [stuck, signedIn]);
}
