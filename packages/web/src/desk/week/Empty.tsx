import type { FirstStepsView, WeekView } from '@duskwatch/core';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { lazy, type ReactNode, Suspense } from 'react';
import { getJson } from '../../api/client.ts';
import { programQuery } from '../../api/queries.ts';
import { sessionQuery } from '../../api/session.ts';
import { OtherProgramButton, useOtherProgram } from '../../shared/OtherProgram.tsx';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { firstWords } from '../../text/first.ts';
import { words } from '../../text/index.ts';
import { otherProgramWords } from '../../text/other-program.ts';
import { pagesWords } from '../../text/pages.ts';

const FirstSteps = lazy(() => import('./FirstSteps.tsx').then((module) => ({ default: module.FirstSteps })));

const firstStepsQuery = queryOptions({
  queryKey: ['first-steps'],
  queryFn: ({ signal }) => getJson<FirstStepsView>('/api/first-steps', signal),
});

/** The steps to a first advice, for whoever may take them and until there is some. */
export function Beginning({ view, on }: { view: WeekView; on: string | undefined }) {
  const mayWrite = useMayWrite();
  // Where a verb says more than that nothing can be seen, nobody is asked.
  const told = view.fields.some(({ cells }) => cells.some(({ advice }) => !['blind', 'none'].includes(advice.verb)));
  const asks = on === undefined && !told && mayWrite('fields');
  const { data } = useQuery({ ...firstStepsQuery, enabled: asks });
  if (!asks || !data?.beginning) return null;
  return (
    <Suspense fallback={<div className="skeleton skeleton-evidence" aria-hidden="true" />}>
      <FirstSteps view={data} />
    </Suspense>
  );
}

/** A week without fields: why there are none for this person, and what to do about it. */
export function NoFields({ view, on }: { view: WeekView; on: string | undefined }) {
  const { data: session } = useQuery(sessionQuery);
  const { data: program } = useQuery(programQuery);
  const w = words.week;
  if (session?.person?.role === 'reader') return <Note title={w.reader.title} text={w.reader.text} />;
  if (session?.person?.role === 'grower')
    return <Note title={w.noFields.title} text={w.noFields.text(session.person.farms.join(', '))} />;
  if (program && program.farms.length > 0) {
    return (
      <Note title={firstWords.quiet.title} text={firstWords.quiet.text}>
        <Link to="/fields" search={{ on, state: 'all' }} className="button">
          {pagesWords.places.fields}
        </Link>
      </Note>
    );
  }
  return (
    <>
      <Beginning view={view} on={on} />
      <Ways />
    </>
  );
}

const Note = ({ title, text, children }: { title: string; text: string; children?: ReactNode }) => (
  <section className="notice">
    <h2>{title}</h2>
    <p>{text}</p>
    {children}
  </section>
);

/** The other ways to begin: from files, by hand as a table, or with a look at the demo. */
function Ways() {
  const w = firstWords.ways;
  const other = useOtherProgram();
  return (
    <section className="notice">
      <h2>{firstWords.more}</h2>
      <div className="ways">
        <div>
          <h3>{w.sheet}</h3>
          <p>{w.sheetText}</p>
          <p>
            <Link to="/program/data/import" className="button">
              {w.sheetAct}
            </Link>
          </p>
        </div>
        {other === 'demo' && (
          <div>
            <h3>{otherProgramWords.to.demo}</h3>
            <p>{otherProgramWords.text.demo}</p>
            <p>
              <OtherProgramButton kind="demo" begin />
            </p>
          </div>
        )}
      </div>
    </section>
  );
}
