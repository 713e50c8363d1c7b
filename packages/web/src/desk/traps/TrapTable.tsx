import type { StationsView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { dueText, hungText, lureText, placeText, rateOf, visitText } from '../../shared/traps/words.ts';
import { localName } from '../../text/names.ts';
import { stationsWords as w } from '../../text/stations.ts';
import { useWording } from '../../text/wording.ts';
import type { Row } from './rows.ts';
import { COLUMNS, type ColumnId, type StationsSearch } from './search.ts';

export interface TrapRowsProps {
  readonly rows: readonly Row[];
  readonly view: StationsView;
  readonly notSent: ReadonlySet<string>;
  readonly search: StationsSearch;
  readonly change: (part: Partial<StationsSearch>) => void;
}

/** One row per trap; its station is named once where the rows stand by station. */
export function TrapTable({ rows, view, notSent, search, change }: TrapRowsProps) {
  const by = search.sort ?? 'station';
  const wording = useWording();
  const sort = (column: ColumnId) => change({ sort: column, down: by === column && search.down !== 'yes' ? 'yes' : undefined });
  return (
    <table className="traps">
      <caption className="unseen">{w.title}</caption>
      <thead>
        <tr>
          {COLUMNS.map((column) => (
            <th
              key={column}
              scope="col"
              className={column === 'rate' ? 'number' : undefined}
              aria-sort={by === column ? (search.down === 'yes' ? 'descending' : 'ascending') : undefined}
            >
              <button type="button" onClick={() => sort(column)} aria-label={w.filter.sortBy(w.columns[column])}>
                {w.columns[column]}
              </button>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ place, trap }, index) => {
          const repeated = by === 'station' && rows[index - 1]?.place === place;
          const where = placeText(place);
          return (
            <tr key={trap.trapId} className={repeated ? 'same-station' : undefined}>
              <td>
                {repeated ? (
                  <span className="unseen">{place.station}</span>
                ) : (
                  <>
                    <b>{place.station}</b>
                    {where && <small>{where}</small>}
                  </>
                )}
              </td>
              <th scope="row">
                <Link to="/traps/$trapId" params={{ trapId: trap.trapId }} search={{ on: search.on }}>
                  {trap.trapId}
                </Link>
                {notSent.has(trap.trapId) && <small className="not-sent">{w.notSent}</small>}
              </th>
              <td>{localName(trap.insect.commonName)}</td>
              <td className="one-line">{wording.design[trap.design]}</td>
              <td>{trap.informs.length === 0 ? w.informsNone : trap.informs.map(({ name }) => name).join(', ')}</td>
              <td className="one-line">{hungText(trap, view.on)}</td>
              <td>{visitText(trap, view.on, wording.condition)}</td>
              <td className="number">
                {rateOf(trap)}
                {trap.newest && <small>{w.overNights(trap.newest.nights)}</small>}
              </td>
              <td className={trap.check && trap.check.state !== 'not-due' ? 'is-due' : undefined}>{dueText(trap, view.on)}</td>
              <td className={trap.lure?.spent ? 'is-due' : undefined}>{lureText(trap)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
