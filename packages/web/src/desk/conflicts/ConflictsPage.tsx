import { useQuery, useQueryClient } from '@tanstack/react-query';
import { ApiError, send } from '../../api/client.ts';
import { clockWasOff, instantText } from '../../format/instant.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { changesBetween } from '../../shared/history/versions.ts';
import { propertyLabel, propertyText, recordName } from '../../shared/record/naming.ts';
import { problemText } from '../../shared/record/ProblemText.tsx';
import { type Conflict, conflictsQuery, type StoredVersion } from '../../shared/record/queries.ts';
import { useAround } from '../../shared/record/useAround.ts';
import { historyWords } from '../../text/history.ts';
import { words } from '../../text/index.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { toast } from '../../ui/toast.ts';
import { Refused } from './Refused.tsx';

/** Where two people said different things of one record: both, side by side, for a decision. */
export function ConflictsPage() {
  const w = historyWords.conflicts;
  const { data: conflicts, error, refetch } = useQuery(conflictsQuery);
  useTitle(w.title);
  if (error && !conflicts) return <Failure error={error} again={refetch} />;
  return (
    <main className="page" id="page" aria-busy={!conflicts}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{conflicts ? w.lead : w.loading}</p>
        </div>
      </div>
      <Refused />
      {conflicts?.length === 0 && (
        <section className="quiet">
          <h2>{w.none}</h2>
          <p>{w.noneText}</p>
        </section>
      )}
      {conflicts?.map((conflict) => (
        <ConflictBlock key={`${conflict.kind}|${conflict.key}|${conflict.held.revisionId}`} conflict={conflict} />
      ))}
      {!conflicts && <div className="skeleton skeleton-field" aria-hidden="true" />}
    </main>
  );
}

function ConflictBlock({ conflict }: { conflict: Conflict }) {
  const w = historyWords.conflicts;
  const { names } = useAround();
  const sides = [conflict.held, ...conflict.rivals];
  const differing = new Set(
    sides.flatMap((side) => changesBetween(conflict.held.value, side.value).map(({ property }) => property)),
  );
  const properties = [...new Set(sides.flatMap(({ value }) => Object.keys(value ?? {})))];
  const name = recordName(conflict.kind, conflict.key, names);
  return (
    <section className="conflict" aria-label={name}>
      <header className="conflict-head">
        <h2>{name}</h2>
        <p>{w.reason[conflict.reason]}</p>
        <HistoryButton kind={conflict.kind} recordKey={conflict.key} text={w.all} />
      </header>
      <div className="sides">
        {sides.map((side, index) => (
          <article key={side.revisionId} className="side">
            <h3>{index === 0 ? w.holds : w.other}</h3>
            <p className="side-by">{historyWords.by(side.authorName, instantText(side.at))}</p>
            {clockWasOff(side) && <p className="hint">{historyWords.countedAt(instantText(side.countedAt))}</p>}
            {side.value === null ? (
              <p>{w.removed}</p>
            ) : (
              <dl>
                {properties.map((property) => (
                  <div key={property} className={differing.has(property) ? 'differs' : undefined}>
                    <dt>
                      {propertyLabel(conflict.kind, property)}
                      {differing.has(property) && <span className="unseen"> ({w.differs})</span>}
                    </dt>
                    <dd>
                      {propertyText(
                        conflict.kind,
                        property,
                        (side.value as Record<string, unknown>)[property],
                        side.value,
                        names,
                      )}
                    </dd>
                  </div>
                ))}
              </dl>
            )}
            <Keep conflict={conflict} side={side} others={sides.filter((other) => other !== side)} />
          </article>
        ))}
      </div>
    </section>
  );
}

function Keep({ conflict, side, others }: { conflict: Conflict; side: StoredVersion; others: readonly StoredVersion[] }) {
  const w = historyWords.conflicts;
  const queries = useQueryClient();
  const said = (error: unknown) =>
    toast(
      w.failed(
        error instanceof ApiError && error.kind !== 'unreachable'
          ? error.problems.map(problemText).join(' ') || error.message
          : words.failure.unreachable.title,
      ),
    );
  const restore = async (other: StoredVersion) => {
    await send('POST', `/api/revisions/${other.revisionId}/restore`, {}).then(
      () => toast(w.kept(other.authorName)),
      (error) => said(error),
    );
    await queries.invalidateQueries();
  };
  const keep = async () => {
    try {
      await send('POST', '/api/conflicts/settle', { kind: conflict.kind, key: conflict.key, keepRevisionId: side.revisionId });
      const [other] = others;
      const action = others.length === 1 && other ? { label: w.keepOther, act: () => void restore(other) } : null;
      toast(w.kept(side.authorName), { action });
    } catch (error) {
      said(error);
    }
    await queries.invalidateQueries();
  };
  return (
    <button
      type="button"
      className="button"
      aria-label={w.keepOf(side.authorName, instantText(side.at))}
      onClick={() => void keep()}
    >
      {w.keep}
    </button>
  );
}
