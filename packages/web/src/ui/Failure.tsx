import { namesAsWritten, problemInWords } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { lazy, Suspense } from 'react';
import { ApiError, type ApiFailure, failureOf } from '../api/client.ts';
import { isMissingPart } from '../browser/renew.ts';
import { words } from '../text/index.ts';
import { language } from '../text/language.ts';

const KeptPages = lazy(() => import('./KeptPages.tsx').then((module) => ({ default: module.KeptPages })));

/** What went wrong, in the reader's terms, and the way on. */
export function Failure(props: { error?: unknown; kind?: ApiFailure | 'noPage' | 'broken'; again?: () => void }) {
  const partIsMissing = isMissingPart(props.error);
  const kind = partIsMissing ? 'outdated' : (props.kind ?? failureOf(props.error));
  const again = partIsMissing ? () => location.reload() : props.again;
  const storage =
    props.error instanceof ApiError ? props.error.problems.find(({ fault }) => fault?.kind === 'storage') : undefined;
  // One that passes by itself says so as any server does that is away for a moment.
  const { title, text } =
    storage && kind === 'failed'
      ? { title: words.failure.storage, text: problemInWords(storage, language, namesAsWritten).fix }
      : words.failure[kind];
  return (
    <main className="page notice" id="page">
      <h1>{title}</h1>
      <p>{text}</p>
      {kind === 'unreachable' && (
        <Suspense>
          <KeptPages />
        </Suspense>
      )}
      {kind === 'broken' && (
        <pre className="fault" lang="en">
          {String(props.error)}
        </pre>
      )}
      <p className="actions">
        {again && (
          <button type="button" className="button" onClick={again}>
            {words.failure.again}
          </button>
        )}
        <Link to="/" className="button">
          {words.failure.home}
        </Link>
      </p>
    </main>
  );
}
