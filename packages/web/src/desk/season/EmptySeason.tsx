import type { SeasonView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { seasonWords } from '../../text/season.ts';
import { Asks } from './Asks.tsx';

/** What to do first, before there is anything to plan. */
export function EmptySeason({ view }: { view: SeasonView }) {
  const w = seasonWords.empty;
  return (
    <section className="quiet">
      <h2>{w.title}</h2>
      {view.fields.length === 0 ? (
        <>
          <p>{w.text}</p>
          <p className="actions">
            <Link to="/fields" className="button primary">
              {w.fields}
            </Link>
          </p>
        </>
      ) : (
        <>
          <p>{w.noInsects}</p>
          <Asks view={view} text={w.choose} />
        </>
      )}
    </section>
  );
}
