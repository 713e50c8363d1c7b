import type { DueField } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { weekQuery } from '../../api/queries.ts';
import { fieldPageWords } from '../../text/field-page.ts';
import { words } from '../../text/index.ts';

/** Back to the week, where this field stands among what is due, and the next field that has something due. */
export function Walk({ fieldId, insect, on }: { fieldId: string; insect: string | null; on: string | undefined }) {
  const { data: week } = useQuery(weekQuery(on));
  const { decisions = [], scouting = [] } = week?.due ?? {};
  const all = [...decisions, ...scouting];
  const here = (due: DueField) => due.fieldId === fieldId;
  const at = (list: readonly DueField[]) => list.findIndex((due) => here(due) && (insect === null || due.insect === insect));
  const w = fieldPageWords.walk;
  const [decision, scout] = [at(decisions), at(scouting)];
  const place =
    decision >= 0 ? w.decision(decision + 1, decisions.length) : scout >= 0 ? w.scouting(scout + 1, scouting.length) : null;
  // On from here, round to the first: whoever works through them comes past each.
  const from = all.findIndex((due) => here(due) && (insect === null || due.insect === insect));
  const next = [...all.slice(from + 1), ...all.slice(0, Math.max(0, from))].find((due) => !here(due));
  return (
    <nav className="walk no-print" aria-label={words.field.back}>
      <Link to="/" search={{ on }}>
        ‹ {words.field.back}
      </Link>
      <span>
        {place}
        {next && (
          <>
            {place && ' · '}
            <Link to="/fields/$fieldId" params={{ fieldId: next.fieldId }} search={{ on }} hash={next.insect}>
              {w.next(next.name)} ›
            </Link>
          </>
        )}
      </span>
    </nav>
  );
}
