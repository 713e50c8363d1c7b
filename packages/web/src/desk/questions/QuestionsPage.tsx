import type { QuestionsView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { recordsQuery } from '../../shared/record/queries.ts';
import { questionsWords as w } from '../../text/questions.ts';
import { Failure } from '../../ui/Failure.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { useTitle } from '../../ui/media.ts';
import { Question } from './Question.tsx';
import { questionsQuery } from './queries.ts';

const route = getRouteApi('/questions');

/** What somebody should look at again, each with its evidence and its answers. */
export function QuestionsPage() {
  const search = route.useSearch();
  const { data, error, refetch } = useQuery(questionsQuery(search.on));
  useTitle(w.title);
  if (error && !data) return <Failure error={error} again={refetch} />;
  return (
    <main className="page questions-page" id="page" aria-busy={!data}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{data ? w.sub(data.open.length, data.compared, data.visits) : w.loading}</p>
        </div>
      </div>
      {data ? <Questions view={data} /> : <div className="skeleton skeleton-field" aria-hidden="true" />}
    </main>
  );
}

function Questions({ view }: { view: QuestionsView }) {
  const { data: answers } = useQuery(recordsQuery('answers'));
  const saidOf = (key: string) => answers?.find(({ value }) => value.question === key);
  return (
    <>
      {view.open.length === 0 ? (
        <section className="quiet">
          <h2>{w.none.title}</h2>
          <p>{w.none.text}</p>
        </section>
      ) : (
        <>
          <p className="lead">{w.lead}</p>
          <ul className="questions">
            {view.open.map((asked) => (
              <Question key={asked.key} asked={asked} on={view.on} said={saidOf(asked.key)} />
            ))}
          </ul>
        </>
      )}
      {view.settled.length > 0 && (
        <Folded title={w.settled(view.settled.length)} className="settled" open={view.open.length === 0}>
          <ul className="questions">
            {view.settled.map((asked) => (
              <Question key={asked.key} asked={asked} on={view.on} said={saidOf(asked.key)} />
            ))}
          </ul>
        </Folded>
      )}
    </>
  );
}
