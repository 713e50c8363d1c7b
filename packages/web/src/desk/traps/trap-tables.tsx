/** A trap's seasons, checks and lures, newest first. */
import type { TrapView } from '@duskwatch/core';
import { countText, rateText } from '../../format/number.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { dayOnPage } from '../../shared/traps/words.ts';
import { historyWords } from '../../text/history.ts';
import { recordWords } from '../../text/record.ts';
import { trapsWords as w } from '../../text/traps.ts';
import { useWording } from '../../text/wording.ts';
import { Table, type TableProps } from '../../ui/table/Table.tsx';

function Part<R>({ none, ...table }: Omit<TableProps<R>, 'height'> & { none: string }) {
  return (
    <section className="trap-table">
      <h2>{table.label}</h2>
      {table.rows.length === 0 ? <p className="absent">{none}</p> : <Table {...table} height="part" />}
    </section>
  );
}

export function Seasons({ trap }: { trap: TrapView }) {
  const t = w.trap;
  if (trap.seasons.length < 2) return null;
  return (
    <Part
      label={t.seasons}
      none={t.noVisits}
      rows={trap.seasons}
      keyOf={({ from }) => from}
      columns={[
        { head: t.season, value: ({ from }) => from.slice(0, 4), names: true },
        { head: t.visits, value: ({ visits }) => visits, number: true },
        { head: t.unfit, value: ({ unfitVisits }) => unfitVisits, number: true },
        { head: t.moths, value: ({ count }) => count, cell: ({ count }) => countText(count), number: true },
        { head: t.nights, value: ({ nights }) => nights, number: true },
        {
          head: t.peak,
          value: ({ peak }) => peak?.perNight ?? null,
          cell: ({ peak }) => (peak ? t.peakOn(rateText(peak.perNight), dayOnPage(peak.on, trap.on)) : w.noRate),
        },
      ]}
    />
  );
}

export function Checks({ trap }: { trap: TrapView }) {
  const t = w.trap;
  const wording = useWording();
  const counted = (count: number | null) => (count === null ? '–' : countText(count));
  return (
    <Part
      label={t.checks}
      none={t.noVisits}
      rows={trap.visits}
      keyOf={({ on, visit }) => `${on}|${visit}`}
      columns={[
        { head: t.on, value: ({ on }) => on, cell: ({ on }) => dayOnPage(on, trap.on), names: true },
        { head: t.target, value: ({ count }) => count, cell: ({ count }) => counted(count), number: true },
        { head: t.others, value: ({ others }) => others, cell: ({ others }) => counted(others), number: true },
        {
          head: t.condition,
          value: ({ condition, unfitReason }) =>
            unfitReason === null
              ? wording.condition[condition]
              : `${wording.condition[condition]}: ${wording.unfitReason[unfitReason]}`,
        },
        { head: t.emptied, value: ({ emptied }) => (emptied ? recordWords.yes : recordWords.no) },
        {
          head: t.note,
          value: ({ note }) => note,
          cell: ({ note, photo, on }) => (
            <span className="note">
              {note}
              {photo && (
                <a href={`/api/photos/${photo}`} target="_blank" rel="noreferrer">
                  {t.photoOf(dayOnPage(on, trap.on))}
                </a>
              )}
            </span>
          ),
        },
        {
          head: historyWords.button,
          cell: ({ on, visit }) => <HistoryButton kind="checks" recordKey={`${trap.trapId}|${on}|${visit}`} />,
        },
      ]}
    />
  );
}

export function Lures({ trap }: { trap: TrapView }) {
  const t = w.trap;
  return (
    <Part
      label={t.lures}
      none={t.noLures}
      rows={trap.lures}
      keyOf={({ placedOn }) => placedOn}
      columns={[
        { head: t.placed, value: ({ placedOn }) => placedOn, cell: ({ placedOn }) => dayOnPage(placedOn, trap.on), names: true },
        {
          head: t.lasts,
          value: ({ lifeDays }) => lifeDays,
          cell: ({ lifeDays }) => (lifeDays === null ? t.notKnown : t.days(lifeDays)),
        },
        {
          head: historyWords.button,
          cell: ({ placedOn }) => <HistoryButton kind="lures" recordKey={`${trap.trapId}|${placedOn}`} />,
        },
      ]}
    />
  );
}
