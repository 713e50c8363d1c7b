import type { SeasonQuestion, SeasonView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { countText } from '../../format/number.ts';
import { seasonWords } from '../../text/season.ts';
import { Folded } from '../../ui/Folded.tsx';

/** What the places of traps leave in doubt, before the season begins. */
export function Questions({ view }: { view: SeasonView }) {
  const w = seasonWords.questions;
  if (view.questions.length === 0) return null;
  return (
    <Folded title={w.title(view.questions.length)} className="season-questions">
      <ul>
        {view.questions.map((question) => (
          <li key={JSON.stringify(question)}>{said(question)}</li>
        ))}
      </ul>
      <p className="actions no-print">
        <Link to="/fields" className="button">
          {w.toTrap}
        </Link>
      </p>
    </Folded>
  );
}

function said(question: SeasonQuestion): string {
  const w = seasonWords.questions;
  switch (question.kind) {
    case 'one-spot':
      return w.oneSpot(question.trapIds.join(', '), countText(question.farthestM));
    case 'no-coordinates':
      return w.noPlace(question.station, question.trapIds.join(', '));
    case 'no-such-area':
      return w.noArea(question.area);
    case 'no-such-field':
      return w.noField(question.field);
  }
}
