import { dayText, shortDay } from '../../format/day.ts';
import { plannedRoundsWords as w } from '../../text/planned-rounds.ts';
import { Table } from '../../ui/table/Table.tsx';
import type { RoundsAnswer } from './queries.ts';
import type { Setup } from './setup.ts';

/** Stations whose traps fall due; which of them must be seen before noon, and which are closed until when. */
export function DueTable({ view, setup, change }: { view: RoundsAnswer; setup: Setup; change: (setup: Setup) => void }) {
  if (view.stations.length === 0) {
    return (
      <section className="quiet">
        <h2>{w.due}</h2>
        <p>{w.none}</p>
      </section>
    );
  }
  const choose = (station: string, isMorning: boolean) =>
    change({ ...setup, morning: [...setup.morning.filter((each) => each !== station), ...(isMorning ? [station] : [])] });
  return (
    <section className="rounds-due">
      <h2>{w.due}</h2>
      <Table
        label={w.due}
        height="part"
        rows={view.stations}
        keyOf={({ id }) => id}
        columns={[
          {
            head: w.station,
            value: ({ id }) => id,
            cell: ({ id, latitude }) => (
              <>
                {id}
                {latitude === null && <small> {w.noPlace}</small>}
              </>
            ),
            names: true,
          },
          { head: w.fields, value: ({ fields }) => fields.map(({ name }) => name).join(', ') },
          { head: w.dueOn, value: ({ due }) => due, cell: ({ due }) => shortDay(due) },
          { head: w.traps, value: ({ traps }) => traps, number: true },
          {
            head: w.morning,
            cell: ({ id }) => (
              <label className="rounds-tick">
                <input
                  type="checkbox"
                  aria-label={w.morningOf(id)}
                  checked={setup.morning.includes(id)}
                  onChange={(event) => choose(id, event.currentTarget.checked)}
                />
              </label>
            ),
          },
          {
            head: w.blocked,
            value: ({ keepOutUntil }) => keepOutUntil ?? null,
            cell: ({ keepOutUntil }) => keepOutUntil && <b>{w.blockedUntil(dayText(keepOutUntil))}</b>,
          },
        ]}
      />
    </section>
  );
}
