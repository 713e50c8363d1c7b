import { longerThanShortest, type PlannedRound, type RoundScout, type StationToVisit } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { copyText } from '../../browser/clipboard.ts';
import { useLengthUnit } from '../../browser/preferences.ts';
import { dayText } from '../../format/day.ts';
import { distanceText } from '../../format/length.ts';
import { countText, percentText } from '../../format/number.ts';
import { plannedRoundsWords as w } from '../../text/planned-rounds.ts';
import { Table } from '../../ui/table/Table.tsx';
import { Drawing } from './Drawing.tsx';
import { clockText } from './setup.ts';

interface Props {
  readonly round: PlannedRound;
  readonly stations: ReadonlyMap<string, StationToVisit>;
  readonly scout: RoundScout;
}

/** Less than this is no longer worth a word. */
const NO_LONGER = 0.005;

/** One scout's day, to read, print and hand over to the phone. */
export function RoundSheet({ round, stations, scout }: Props) {
  const [said, say] = useState('');
  const [length] = useLengthUnit();
  const longer = longerThanShortest(round);
  const stops = round.stops.map(({ station }) => station).join(';');
  const title = w.roundOf(round.scout, dayText(round.day));
  const link = `${location.origin}/round?${new URLSearchParams({ stops })}`;
  return (
    <section className="round-sheet">
      <h3>{title}</h3>
      <p>
        <strong>
          {w.summary(round.stops.length, clockText(scout.startMinute), clockText(scout.startMinute + round.minutes))}
        </strong>{' '}
        {w.drive(round.km === null ? null : distanceText(round.km, length), countText(round.driveMinutes))}{' '}
        {longer !== null && (longer < NO_LONGER ? w.shortest : w.bound(percentText(longer)))}
      </p>
      <div className="round-sheet-body">
        <Drawing round={round} stations={stations} home={scout.home} />
        <Stops round={round} stations={stations} title={title} />
      </div>
      <p className="actions">
        <Link to="/round" search={{ stops }} className="button">
          {w.open}
        </Link>
        <button type="button" className="button" onClick={async () => say((await copyText(link)) ? w.copied : w.copyFailed)}>
          {w.copy}
        </button>
        <output className="said">{said}</output>
      </p>
    </section>
  );
}

function Stops({ round, stations, title }: Omit<Props, 'scout'> & { title: string }) {
  const remarks = (stop: PlannedRound['stops'][number]) =>
    [
      stop.daysLate > 0 ? w.late(stop.daysLate) : '',
      stop.begins > stop.arrives ? w.wait(clockText(stop.begins)) : '',
      stop.placeUnknown ? w.noPlace : '',
    ].filter(Boolean);
  return (
    <Table
      label={title}
      fixed
      rows={round.stops.map((stop, index) => ({ ...stop, place: index + 1, at: stations.get(stop.station) }))}
      keyOf={({ station }) => station}
      columns={[
        { head: '#', value: ({ place }) => place, number: true },
        { head: w.station, value: ({ station }) => station, names: true },
        { head: w.fields, value: ({ at }) => at?.fields.map(({ name }) => name).join(', ') ?? null },
        { head: w.traps, value: ({ at }) => at?.traps ?? null, number: true },
        {
          head: w.arrive,
          value: ({ arrives }) => clockText(arrives),
          cell: (stop) => (
            <>
              {clockText(stop.arrives)}
              {remarks(stop).length > 0 && <small> {remarks(stop).join(', ')}</small>}
            </>
          ),
        },
        { head: w.leave, value: ({ leaves }) => clockText(leaves) },
        { head: w.checked, cell: () => '☐', className: 'print-only' },
      ]}
    />
  );
}
