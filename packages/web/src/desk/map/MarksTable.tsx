import { Link } from '@tanstack/react-router';
import { rateText } from '../../format/number.ts';
import { degreesText, dueText } from '../../shared/traps/words.ts';
import { mapWords as w } from '../../text/map.ts';
import { localName } from '../../text/names.ts';
import { Folded } from '../../ui/Folded.tsx';
import { Table } from '../../ui/table/Table.tsx';
import type { StationMark } from './marks.ts';

/** The same stations for keys and readers, the highest rate first. */
export function MarksTable(props: {
  marks: readonly StationMark[];
  chosen: string | null;
  choose: (key: string) => void;
  on: string | undefined;
  today: string;
}) {
  const { marks, chosen, choose, on, today } = props;
  const highestFirst = [...marks].sort((a, b) => (b.perNight ?? -1) - (a.perNight ?? -1) || a.station.localeCompare(b.station));
  const due = (mark: StationMark) => dueText(mark.traps.find((trap) => trap.check?.state !== 'not-due') ?? mark.lead, today);
  return (
    <Folded title={w.table}>
      <Table
        label={w.table}
        height="part"
        rows={highestFirst}
        keyOf={({ key }) => key}
        columns={[
          {
            head: w.columns.station,
            value: ({ station }) => station,
            cell: ({ key, station }) => (
              <button type="button" className="row-button" aria-pressed={chosen === key} onClick={() => choose(key)}>
                {station}
              </button>
            ),
            names: true,
          },
          { head: w.columns.insect, value: ({ lead }) => localName(lead.insect.commonName) },
          {
            head: w.columns.trap,
            value: ({ lead }) => lead.trapId,
            cell: ({ lead: { trapId } }) => (
              <Link to="/traps/$trapId" params={{ trapId }} search={{ on }}>
                {trapId}
              </Link>
            ),
          },
          {
            head: w.columns.rate,
            value: ({ perNight }) => perNight,
            cell: ({ perNight }) => (perNight === null ? w.noRateShort : rateText(perNight)),
            number: true,
          },
          { head: w.columns.state, value: due },
          { head: w.columns.place, value: ({ latitude, longitude }) => degreesText(latitude, longitude) },
        ]}
      />
    </Folded>
  );
}
