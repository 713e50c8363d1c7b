import type { TrapsView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { dueText, hungText, lureText, placeText, rateOf, visitText } from '../../shared/traps/words.ts';
import { localName } from '../../text/names.ts';
import { trapsWords as w } from '../../text/traps.ts';
import { useWording } from '../../text/wording.ts';
import { type Column, Table } from '../../ui/table/Table.tsx';
import { type Row, VALUE } from './rows.ts';
import { COLUMNS, type ColumnId, type StationsSearch } from './search.ts';

export interface TrapRowsProps {
  readonly rows: readonly Row[];
  readonly view: TrapsView;
  readonly notSent: ReadonlySet<string>;
  readonly search: StationsSearch;
  readonly change: (part: Partial<StationsSearch>) => void;
}

/** One row per trap; its station is named once where the rows stand by station. */
export function TrapTable({ rows, view, notSent, search, change }: TrapRowsProps) {
  const by = search.sort ?? 'station';
  const wording = useWording();
  const repeats = ({ place }: Row, before: Row | undefined) => by === 'station' && before?.place === place;
  const cells: { readonly [C in ColumnId]: Pick<Column<Row>, 'cell' | 'className'> } = {
    station: {
      cell: (row, before) =>
        repeats(row, before) ? (
          <span className="unseen">{row.place.station}</span>
        ) : (
          <>
            <b>{row.place.station}</b>
            <small>{placeText(row.place)}</small>
          </>
        ),
    },
    trap: {
      cell: ({ trap }) => (
        <>
          <Link to="/traps/$trapId" params={{ trapId: trap.trapId }} search={{ on: search.on }}>
            {trap.trapId}
          </Link>
          {notSent.has(trap.trapId) && <small className="not-sent">{w.notSent}</small>}
        </>
      ),
    },
    insect: { cell: ({ trap }) => localName(trap.insect.commonName) },
    design: { cell: ({ trap }) => wording.design[trap.design], className: 'one-line' },
    informs: {
      cell: ({ trap }) => (trap.informs.length === 0 ? w.informsNone : trap.informs.map(({ name }) => name).join(', ')),
    },
    hung: { cell: ({ trap }) => hungText(trap, view.on), className: 'one-line' },
    check: { cell: ({ trap }) => visitText(trap, view.on, wording.condition) },
    rate: {
      cell: ({ trap }) => (
        <>
          {rateOf(trap)}
          {trap.newest && <small>{w.overNights(trap.newest.nights)}</small>}
        </>
      ),
    },
    due: {
      cell: ({ trap }) => dueText(trap, view.on),
      className: ({ trap }) => (trap.check && trap.check.state !== 'not-due' ? 'is-due' : undefined),
    },
    lure: { cell: ({ trap }) => lureText(trap), className: ({ trap }) => (trap.lure?.spent ? 'is-due' : undefined) },
  };
  return (
    <Table
      label={w.title}
      className="traps"
      height="page"
      takeAlong={false}
      rows={rows}
      keyOf={({ trap }) => trap.trapId}
      rowClass={(row, before) => (repeats(row, before) ? 'same-station' : undefined)}
      columns={COLUMNS.map((id) => ({
        head: w.columns[id],
        value: VALUE[id],
        number: id === 'rate',
        names: id === 'trap',
        ...cells[id],
      }))}
      stands={{
        sort: { by: COLUMNS.indexOf(by), down: search.down === 'yes' },
        change: (sort) => change({ sort: COLUMNS[sort.by], down: sort.down ? 'yes' : undefined }),
      }}
    />
  );
}
