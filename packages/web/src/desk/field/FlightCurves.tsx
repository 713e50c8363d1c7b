import { day, type SeasonFlights } from '@duskwatch/core';
import type { ScaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { Frame } from '../../ui/chart/frame.ts';

/** The fitted flights, each a faint curve with its number at its top; dotted where heat is only expected. */
export function FlightCurves({ flights, frame, y }: { flights: SeasonFlights; frame: Frame; y: ScaleLinear<number, number> }) {
  const shown = flights.curve.filter(({ on }) => day(on) >= frame.from && day(on) <= frame.to);
  const known = day(flights.knownThrough);
  return (
    <g className="flight-curves">
      {flights.list.map(({ number }, index) => {
        const path = line<SeasonFlights['curve'][number]>()
          .x(({ on }) => frame.x(day(on) + 0.5))
          .y(({ perNight }) => y(perNight[index] ?? 0))
          .digits(1);
        const part = (ahead: boolean) => shown.filter(({ on }) => (ahead ? day(on) >= known : day(on) <= known));
        const top = shown.reduce<(typeof shown)[number] | null>(
          (best, each) => (best && best.perNight[index]! >= each.perNight[index]! ? best : each),
          null,
        );
        return (
          <g key={number}>
            <path className="flight-curve" d={path(part(false)) ?? ''} />
            <path className="flight-curve ahead" d={path(part(true)) ?? ''} />
            {top && top.perNight[index]! > 0 && (
              <text x={frame.x(day(top.on) + 0.5)} y={Math.max(y(top.perNight[index]!) - 3, 10)} textAnchor="middle">
                {number}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
