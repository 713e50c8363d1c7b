import { Link } from '@tanstack/react-router';
import { ApiError, type ApiFailure } from '../api/client.ts';
import { words } from '../words/index.ts';

const failureOf = (error: unknown): ApiFailure => (error instanceof ApiError ? error.kind : 'failed');

/** What went wrong, in the reader's terms, and the way on. */
export function Failure(props: { error?: unknown; kind?: ApiFailure | 'noPage'; again?: () => void }) {
  const { title, text } = words.failure[props.kind ?? failureOf(props.error)];
  return (
    <main className="page notice" id="page">
      <h1>{title}</h1>
      <p>{text}</p>
      <p className="actions">
        {props.again && (
          <button type="button" className="button" onClick={props.again}>
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
