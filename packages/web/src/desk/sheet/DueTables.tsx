import { daysLateOn, groupBy, type IsoDay, type SheetLure, type SheetStop, type WeekSheetView } from '@duskwatch/core';
import type { ReactNode } from 'react';
import { shortDate, shortDay, weekdayOf } from '../../format/day.ts';
import { skippedText } from '../../shared/traps/skipped.ts';
import { language } from '../../text/language.ts';
import { sampleKind, shortInsect } from '../../text/names.ts';
import { weekSheetWords as w } from '../../text/week-sheet.ts';
import { useWording } from '../../text/wording.ts';

type Due = WeekSheetView['decisions'][number];

/** The sheet for the wall: decisions and fields to scout, each with room to write. */
export function ToDo({ sheet }: { sheet: WeekSheetView }) {
  const { decisions, scouting } = sheet;
  const wording = useWording();
  const looks = [...new Set(scouting.flatMap(({ look }) => (look ? [look[language]] : [])))];
  return (
    <>
      <Part title={w.decisions(decisions.length)} note={w.decisionsNote} none={decisions.length === 0 && w.nothing.decisions}>
        <table className="sheet-due sheet-asks">
          <Head columns={[w.field, w.insect, w.by, w.why]} write={w.who} />
          <tbody>
            {decisions.map((due) => (
              <DueRow key={`${due.fieldId}|${due.advice.insect}`} due={due} on={sheet.on}>
                <td>{wording.grounds(due.advice)}</td>
              </DueRow>
            ))}
          </tbody>
        </table>
      </Part>
      <Part
        title={w.scouting(new Set(scouting.map(({ fieldId }) => fieldId)).size)}
        note={w.scoutingNote}
        none={scouting.length === 0 && w.nothing.scouting}
      >
        <table className="sheet-due sheet-asks">
          <Head columns={[w.field, w.insect, w.by, w.look]} write={w.found} />
          <tbody>
            {scouting.map((due) => (
              <DueRow key={`${due.fieldId}|${due.advice.insect}`} due={due} on={sheet.on}>
                <td>
                  {due.units !== null && (
                    <b>
                      {due.units} {sampleKind(due.unit)}
                    </b>
                  )}
                  {due.look && <sup>{letter(looks.indexOf(due.look[language]))}</sup>} {wording.grounds(due.advice)}
                </td>
              </DueRow>
            ))}
          </tbody>
        </table>
        <p className="sheet-looks">
          {looks.map((look, nth) => (
            <span key={look}>
              <sup>{letter(nth)}</sup> {look}{' '}
            </span>
          ))}
        </p>
      </Part>
    </>
  );
}

/** The sheet for the cab: stops to tick and the lures for each drive. */
export function Drives({ sheet: { stops, lures } }: { sheet: WeekSheetView }) {
  const traps = stops.reduce((sum, stop) => sum + stop.traps.length, 0);
  const toTake = lures.reduce((sum, lure) => sum + lure.traps.length, 0);
  return (
    <>
      <Part title={w.checks(traps)} note={w.checksNote} none={traps === 0 && w.nothing.checks}>
        <div className="sheet-drives">
          {byFirstVisit(stops).map(([first, those]) => (
            <div key={first}>
              <h4>
                {w.first(shortDay(first))} <i>{w.stops(those.length)}</i>
              </h4>
              <ul>
                {those.map((stop) => (
                  <Stop key={stop.station} stop={stop} />
                ))}
              </ul>
            </div>
          ))}
        </div>
      </Part>
      <Part title={w.lures(toTake)} note={w.luresNote} none={toTake === 0 && w.nothing.lures}>
        <Lures lures={lures} />
      </Part>
    </>
  );
}

const letter = (nth: number) => String.fromCodePoint('a'.codePointAt(0)! + (nth % 26));

function Part({ title, note, none, children }: { title: string; note: string; none: string | false; children: ReactNode }) {
  const [number, ...rest] = title.split(' ');
  return (
    <section className="sheet-part">
      <h3>
        <b className="sheet-number">{number}</b> {rest.join(' ')} <i>{note}</i>
      </h3>
      {none === false ? children : <p className="sheet-none">{none}</p>}
    </section>
  );
}

function Head({ columns, write }: { columns: readonly string[]; write: string }) {
  return (
    <thead>
      <tr>
        {columns.map((title) => (
          <th key={title} scope="col">
            {title}
          </th>
        ))}
        <th scope="col" className="sheet-write">
          {write}
        </th>
      </tr>
    </thead>
  );
}

/** How late it is stands beside the day in words, so that it survives a grey printer. */
function DueRow({ due, on, children }: { due: Due; on: IsoDay; children: ReactNode }) {
  const { insect, by, dueSince } = due.advice;
  const days = daysLateOn(on, dueSince);
  const date = dueSince ?? by;
  return (
    <tr className={days > 0 ? 'sheet-late' : undefined}>
      <td>
        <b>{due.name}</b> {due.farm}
      </td>
      <td>{shortInsect(insect)}</td>
      <td>
        {date && <b>{days > 0 ? shortDate(date) : shortDay(date)}</b>}
        {days > 0 ? <em>, {w.late(days)}</em> : date === on && <em>, {w.today}</em>}
      </td>
      {children}
      <td className="sheet-write" />
    </tr>
  );
}

const byFirstVisit = (stops: readonly SheetStop[]): [IsoDay, SheetStop[]][] =>
  [...groupBy(stops, ({ visits }) => visits[0]!)].sort(([a], [b]) => (a < b ? -1 : 1));

function Stop({ stop }: { stop: SheetStop }) {
  return (
    <li className={stop.daysLate > 0 ? 'sheet-late' : undefined}>
      <span className="sheet-ticks">
        {stop.visits.map((visit) => (
          <span key={visit} title={shortDay(visit)}>
            <s />
            {weekdayOf(visit)}
          </span>
        ))}
      </span>
      <span>
        <b>{stop.station}</b> <small>{stop.traps.map(({ insect }) => shortInsect(insect)).join(', ')}</small>
        {stop.daysLate > 0 && <em> {w.late(stop.daysLate)}</em>}
        {stop.skipped && <small> {skippedText(stop.skipped)}</small>}
      </span>
    </li>
  );
}

/** Counted by drive for the bag, then the trap that each is for. */
function Lures({ lures }: { lures: readonly SheetLure[] }) {
  const days = [...new Set(lures.flatMap((lure) => lure.days.map(({ on }) => on)))].sort();
  return (
    <table className="sheet-due sheet-lures">
      <thead>
        <tr>
          <th scope="col">{w.lure}</th>
          {days.map((on) => (
            <th key={on} scope="col" className="sheet-count">
              {shortDay(on)}
            </th>
          ))}
          <th scope="col" className="sheet-count">
            {w.inAll}
          </th>
          <th scope="col">{w.goesTo}</th>
        </tr>
      </thead>
      <tbody>
        {lures.map((lure) => (
          <tr key={lure.insect}>
            <td>{shortInsect(lure.insect)}</td>
            {days.map((on) => (
              <td key={on} className="sheet-count">
                {lure.days.find((each) => each.on === on)?.lures ?? '·'}
              </td>
            ))}
            <td className="sheet-count">
              <b>{lure.traps.length}</b>
            </td>
            <td>
              {lure.traps
                .map(({ trapId, daysPast }) => (daysPast > 0 ? `${trapId} (${w.daysPast(daysPast)})` : trapId))
                .join(', ')}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
