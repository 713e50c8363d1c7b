import type { CallRow, IsoDay, ReviewPart, ReviewView, TimingRow } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { daySpan, shortDate } from '../../format/day.ts';
import { countText, intervalText, rateText } from '../../format/number.ts';
import { insectName } from '../../text/names.ts';
import { reviewWords } from '../../text/review.ts';
import { useWording } from '../../text/wording.ts';
import { Table } from '../../ui/table/Table.tsx';

const w = reviewWords.review;

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

const OUTCOMES: readonly CallRow['outcome'][] = ['unanswered', 'late', 'in-time'];

export function Calls(props: { view: ReviewView; part: ReviewPart; uncalled: ReviewView['uncalled']; on: string | undefined }) {
  const { view, part, uncalled, on } = props;
  const { given, scoutSampled, decideSampled, decideTreated, sampledInfested, answered } = part.calls;
  const { inTime, late, middleDaysLate, unanswered } = answered;
  return (
    <>
      <h3>{w.calls}</h3>
      {part.rows.length > 0 && (
        <p>
          <b>{w.answers(inTime, late, middleDaysLate, unanswered)}</b>
        </p>
      )}
      <p>
        {w.tally.scout(given.scout, scoutSampled)} · {w.tally.decide(given.decide, decideSampled, decideTreated)} ·{' '}
        {w.tally.infested(sampledInfested)} · {w.tally.blind(given.blind)}
      </p>
      {part.rows.length === 0 ? <p>{w.noCalls}</p> : <CallTable rows={part.rows} on={on} />}
      {uncalled.length > 0 && (
        <p>
          {w.uncalled(uncalled.length)}:{' '}
          {uncalled.map(({ name, insect, on: day }) => `${name}, ${insectName(insect)}, ${shortDate(day)}`).join('; ')}.
        </p>
      )}
      <p className="key">{w.callsLead(view.daysRead, view.daysChecked, view.within)}</p>
    </>
  );
}

/** The longest late or unanswered first. */
const waited = ({ answer, daysOpen }: CallRow): number | null => answer?.daysLate ?? daysOpen;

function CallTable({ rows, on }: { rows: readonly CallRow[]; on: string | undefined }) {
  const wording = useWording();
  const c = w.callColumns;
  const ordered = [...rows].sort(
    (a, b) => OUTCOMES.indexOf(a.outcome) - OUTCOMES.indexOf(b.outcome) || (waited(b) ?? -1) - (waited(a) ?? -1),
  );
  const answerText = ({ answer, sample, treatment, decision }: CallRow): string | null => {
    switch (answer?.by) {
      case 'sample': {
        const infested = sample!.infested === null ? w.uncounted : countText(sample!.infested);
        return w.answeredBy.sample(shortDate(answer.on), w.sample(infested, sample!.examined));
      }
      case 'treatment':
        return w.answeredBy.treatment(shortDate(answer.on), treatment!.product);
      case 'decision':
        return w.answeredBy.decision(shortDate(answer.on), wording.decisionReason[decision!.reason]);
      default:
        return null;
    }
  };
  return (
    <Table
      label={w.calls}
      rows={ordered}
      keyOf={({ field, insect, from }) => `${field} ${insect} ${from}`}
      groupOf={({ outcome }) => outcome}
      groupHead={(group, members) => (
        <OutcomeHead outcome={OUTCOMES.find((each) => each === group)!} of={members.length} on={on} />
      )}
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
        { head: c.due, value: ({ dueOn }) => dueOn, cell: ({ dueOn }) => dayOr(dueOn) },
        {
          head: c.answer,
          value: ({ answer }) => answer?.on ?? null,
          said: (row) => answerText(row) ?? (row.daysOpen === null || row.daysOpen === 0 ? w.nothing : w.openFor(row.daysOpen)),
        },
        { head: c.late, figure: [waited, countText] },
      ]}
    />
  );
}

function OutcomeHead({ outcome, of, on }: { outcome: CallRow['outcome']; of: number; on: string | undefined }) {
  const { head } = w.outcomes[outcome];
  return (
    <span className="cause-head">
      <b>
        {head}: {of}
      </b>
      {outcome === 'unanswered' && (
        <Link to="/" search={{ on, sort: 'urgency' }}>
          {w.outcomes[outcome].act}
        </Link>
      )}
      {outcome === 'late' && <Link to="/rounds">{w.outcomes[outcome].act}</Link>}
    </span>
  );
}

type Fault = 'left-long' | 'lure-late' | 'lure-unknown' | 'unfit';

interface FaultRow {
  readonly fault: Fault;
  readonly what: string;
  readonly days: number | null;
  readonly from: IsoDay | null;
  /** Null: still so. */
  readonly to: IsoDay | null;
  readonly note: string;
}

/** What was left too long, changed too late, not written down or found unfit: a line each, grouped by which it was. */
export function Missed({ visits, on }: { visits: ReviewPart['visits']; on: string | undefined }) {
  const wording = useWording();
  const c = w.faultColumns;
  const rows: FaultRow[] = [
    ...visits.missed.map(({ trapId, nights, from, to }): FaultRow => {
      return { fault: 'left-long', what: trapId, days: nights, from, to, note: w.nightsUnseen(nights) };
    }),
    ...visits.lateLures.map(({ trapId, daysLate, dueOn, changedOn }): FaultRow => {
      return { fault: 'lure-late', what: trapId, days: daysLate, from: dueOn, to: changedOn, note: w.pastLife(daysLate) };
    }),
    ...visits.trapsWithoutLure.map((trapId): FaultRow => {
      return { fault: 'lure-unknown', what: trapId, days: null, from: null, to: null, note: w.noLure };
    }),
    ...(visits.luresWithoutLife > 0
      ? [
          {
            fault: 'lure-unknown' as const,
            what: w.noLife(visits.luresWithoutLife),
            days: null,
            from: null,
            to: null,
            note: w.noLifeNote,
          },
        ]
      : []),
    ...visits.unfit.map(({ reason, visits: found, traps }): FaultRow => {
      const what = reason === null ? w.unfitUnsaid : wording.unfitReason[reason];
      return { fault: 'unfit', what, days: null, from: null, to: null, note: w.unfitVisits(found, traps) };
    }),
  ];
  return (
    <>
      <h3>{w.missed}</h3>
      {rows.length === 0 ? (
        <p>{w.noneMissed}</p>
      ) : (
        <Table
          label={w.missed}
          rows={rows}
          keyOf={({ fault, what, from }) => `${fault} ${what} ${from}`}
          groupOf={({ fault }) => fault}
          groupHead={(group, members) => <FaultHead fault={group as Fault} of={members.length} on={on} />}
          columns={[
            { head: c.what, value: ({ what }) => what, names: true },
            { head: c.days, figure: [({ days }) => days, countText] },
            { head: c.from, value: ({ from }) => from, cell: ({ from }) => dayOr(from) },
            {
              head: c.to,
              value: ({ to }) => to,
              cell: ({ from, to }) => (to === null && from !== null ? w.stillWaiting : dayOr(to)),
            },
            { head: c.note, value: ({ note }) => note },
          ]}
        />
      )}
    </>
  );
}

function FaultHead({ fault, of, on }: { fault: Fault; of: number; on: string | undefined }) {
  const { head, act } = w.faults[fault];
  return (
    <span className="cause-head">
      <b>
        {head}: {of}
      </b>
      {fault === 'left-long' && <Link to="/rounds">{act}</Link>}
      {fault === 'lure-late' && (
        <Link to="/season" search={{ on, part: 'lures' }}>
          {act}
        </Link>
      )}
      {(fault === 'unfit' || fault === 'lure-unknown') && (
        <Link to="/fields" search={{ on }}>
          {act}
        </Link>
      )}
    </span>
  );
}
