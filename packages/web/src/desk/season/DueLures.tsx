import type { LureDue, SeasonView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { shortDay } from '../../format/day.ts';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { Table } from '../../ui/table/Table.tsx';

/** Lures that hang now, the one to change first at the top. */
export function DueLures({ view }: { view: SeasonView }) {
  const w = seasonWords.lures;
  const { due } = view.lures;
  return (
    <section aria-labelledby="due-lures">
      <h2 id="due-lures">{w.due}</h2>
      <p className="key">{w.dueLead}</p>
      {due.length === 0 ? (
        <p className="absent">{w.noneHang}</p>
      ) : (
        <Table
          label={w.due}
          rows={due}
          keyOf={({ trapId }) => trapId}
          columns={[
            {
              head: w.changeOn,
              value: ({ changeOn }) => changeOn,
              cell: changeText,
              className: ({ overdueDays, changeOn }) => (overdueDays > 0 || changeOn === null ? 'is-due' : undefined),
            },
            {
              head: w.trap,
              value: ({ trapId }) => trapId,
              cell: ({ trapId }) => (
                <Link to="/traps/$trapId" params={{ trapId }}>
                  {trapId}
                </Link>
              ),
              names: true,
            },
            { head: w.station, value: ({ station }) => station },
            { head: w.insect, value: ({ insect }) => insectName(insect) },
            { head: w.placed, value: ({ placedOn }) => placedOn, cell: ({ placedOn }) => (placedOn ? shortDay(placedOn) : '–') },
            { head: w.ends, value: ({ ends }) => ends, cell: ({ ends }) => (ends ? shortDay(ends) : '–') },
          ]}
        />
      )}
    </section>
  );
}

function changeText({ changeOn, placedOn, overdueDays }: LureDue): string {
  const w = seasonWords.lures;
  if (changeOn === null) return placedOn === null ? w.neverPlaced : w.lifeUnknown;
  return overdueDays > 0 ? w.overdue(overdueDays) : shortDay(changeOn);
}
