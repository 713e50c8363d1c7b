import type { LureDue, SeasonView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { shortDay } from '../../format/day.ts';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { Exports } from './Exports.tsx';
import { Scroll } from './Scroll.tsx';

/** Lures that hang now, the one to change first at the top. */
export function DueLures({ view }: { view: SeasonView }) {
  const w = seasonWords.lures;
  const { due } = view.lures;
  return (
    <section aria-labelledby="due-lures">
      <h2 id="due-lures">{w.due}</h2>
      <p className="key">{w.dueLead}</p>
      {due.length === 0 ? (
        <p className="absent">{w.noneHang}</p>
      ) : (
        <>
          <Scroll label={w.due}>
            <table className="figures">
              <thead>
                <tr>
                  <th scope="col">{w.changeOn}</th>
                  <th scope="col">{w.trap}</th>
                  <th scope="col">{w.station}</th>
                  <th scope="col">{w.insect}</th>
                  <th scope="col">{w.placed}</th>
                  <th scope="col">{w.ends}</th>
                </tr>
              </thead>
              <tbody>
                {due.map((each) => (
                  <tr key={each.trapId}>
                    <td className={each.overdueDays > 0 || each.changeOn === null ? 'is-due' : undefined}>{changeText(each)}</td>
                    <th scope="row">
                      <Link to="/traps/$trapId" params={{ trapId: each.trapId }}>
                        {each.trapId}
                      </Link>
                    </th>
                    <td>{each.station}</td>
                    <td>{insectName(each.insect)}</td>
                    <td>{each.placedOn ? shortDay(each.placedOn) : '–'}</td>
                    <td>{each.ends ? shortDay(each.ends) : '–'}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
          <Exports
            name={`changes-${view.season}`}
            head={[w.changeOn, w.trap, w.station, w.insect, w.placed, w.ends]}
            rows={due.map((each) => [
              each.changeOn,
              each.trapId,
              each.station,
              insectName(each.insect),
              each.placedOn,
              each.ends,
            ])}
          />
        </>
      )}
    </section>
  );
}

function changeText({ changeOn, placedOn, overdueDays }: LureDue): string {
  const w = seasonWords.lures;
  if (changeOn === null) return placedOn === null ? w.neverPlaced : w.lifeUnknown;
  return overdueDays > 0 ? w.overdue(overdueDays) : shortDay(changeOn);
}
