import { Link } from '@tanstack/react-router';
import { dueText, lureText, rateOf, visitText } from '../../shared/traps/words.ts';
import { localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import type { StationMark } from './marks.ts';

/** The traps of the station that was pointed at. */
export function ChosenStation({ mark, on, today }: { mark: StationMark; on: string | undefined; today: string }) {
  const wording = useWording();
  return (
    <section className="chosen-station" aria-label={mark.station}>
      <h2>{mark.station}</h2>
      <ul>
        {mark.traps.map((trap) => (
          <li key={trap.trapId}>
            <Link to="/traps/$trapId" params={{ trapId: trap.trapId }} search={{ on }}>
              {trap.trapId}
            </Link>
            <span>
              {localName(trap.insect.commonName)} · {wording.design[trap.design]}
            </span>
            <span>{rateOf(trap)}</span>
            <span>{visitText(trap, today, wording.condition)}</span>
            <span>{dueText(trap, today)}</span>
            <span>{lureText(trap)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
