import type { CallRow, IsoDay, ReviewPart, ReviewView, TimingRow } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { daySpan, shortDate } from '../../format/day.ts';
import { countText, intervalText, rateText } from '../../format/number.ts';
import { learnWords } from '../../text/learn.ts';
import { insectName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';

const w = learnWords.review;

function Figures(props: { label: string; heads: readonly (readonly [text: string, number?: 'number'])[]; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="wide-table" aria-label={props.label} tabIndex={0}>
      <table className="figures">
        <thead>
          <tr>
            {props.heads.map(([text, number]) => (
              <th scope="col" key={text} className={number}>
                {text}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{props.children}</tbody>
      </table>
    </section>
  );
}

const dayOr = (on: IsoDay | null) => (on === null ? '–' : shortDate(on));

export function Timing({ rows }: { rows: readonly TimingRow[] }) {
  const wording = useWording();
  const c = w.timingColumns;
  const n = 'number' as const;
  return (
    <>
      <h3>{w.timing}</h3>
      <Figures
        label={w.timing}
        heads={[
          [c.insect],
          [c.traps, n],
          [c.moths, n],
          [c.rate, n],
          [c.interval, n],
          [c.first, n],
          [c.tenth, n],
          [c.half, n],
          [c.nine, n],
          [c.unseen, n],
        ]}
      >
        {rows.map((row) => (
          <tr key={`${row.insect} ${row.design}`}>
            <th scope="row">
              {insectName(row.insect)}, {wording.design[row.design]}
            </th>
            <td className={n}>{countText(row.traps)}</td>
            <td className={n}>{countText(row.moths)}</td>
            <td className={n}>{row.perNight ? rateText(row.perNight.value) : '–'}</td>
            <td className={n}>{row.perNight ? intervalText(row.perNight.low, row.perNight.high) : '–'}</td>
            {[row.firstCatch, row.tenth, row.half, row.nineTenths].map((on, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: four cells in a fixed order
              <td key={index} className={n}>
                {dayOr(on)}
              </td>
            ))}
            <td className={n}>{countText(row.unseenNights)}</td>
          </tr>
        ))}
      </Figures>
    </>
  );
}

export function Calls(props: { view: ReviewView; part: ReviewPart; uncalled: ReviewView['uncalled'] }) {
  const { view, part, uncalled } = props;
  const { given, scoutSampled, decideSampled, decideTreated, sampledInfested } = part.calls;
  const c = w.callColumns;
  return (
    <>
      <h3>{w.calls}</h3>
      <p>
        {w.tally.scout(given.scout, scoutSampled)} · {w.tally.decide(given.decide, decideSampled, decideTreated)} ·{' '}
        {w.tally.infested(sampledInfested)} · {w.tally.blind(given.blind)}
      </p>
      {part.rows.length === 0 ? (
        <p>{w.noCalls}</p>
      ) : (
        <Figures label={w.calls} heads={[[c.field], [c.insect], [c.verb], [c.days], [c.sample], [c.treatment]]}>
          {part.rows.map((row) => (
            <Call key={`${row.field} ${row.insect} ${row.from}`} row={row} />
          ))}
        </Figures>
      )}
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

function Call({ row }: { row: CallRow }) {
  const wording = useWording();
  const { field, name, insect, verb, from, to, sample, treatment } = row;
  return (
    <tr>
      <th scope="row">
        <Link to="/fields/$fieldId" params={{ fieldId: field }} search={{ on: to }} hash={insect}>
          {name}
        </Link>
      </th>
      <td>{insectName(insect)}</td>
      <td>{wording.verb[verb]}</td>
      <td>{daySpan(from, to)}</td>
      <td>
        {sample
          ? w.sample(shortDate(sample.on), sample.infested === null ? w.uncounted : countText(sample.infested), sample.examined)
          : w.nothing}
      </td>
      <td>{treatment ? `${shortDate(treatment.on)}: ${treatment.product}` : w.nothing}</td>
    </tr>
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
