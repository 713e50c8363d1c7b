import type { Problem } from '@duskwatch/core';
import { useRef, useState } from 'react';
import { ApiError, send } from '../../api/client.ts';
import { upload } from '../../api/upload.ts';
import { instantText } from '../../format/instant.ts';
import { countText, percentText } from '../../format/number.ts';
import { ProblemText } from '../../shared/record/ProblemText.tsx';
import { programWords } from '../../text/program.ts';

const w = programWords.data.restore;

/** A backup as it was looked at; instants are ISO 8601. */
interface Looked {
  readonly restoreId: string;
  readonly name: string;
  readonly revisions: number;
  readonly newest: string | null;
  readonly people: number;
  readonly photos: number;
  readonly missing: number;
}

type State =
  | { readonly is: 'idle' }
  | { readonly is: 'sending'; readonly share: number }
  | { readonly is: 'looked'; readonly looked: Looked }
  | { readonly is: 'beginning' }
  | { readonly is: 'done'; readonly aside: string }
  | { readonly is: 'failed'; readonly problems: readonly Problem[] };

const POLL_MS = 500;

/** A backup brought back: sent, looked at, and put in the place of the program only when somebody says so. */
export function Restore() {
  const [state, become] = useState<State>({ is: 'idle' });
  const stop = useRef<AbortController | null>(null);
  const failed = (error: unknown) => {
    if (!(error instanceof ApiError)) throw error;
    become({ is: 'failed', problems: error.problems });
  };
  const look = async (file: File) => {
    const { signal } = (stop.current = new AbortController());
    become({ is: 'sending', share: 0 });
    try {
      const looked = await upload<Looked>('/api/restoring', file, 'application/zip', signal, (share) =>
        become({ is: 'sending', share }),
      );
      become({ is: 'looked', looked });
    } catch (error) {
      if (signal.aborted) return become({ is: 'idle' });
      failed(error);
    }
  };
  const confirm = async ({ restoreId }: Looked) => {
    become({ is: 'beginning' });
    try {
      const { aside } = await send<{ aside: string }>('POST', `/api/restoring/${restoreId}`);
      await answering();
      become({ is: 'done', aside });
    } catch (error) {
      failed(error);
    }
  };
  const drop = ({ restoreId }: Looked) => {
    become({ is: 'idle' });
    void send('DELETE', `/api/restoring/${restoreId}`).catch(() => undefined);
  };
  return (
    <div className="restore">
      {(state.is === 'idle' || state.is === 'failed') && (
        <label className="button restore-choose">
          {w.choose}
          <input
            type="file"
            accept=".zip,application/zip"
            onChange={({ currentTarget }) => {
              const [file] = currentTarget.files ?? [];
              if (file) void look(file);
              currentTarget.value = '';
            }}
          />
        </label>
      )}
      <div role="status">
        {state.is === 'sending' && (state.share < 1 ? w.sending(percentText(state.share)) : w.looking)}
        {state.is === 'beginning' && w.beginning}
        {state.is === 'done' && w.done(state.aside)}
        {state.is === 'looked' && <Held looked={state.looked} />}
        {state.is === 'failed' && (
          <>
            {state.problems.length === 0 ? programWords.data.unreachable : programWords.data.failed}
            <ul className="faults">
              {state.problems.map((problem) => (
                <li key={`${problem.got}${problem.where.file}`}>
                  <ProblemText problem={problem} />
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
      {state.is === 'sending' && (
        <button type="button" className="plain-button" onClick={() => stop.current?.abort()}>
          {programWords.data.cancel}
        </button>
      )}
      {state.is === 'looked' && (
        <>
          <p className="key">{w.caution}</p>
          <p className="actions">
            <button type="button" className="button primary" onClick={() => void confirm(state.looked)}>
              {w.confirm}
            </button>
            <button type="button" className="plain-button" onClick={() => drop(state.looked)}>
              {w.drop}
            </button>
          </p>
        </>
      )}
      {state.is === 'done' && (
        <button type="button" className="button primary" onClick={() => window.location.assign('/')}>
          {w.reload}
        </button>
      )}
    </div>
  );
}

function Held({ looked: { name, revisions, newest, people, photos, missing } }: { looked: Looked }) {
  return (
    <>
      <p>{w.holds(name, countText(revisions), countText(photos))}</p>
      {newest && <p>{w.newest(instantText(newest))}</p>}
      <p>{w.people(people)}</p>
      {missing > 0 && <p>{w.missing(missing)}</p>}
    </>
  );
}

/** Resolves once the server answers again. */
async function answering(): Promise<void> {
  for (;;) {
    await new Promise((resolve) => setTimeout(resolve, POLL_MS));
    const answer = await fetch('/api/health', { cache: 'no-store' }).catch(() => null);
    if (answer?.ok) return;
  }
}
