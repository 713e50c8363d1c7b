import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { programQuery } from '../../api/queries.ts';
import { sessionQuery } from '../../api/session.ts';
import { peopleWords } from '../../text/people.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { Invite, type Made, MadeLink } from './Invite.tsx';
import { OpenInvitations } from './OpenInvitations.tsx';
import { PeopleLog } from './PeopleLog.tsx';
import { PeopleTable } from './PeopleTable.tsx';
import { peopleQuery } from './queries.ts';
import { RoleList } from './RoleList.tsx';

/** Who uses the program, as what, and how others join. */
export function PeoplePage() {
  const w = peopleWords.people;
  const { data: session } = useQuery(sessionQuery);
  const accounts = session?.mode === 'accounts';
  const { data: people, error, refetch } = useQuery({ ...peopleQuery, enabled: accounts });
  useTitle(w.title);
  if (error && !people) return <Failure error={error} again={refetch} />;
  if (session?.mode === 'single-user') return <SingleUser />;
  return (
    <main className="page people-page" id="page" aria-busy={!people}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{people ? w.lead(people.length) : w.loading}</p>
        </div>
      </div>
      {people ? <People /> : <div className="skeleton skeleton-field" aria-hidden="true" />}
    </main>
  );
}

function People() {
  const { data: people = [] } = useQuery(peopleQuery);
  const { data: program } = useQuery(programQuery);
  const [made, setMade] = useState<Made | null>(null);
  const farms = program?.farms ?? [];
  return (
    <>
      {made && <MadeLink key={made.id} made={made} />}
      <PeopleTable people={people} farms={farms} made={setMade} />
      <div className="people-side">
        <Invite farms={farms} made={setMade} />
        <OpenInvitations />
      </div>
      <PeopleLog />
    </>
  );
}

/** Nobody else can come in: how to open the door. */
function SingleUser() {
  const w = peopleWords.people;
  return (
    <main className="page people-page" id="page">
      <div className="page-head">
        <h1>{w.title}</h1>
      </div>
      <section className="notice">
        <h2>{w.single.title}</h2>
        <p>{w.single.text}</p>
        <p>
          <code>{w.single.command}</code>
        </p>
        <p>{w.single.network}</p>
        <p>
          <code>{w.single.networkCommand}</code>
        </p>
        <p>{w.single.keeps}</p>
        <h2>{w.rolesTitle}</h2>
        <RoleList />
      </section>
    </main>
  );
}
