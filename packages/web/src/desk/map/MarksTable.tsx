import { Link } from '@tanstack/react-router';
import { rateText } from '../../format/number.ts';
import { VERBS } from '../../shared/advice/verbs.ts';
import { degreesText, dueText } from '../../shared/traps/words.ts';
import { mapWords as w } from '../../text/map.ts';
import { localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Folded } from '../../ui/Folded.tsx';
import { Table } from '../../ui/table/Table.tsx';
import { type Pointed, whenText } from './MarksLayer.tsx';
import type { FieldMark, StationMark } from './marks.ts';

interface Props {
  readonly fields: readonly FieldMark[];
  readonly stations: readonly StationMark[];
  readonly chosen: Pointed;
  readonly choose: (pointed: Pointed) => void;
  readonly on: string | undefined;
  readonly today: string;
}

/** The same fields and stations for keys and readers, the most pressing first. */
export function MarksTable({ fields, stations, chosen, choose, on, today }: Props) {
  const wording = useWording();
  const due = (mark: StationMark) => dueText(mark.traps.find((trap) => trap.check?.state !== 'not-due') ?? mark.lead, today);
  return (
    <Folded title={w.table}>
      <Table
        label={w.tableFields}
        height="part"
        rows={fields}
        keyOf={({ fieldId }) => fieldId}
        columns={[
          {
            head: w.columns.field,
            value: ({ name }) => name,
            cell: ({ fieldId, name }) => (
              <button
                type="button"
                className="row-button"
                aria-pressed={chosen.field === fieldId}
                onClick={() => choose({ field: fieldId })}
              >
                {name}
              </button>
            ),
            names: true,
          },
          { head: w.columns.farm, value: ({ farm }) => farm },
          {
            head: w.columns.verb,
            value: ({ verb }) => VERBS.indexOf(verb),
            said: ({ verb }) => (verb === 'none' ? null : wording.verb[verb]),
          },
          { head: w.columns.when, value: ({ by }) => by, cell: whenText },
          { head: w.columns.place, value: ({ latitude, longitude }) => degreesText(latitude, longitude) },
        ]}
      />
      <Table
        label={w.tableStations}
        height="part"
        rows={stations}
        keyOf={({ key }) => key}
        columns={[
          {
            head: w.columns.station,
            value: ({ station }) => station,
            cell: ({ key, station }) => (
              <button
                type="button"
                className="row-button"
                aria-pressed={chosen.station === key}
                onClick={() => choose({ station: key })}
              >
                {station}
              </button>
            ),
            names: true,
          },
          { head: w.columns.insect, value: ({ lead }) => localName(lead.insect.commonName) },
          { head: w.columns.design, value: ({ lead }) => wording.design[lead.design] },
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
