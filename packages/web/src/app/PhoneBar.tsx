import { useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import { sessionQuery } from '../api/session.ts';
import { openQuestionsQuery } from '../desk/questions/queries.ts';
import { Bar } from '../shared/bar/Bar.tsx';
import { desk, useDesk } from '../shared/record/desk.ts';
import { useWide } from '../ui/media.ts';

/** The bar under the pages of the shell, where there is room for no masthead. */
export function PhoneBar() {
  return useWide() ? null : <Narrow />;
}

function Narrow() {
  const person = useQuery(sessionQuery).data?.person;
  const { entries } = useDesk();
  const { data: questions } = useQuery({ ...openQuestionsQuery, enabled: person?.role === 'coordinator' });
  const known = person !== null && person !== undefined;
  useEffect(() => {
    // Where the browser keeps nothing, nothing waits.
    if (known) void desk().catch(() => undefined);
  }, [known]);
  return <Bar entries={entries} questions={questions?.open} />;
}
