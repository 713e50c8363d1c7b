import type { CallRow, IsoDay, ReviewPart, ReviewView, TimingRow } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { daySpan, shortDate } from '../../format/day.ts';
import { countText, intervalText, rateText } from '../../format/number.ts';
import { learnWords } from '../../text/learn.ts';
import { insectName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Table } from '../../ui/table/Table.tsx';

const w = learnWords.review;

const dayOr = (on: IsoDay | null) => (on === null ? '–' : shortDate(on));

export function Timing({ rows }: { rows: readonly TimingRow[] }) {
  const wording = useWording();
  const c = w.timingColumns;
  const dated = (head: string, on: (row: TimingRow) => IsoDay | null) => ({
    head,
    value: on,
    cell: (row: TimingRow) => dayOr(on(row)),
    number: true,
  });
  return (
    <>
      <h3>{w.timing}</h3>
      <Table
        label={w.timing}
        rows={rows}
        keyOf={({ insect, design }) => `${insect} ${design}`}
        columns={[
          {
            head: c.insect,
            value: ({ insect, design }) => `${insectName(insect)}, ${wording.design[design]}`,
            names: true,
          },
          { head: c.traps, value: ({ traps }) => traps, cell: ({ traps }) => countText(traps), number: true },
          { head: c.moths, value: ({ moths }) => moths, cell: ({ moths }) => countText(moths), number: true },
          {
            head: c.rate,
            value: ({ perNight }) => perNight?.value ?? null,
            cell: ({ perNight }) => (perNight ? rateText(perNight.value) : '–'),
            number: true,
          },
          {
            head: c.interval,
            cell: ({ perNight }) => (perNight ? intervalText(perNight.low, perNight.high) : '–'),
            said: ({ perNight }) => (perNight ? intervalText(perNight.low, perNight.high) : null),
            number: true,
          },
          dated(c.first, ({ firstCatch }) => firstCatch),
          dated(c.tenth, ({ tenth }) => tenth),
          dated(c.half, ({ half }) => half),
          dated(c.nine, ({ nineTenths }) => nineTenths),
          {
            head: c.unseen,
            value: ({ unseenNights }) => unseenNights,
            cell: ({ unseenNights }) => countText(unseenNights),
            number: true,
          },
        ]}
      />
    </>
  );
}

export function Calls(props: { view: ReviewView; part: ReviewPart; uncalled: ReviewView['uncalled'] }) {
  const { view, part, uncalled } = props;
  const { given, scoutSampled, decideSampled, decideTreated, sampledInfested } = part.calls;
  return (
    <>
      <h3>{w.calls}</h3>
      <p>
        {w.tally.scout(given.scout, scoutSampled)} · {w.tally.decide(given.decide, decideSampled, decideTreated)} ·{' '}
        {w.tally.infested(sampledInfested)} · {w.tally.blind(given.blind)}
      </p>
      {part.rows.length === 0 ? <p>{w.noCalls}</p> : <CallTable rows={part.rows} />}
      {uncalled.length > 0 && (
        <p>
          {w.uncalled(uncalled.length)}:{' '}
          {uncalled.map(({ name, insect, on }) => `${name}, ${insectName(insect)}, ${shortDate(on)}`).join('; ')}.
        </p>
      )}
      <p className="key">{w.callsLead(view.daysRead, view.daysChecked, view.within)}</p>
    </>
  );
}

function CallTable({ rows }: { rows: readonly CallRow[] }) {
  const wording = useWording();
  const c = w.callColumns;
  return (
    <Table
      label={w.calls}
      rows={rows}
      keyOf={({ field, insect, from }) => `${field} ${insect} ${from}`}
      columns={[
        {
          head: c.field,
          value: ({ name }) => name,
          cell: ({ field, name, insect, to }) => (
            <Link to="/fields/$fieldId" params={{ fieldId: field }} search={{ on: to }} hash={insect}>
              {name}
            </Link>
          ),
          names: true,
        },
        { head: c.insect, value: ({ insect }) => insectName(insect) },
        { head: c.verb, value: ({ verb }) => wording.verb[verb] },
        { head: c.days, value: ({ from }) => from, said: ({ from, to }) => daySpan(from, to) },
        {
          head: c.sample,
          value: ({ sample }) => sample?.on ?? null,
          said: ({ sample }) =>
            sample
              ? w.sample(
                  shortDate(sample.on),
                  sample.infested === null ? w.uncounted : countText(sample.infested),
                  sample.examined,
                )
              : w.nothing,
        },
        {
          head: c.treatment,
          value: ({ treatment }) => treatment?.on ?? null,
          said: ({ treatment }) => (treatment ? `${shortDate(treatment.on)}: ${treatment.product}` : w.nothing),
        },
        {
          head: c.decision,
          value: ({ decision }) => decision?.on ?? null,
          said: ({ decision }) =>
            decision ? `${shortDate(decision.on)}: ${wording.decisionReason[decision.reason]}` : w.nothing,
        },
      ]}
    />
  );
}

export function Missed({ visits }: { visits: ReviewPart['visits'] }) {
  const { missed, lateLures, trapsWithoutLure, luresWithoutLife, unfit } = visits;
  const wording = useWording();
  const none = missed.length + lateLures.length + trapsWithoutLure.length + luresWithoutLife + unfit.length === 0;
  return (
    <>
      <h3>{w.missed}</h3>
      {none && <p>{w.noneMissed}</p>}
      <ul className="plain-list">
        {missed.map(({ trapId, nights, from, to }) => (
          <li key={`${trapId} ${from}`}>
            {w.missedRow(trapId, nights, shortDate(from), to === null ? w.stillWaiting : shortDate(to))}
          </li>
        ))}
        {lateLures.map(({ trapId, daysLate, dueOn }) => (
          <li key={`${trapId} ${dueOn}`}>{w.lateRow(trapId, daysLate, shortDate(dueOn))}</li>
        ))}
        {trapsWithoutLure.length > 0 && <li>{w.withoutLure(trapsWithoutLure.join(', '))}</li>}
        {luresWithoutLife > 0 && <li>{w.withoutLife(luresWithoutLife)}</li>}
        {unfit.map(({ reason, visits, traps }) => (
          <li key={reason}>{w.unfitRow(reason === null ? w.unfitUnsaid : wording.unfitReason[reason], visits, traps)}</li>
        ))}
      </ul>
    </>
  );
}
