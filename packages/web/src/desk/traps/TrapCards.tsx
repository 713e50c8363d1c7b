import { Link } from '@tanstack/react-router';
import { dueText, lureText, placeText, rateOf, visitText } from '../../shared/traps/words.ts';
import { localName } from '../../text/names.ts';
import { trapsWords as w } from '../../text/traps.ts';
import { useWording } from '../../text/wording.ts';
import type { TrapRowsProps } from './TrapTable.tsx';

/** The traps down a narrow page: what a scout asks first on the first line. */
export function TrapCards({ rows, view, notSent, search }: TrapRowsProps) {
  const wording = useWording();
  const by = search.sort ?? 'station';
  return (
    <ul className="trap-cards">
      {rows.map(({ place, trap }, index) => {
        const headed = by === 'station' && rows[index - 1]?.place !== place;
        return (
          <li key={trap.trapId}>
            {headed && (
              <h2>
                {place.station} <small>{placeText(place)}</small>
              </h2>
            )}
            <Link to="/traps/$trapId" params={{ trapId: trap.trapId }} search={{ on: search.on }} className="trap-card">
              <span className="trap-card-name">
                <b>{trap.trapId}</b>
                <span className={trap.check && trap.check.state !== 'not-due' ? 'is-due' : undefined}>
                  {dueText(trap, view.on)}
                </span>
              </span>
              <span>
                {by !== 'station' && `${place.station} · `}
                {localName(trap.insect.commonName)} · {wording.design[trap.design]}
              </span>
              <span>
                {rateOf(trap)} · {visitText(trap, view.on, wording.condition)}
              </span>
              <span className={trap.lure?.spent ? 'is-due' : undefined}>
                {w.columns.lure}: {lureText(trap)}
              </span>
              {notSent.has(trap.trapId) && <small className="not-sent">{w.notSent}</small>}
            </Link>
          </li>
        );
      })}
    </ul>
  );
}
