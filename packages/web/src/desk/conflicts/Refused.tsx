import { instantText } from '../../format/instant.ts';
import { desk, useDesk } from '../../shared/record/desk.ts';
import { keyOfValue, recordName } from '../../shared/record/naming.ts';
import { ProblemText } from '../../shared/record/ProblemText.tsx';
import { useAround } from '../../shared/record/useAround.ts';
import { historyWords } from '../../text/history.ts';
import { recordWords } from '../../text/record.ts';
import { toast } from '../../ui/toast.ts';

/** What this machine wrote and the server did not take: why, and the ways on. */
export function Refused() {
  const w = historyWords.refused;
  const { names } = useAround();
  const refused = useDesk().entries.filter(({ state }) => state === 'refused');
  if (refused.length === 0) return null;
  return (
    <section className="refused" aria-labelledby="refused-title">
      <h2 id="refused-title">{w.title}</h2>
      <p>{w.lead}</p>
      <ul>
        {refused.map(({ revision, problems }) => {
          const { kind, value, revisionId, at } = revision;
          const name = value === null ? recordWords.kinds[kind] : recordName(kind, keyOfValue(kind, value), names);
          return (
            <li key={revisionId}>
              <b>{name}</b> {instantText(at)}
              <ul className="faults">
                {problems.map((problem) => (
                  <li key={problem.expected}>
                    <ProblemText problem={problem} />
                  </li>
                ))}
              </ul>
              <p className="actions">
                <button type="button" className="button" onClick={async () => (await desk()).retry(revisionId)}>
                  {w.retry}
                </button>
                <button
                  type="button"
                  className="plain-button"
                  onClick={async () => {
                    await (await desk()).discard(revisionId);
                    toast(w.discarded);
                  }}
                >
                  {w.discard}
                </button>
              </p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
