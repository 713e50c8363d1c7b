import { Link } from '@tanstack/react-router';
import { rateText } from '../../format/number.ts';
import { degreesText, dueText } from '../../shared/traps/words.ts';
import { mapWords as w } from '../../text/map.ts';
import { localName } from '../../text/names.ts';
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
  const sorted = [...marks].sort((a, b) => (b.perNight ?? -1) - (a.perNight ?? -1) || a.station.localeCompare(b.station));
  return (
    <details className="behind">
      <summary>{w.table}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="behind-scroll" aria-label={w.table} tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{w.columns.station}</th>
              <th scope="col">{w.columns.insect}</th>
              <th scope="col">{w.columns.trap}</th>
              <th scope="col" className="number">
                {w.columns.rate}
              </th>
              <th scope="col">{w.columns.state}</th>
              <th scope="col">{w.columns.place}</th>
            </tr>
          </thead>
          <tbody>
            {sorted.map((mark) => (
              <tr key={mark.key}>
                <th scope="row">
                  <button
                    type="button"
                    className="row-button"
                    aria-pressed={chosen === mark.key}
                    onClick={() => choose(mark.key)}
                  >
                    {mark.station}
                  </button>
                </th>
                <td>{localName(mark.lead.insect.commonName)}</td>
                <td>
                  <Link to="/traps/$trapId" params={{ trapId: mark.lead.trapId }} search={{ on }}>
                    {mark.lead.trapId}
                  </Link>
                </td>
                <td className="number">{mark.perNight === null ? w.noRateShort : rateText(mark.perNight)}</td>
                <td>{dueText(mark.traps.find((trap) => trap.check?.state !== 'not-due') ?? mark.lead, today)}</td>
                <td>{degreesText(mark.latitude, mark.longitude)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
