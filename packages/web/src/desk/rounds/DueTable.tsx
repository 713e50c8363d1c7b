import { dayText, shortDay } from '../../format/day.ts';
import { roundsWords as w } from '../../text/rounds.ts';
import type { RoundsAnswer } from './queries.ts';
import type { Setup } from './setup.ts';

/** Stations whose traps fall due; which of them must be seen before noon, and which are closed until when. */
export function DueTable({ view, setup, change }: { view: RoundsAnswer; setup: Setup; change: (setup: Setup) => void }) {
  if (view.stations.length === 0) {
    return (
      <section className="quiet">
        <h2>{w.due}</h2>
        <p>{w.none}</p>
      </section>
    );
  }
  const choose = (station: string, isMorning: boolean) =>
    change({ ...setup, morning: [...setup.morning.filter((each) => each !== station), ...(isMorning ? [station] : [])] });
  return (
    <section className="rounds-due">
      <h2>{w.due}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="behind-scroll" aria-label={w.due} tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{w.station}</th>
              <th scope="col">{w.fields}</th>
              <th scope="col">{w.dueOn}</th>
              <th scope="col" className="number">
                {w.traps}
              </th>
              <th scope="col">{w.morning}</th>
              <th scope="col">{w.blocked}</th>
            </tr>
          </thead>
          <tbody>
            {view.stations.map((station) => (
              <tr key={station.id}>
                <th scope="row">
                  {station.id}
                  {station.latitude === null && <small> {w.noPlace}</small>}
                </th>
                <td>{station.fields.map(({ name }) => name).join(', ')}</td>
                <td>{shortDay(station.due)}</td>
                <td className="number">{station.traps}</td>
                <td>
                  <label className="rounds-tick">
                    <input
                      type="checkbox"
                      aria-label={w.morningOf(station.id)}
                      checked={setup.morning.includes(station.id)}
                      onChange={(event) => choose(station.id, event.currentTarget.checked)}
                    />
                  </label>
                </td>
                <td>{station.keepOutUntil && <b>{w.blockedUntil(dayText(station.keepOutUntil))}</b>}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}
