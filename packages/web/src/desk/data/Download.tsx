import type { Problem } from '@duskwatch/core';
import { useRef, useState } from 'react';
import { ApiError, getFile } from '../../api/client.ts';
import { saveFile } from '../../browser/save.ts';
import { rateText } from '../../format/number.ts';
import { ProblemText } from '../../shared/record/ProblemText.tsx';
import { programWords } from '../../text/program.ts';

type State =
  | { readonly is: 'idle' }
  | { readonly is: 'coming'; readonly bytes: number }
  | { readonly is: 'saved'; readonly name: string }
  | { readonly is: 'failed'; readonly problems: readonly Problem[] };

/** A file that takes the server a while: how much of it has come, and a way to stop. */
export function Download({ path, text }: { path: string; text: string }) {
  const w = programWords.data;
  const [state, become] = useState<State>({ is: 'idle' });
  const stop = useRef<AbortController | null>(null);
  const fetchIt = async () => {
    const { signal } = (stop.current = new AbortController());
    become({ is: 'coming', bytes: 0 });
    try {
      const file = await getFile(path, signal, (bytes) => become({ is: 'coming', bytes }));
      saveFile(file, file.name);
      become({ is: 'saved', name: file.name });
    } catch (error) {
      if (signal.aborted) return become({ is: 'idle' });
      if (!(error instanceof ApiError)) throw error;
      become({ is: 'failed', problems: error.problems });
    }
  };
  return (
    <div className="download">
      <button
        type="button"
        className="button"
        aria-disabled={state.is === 'coming'}
        onClick={() => state.is !== 'coming' && void fetchIt()}
      >
        {text}
      </button>
      <div role="status">
        {state.is === 'coming' && w.making(rateText(state.bytes / 1e6))}
        {state.is === 'saved' && w.saved(state.name)}
        {state.is === 'failed' && state.problems.length === 0 && w.unreachable}
        {state.is === 'failed' && state.problems.length > 0 && (
          <>
            {w.failed}
            <ul className="faults">
              {state.problems.map((problem) => (
                <li key={problem.got}>
                  <ProblemText problem={problem} />
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
      {state.is === 'coming' && (
        <button type="button" className="plain-button" onClick={() => stop.current?.abort()}>
          {w.cancel}
        </button>
      )}
    </div>
  );
}
