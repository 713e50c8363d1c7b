/** A trap's seasons, checks and lures, newest first. */
import type { TrapView } from '@duskwatch/core';
import type { ReactNode } from 'react';
import { countText, rateText } from '../../format/number.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { dayOnPage } from '../../shared/traps/words.ts';
import { historyWords } from '../../text/history.ts';
import { recordWords } from '../../text/record.ts';
import { stationsWords as w } from '../../text/stations.ts';
import { useWording } from '../../text/wording.ts';

interface Column {
  readonly head: string;
  readonly number?: boolean;
}

function Table(props: {
  title: string;
  columns: readonly Column[];
  rows: readonly { key: string; cells: readonly ReactNode[] }[];
  none: string;
}) {
  const { title, columns, rows, none } = props;
  return (
    <section className="trap-table">
      <h2>{title}</h2>
      {rows.length === 0 ? (
        <p className="absent">{none}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        <section className="scroll" aria-label={title} tabIndex={0}>
          <table className="figures">
            <thead>
              <tr>
                {columns.map(({ head, number }) => (
                  <th key={head} scope="col" className={number ? 'number' : undefined}>
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map(({ key, cells }) => (
                <tr key={key}>
                  {cells.map((cell, index) => (
                    <td key={columns[index]!.head} className={columns[index]!.number ? 'number' : undefined}>
                      {cell}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </section>
  );
}

export function Seasons({ trap }: { trap: TrapView }) {
  const t = w.trap;
  if (trap.seasons.length < 2) return null;
  return (
    <Table
      title={t.seasons}
      none={t.noVisits}
      columns={[
        { head: t.season },
        { head: t.visits, number: true },
        { head: t.unfit, number: true },
        { head: t.moths, number: true },
        { head: t.nights, number: true },
        { head: t.peak },
      ]}
      rows={trap.seasons.map((season) => ({
        key: season.from,
        cells: [
          season.from.slice(0, 4),
          season.visits,
          season.unfitVisits,
          countText(season.count),
          season.nights,
          season.peak ? t.peakOn(rateText(season.peak.perNight), dayOnPage(season.peak.on, trap.on)) : w.noRate,
        ],
      }))}
    />
  );
}

export function Checks({ trap }: { trap: TrapView }) {
  const t = w.trap;
  const wording = useWording();
  return (
    <Table
      title={t.checks}
      none={t.noVisits}
      columns={[
        { head: t.on },
        { head: t.target, number: true },
        { head: t.others, number: true },
        { head: t.condition },
        { head: t.emptied },
        { head: t.note },
        { head: historyWords.button },
      ]}
      rows={trap.visits.map((visit) => ({
        key: `${visit.on}|${visit.visit}`,
        cells: [
          dayOnPage(visit.on, trap.on),
          visit.count === null ? '–' : countText(visit.count),
          visit.others === null ? '–' : countText(visit.others),
          visit.unfitReason === null
            ? wording.condition[visit.condition]
            : `${wording.condition[visit.condition]}: ${wording.unfitReason[visit.unfitReason]}`,
          visit.emptied ? recordWords.yes : recordWords.no,
          <span key="note" className="note">
            {visit.note}
            {visit.photo && (
              <a href={`/api/photos/${visit.photo}`} target="_blank" rel="noreferrer">
                {t.photoOf(dayOnPage(visit.on, trap.on))}
              </a>
            )}
          </span>,
          <HistoryButton key="history" kind="checks" recordKey={`${trap.trapId}|${visit.on}|${visit.visit}`} />,
        ],
      }))}
    />
  );
}

export function Lures({ trap }: { trap: TrapView }) {
  const t = w.trap;
  return (
    <Table
      title={t.lures}
      none={t.noLures}
      columns={[{ head: t.placed }, { head: t.lasts }, { head: historyWords.button }]}
      rows={trap.lures.map((lure) => ({
        key: lure.placedOn,
        cells: [
          dayOnPage(lure.placedOn, trap.on),
          lure.lifeDays === null ? t.notKnown : t.days(lure.lifeDays),
          <HistoryButton key="history" kind="lures" recordKey={`${trap.trapId}|${lure.placedOn}`} />,
        ],
      }))}
    />
  );
}
