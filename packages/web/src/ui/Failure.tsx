import { Link } from '@tanstack/react-router';
import { type ApiFailure, failureOf } from '../api/client.ts';
import { isMissingPart } from '../browser/renew.ts';
import { words } from '../text/index.ts';

/** What went wrong, in the reader's terms, and the way on. */
export function Failure(props: { error?: unknown; kind?: ApiFailure | 'noPage' | 'broken'; again?: () => void }) {
  const partIsMissing = isMissingPart(props.error);
  const kind = partIsMissing ? 'outdated' : (props.kind ?? failureOf(props.error));
  const again = partIsMissing ? () => location.reload() : props.again;
  const { title, text } = words.failure[kind];
  return (
    <main className="page notice" id="page">
      <h1>{title}</h1>
      <p>{text}</p>
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
