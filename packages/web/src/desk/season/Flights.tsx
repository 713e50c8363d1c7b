import { day, modelsFor, openingEvent, type SeasonLineView } from '@duskwatch/core';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { dayTextFrom, shiftDay, shortDate } from '../../format/day.ts';
import { heatText } from '../../format/temperature.ts';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { monthTicks } from '../../ui/chart/axis.ts';
import { frame } from '../../ui/chart/frame.ts';
import { useWidth } from '../../ui/chart/useWidth.ts';
import { areaName } from './names.ts';
import { Scroll } from './Scroll.tsx';

/** When the flight came in past years, and the lead that the traps get. */
export function Flights({
  line,
  areas,
  today,
}: {
  line: SeasonLineView;
  areas: readonly SeasonLineView[] | null;
  today: string;
}) {
  const w = seasonWords.plan;
  const { hang } = line;
  const late = hang.basis === 'chosen' && hang.caution === 'late';
  return (
    <figure className="flights">
      {areas && <figcaption className="flights-areas">{areas.map(areaName).join(', ')}</figcaption>}
      {hang.basis === 'heat' || hang.basis === 'chosen' ? (
        <Drawing line={line} />
      ) : (
        <p className="absent">
          {w.noHeat[hang.why]} {hang.on === null && w.hangWhy.unknown}
        </p>
      )}
      {late && <p className="is-due">{w.late(dayTextFrom(hang.spread.plausible, today))}</p>}
      {line.flights.length > 0 && <FlightTable line={line} today={today} />}
    </figure>
  );
}

const ROW = 16;
const HEAD = 20;
const FOOT = 20;
/** Days left free on both sides. */
const MARGIN = 10;

function Drawing({ line }: { line: SeasonLineView }) {
  const w = seasonWords.plan;
  const [ref, width] = useWidth<HTMLDivElement>();
  const { hang } = line;
  if (hang.basis !== 'heat' && hang.basis !== 'chosen') return null;
  const { spread } = hang;
  const dates = [hang.on, spread.plausible, spread.earliest, spread.latest].sort();
  const shown = frame(shiftDay(dates[0]!, -MARGIN), shiftDay(dates.at(-1)!, MARGIN), width);
  const dots = line.flights.filter(({ carried }) => carried !== null);
  const height = HEAD + dots.length * ROW + FOOT;
  const base = height - FOOT;
  const at = (on: string) => shown.x(day(on) + 0.5);
  const from = Math.min(at(hang.on), at(spread.plausible));
  const to = Math.max(at(hang.on), at(spread.plausible));
  return (
    <>
      <div ref={ref} className="flights-drawing" style={{ height }}>
        {width > 0 && (
          <svg width={width} height={height} aria-hidden="true">
            {monthTicks(shown.from, shown.to, 12).map(({ at: tick, label }) => (
              <g key={tick}>
                <line className="month" x1={shown.x(tick)} x2={shown.x(tick)} y1={HEAD} y2={base} />
                <text className="scale" x={shown.x(tick) + 3} y={height - 5}>
                  {label}
                </text>
              </g>
            ))}
            <line className="ground" x1={shown.left} x2={shown.right} y1={base} y2={base} />
            <rect className="lead" x={from} width={Math.max(2, to - from)} y={base - 5} height={5} />
            <line className="plausible" x1={at(spread.plausible)} x2={at(spread.plausible)} y1={HEAD} y2={base} />
            <line className="hang" x1={at(hang.on)} x2={at(hang.on)} y1={HEAD - 4} y2={base} />
            <text className="hang-word" x={at(hang.on)} y={HEAD - 8} textAnchor={at(hang.on) < 60 ? 'start' : 'middle'}>
              {w.hangMark} {shortDate(hang.on)}
            </text>
            {dots.map(({ season, carried }, index) => (
              <g key={season}>
                <circle className="flight" cx={at(carried!)} cy={HEAD + index * ROW + 8} r={4.5} />
                <text className="scale" x={at(carried!) + 9} y={HEAD + index * ROW + 12}>
                  {season}
                </text>
              </g>
            ))}
          </svg>
        )}
      </div>
      <p className="key">
        {w.flights}. {w.flightsKey}
      </p>
    </>
  );
}

function FlightTable({ line, today }: { line: SeasonLineView; today: string }) {
  const w = seasonWords.plan;
  const [unit] = useTemperatureUnit();
  const modelUnit = openingEvent(modelsFor(line.insect))?.model.heat.unit ?? 'F';
  const said = (flight: SeasonLineView['flights'][number]): string => {
    switch (flight.kind) {
      case 'reached':
        return w.reached(dayTextFrom(flight.on, today), flight.wait + 1);
      case 'not-reached':
        return w.notReached(heatText(flight.heat, modelUnit, unit));
      case 'unknown':
        return w.gap(dayTextFrom(flight.from, today), dayTextFrom(flight.to, today));
    }
  };
  return (
    <details className="behind">
      <summary>{w.yearByYear}</summary>
      <Scroll label={`${insectName(line.insect)}: ${w.yearByYear}`}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{w.earlier}</th>
              <th scope="col">{w.came}</th>
              <th scope="col">{w.carried}</th>
            </tr>
          </thead>
          <tbody>
            {line.flights.map((flight) => (
              <tr key={flight.season}>
                <th scope="row">{flight.season}</th>
                <td>{said(flight)}</td>
                <td>{flight.carried ? shortDate(flight.carried) : '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
