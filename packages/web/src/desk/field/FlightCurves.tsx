import { day, type SeasonFlights } from '@duskwatch/core';
import { line } from 'd3-shape';
import type { Frame } from '../../ui/chart/frame.ts';
import { around } from '../../ui/chart/labels.ts';
import { Line, type Word } from '../../ui/chart/marks.tsx';

interface Props {
  readonly flights: SeasonFlights;
  readonly frame: Frame;
  readonly y: (value: number) => number;
}

const shownOf = ({ curve }: SeasonFlights, { from, to }: Frame) => curve.filter(({ on }) => day(on) >= from && day(on) <= to);

/** The fitted flights, each a faint curve; dotted where heat is only expected. */
export function FlightCurves({ flights, frame, y }: Props) {
  const shown = shownOf(flights, frame);
  const known = day(flights.knownThrough);
  return (
    <g className="flight-curves">
      {flights.list.map(({ number }, index) => {
        const path = line<SeasonFlights['curve'][number]>()
          .x(({ on }) => frame.x(day(on) + 0.5))
          .y(({ perNight }) => y(perNight[index] ?? 0))
          .digits(1);
        const part = (ahead: boolean) => shown.filter(({ on }) => (ahead ? day(on) >= known : day(on) <= known));
        return (
          <g key={number}>
            <Line className="flight-curve" d={path(part(false)) ?? ''} />
            <Line className="flight-curve ahead" d={path(part(true)) ?? ''} />
          </g>
        );
      })}
    </g>
  );
}

/** Each flight's number at its top. */
export const flightWords = ({ flights, frame, y }: Props): Word[] =>
  flights.list.flatMap(({ number }, index) => {
    const top = shownOf(flights, frame).reduce<SeasonFlights['curve'][number] | null>(
      (best, each) => (best && best.perNight[index]! >= each.perNight[index]! ? best : each),
      null,
    );
    if (!top || top.perNight[index]! <= 0) return [];
    return [
      { text: String(number), spots: around(frame.x(day(top.on) + 0.5), y(top.perNight[index]!), 4), className: 'flight-word' },
    ];
  });
