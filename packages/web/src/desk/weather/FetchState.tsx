import type { WeatherService } from '@duskwatch/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { ApiError, send } from '../../api/client.ts';
import { instantText } from '../../format/instant.ts';
import { ProblemText } from '../../shared/record/ProblemText.tsx';
import { weatherWords } from '../../text/weather.ts';
import { fetchingQuery } from './queries.ts';

const w = weatherWords.fetching;

/** Where a source's days are fetched, how that has gone, and what to do about it. */
export function FetchState(props: { sourceId: string; service: WeatherService | null; fetching: boolean; children: ReactNode }) {
  const { sourceId, service, fetching, children } = props;
  const { data } = useQuery(fetchingQuery);
  const queries = useQueryClient();
  const [busy, setBusy] = useState(false);
  const [refused, refuse] = useState<ApiError | null>(null);
  const state = data?.states.find((each) => each.sourceId === sourceId);
  const fetchNow = async () => {
    setBusy(true);
    refuse(null);
    try {
      await send('POST', `/api/weather-fetching/${encodeURIComponent(sourceId)}`);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      refuse(error);
    } finally {
      setBusy(false);
      await queries.invalidateQueries();
    }
  };
  return (
    <div className="weather-fetch">
      {service !== null && (
        <p>
          {!fetching && <small>{w.off}</small>}
          {fetching && state === undefined && <small>{w.never}</small>}
          {state && (
            <small className={state.trouble === null ? undefined : 'weather-waits'}>
              {state.trouble === null
                ? w.answered(instantText(state.triedAt), state.days)
                : w.trouble(instantText(state.triedAt), w.troubles[state.trouble.kind], state.trouble.detail)}
            </small>
          )}
          {fetching && state && <small> · {w.next(instantText(state.nextAt))}</small>}
          {service === 'folder' && data && <small className="weather-told">{w.folder(data.folder)}</small>}
        </p>
      )}
      <p className="weather-acts">
        {fetching && (
          <button
            type="button"
            className="row-button"
            aria-label={busy ? undefined : w.nowOf(sourceId)}
            aria-disabled={busy}
            onClick={() => busy || void fetchNow()}
          >
            {busy ? w.busy : w.now}
          </button>
        )}
        {children}
      </p>
      {refused && (
        <p role="alert">
          {refused.problems.map((problem) => (
            <ProblemText key={problem.got} problem={problem} />
          ))}
        </p>
      )}
    </div>
  );
}
