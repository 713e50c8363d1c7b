import { day, modelsFor, openingEvent, type SeasonLineView } from '@duskwatch/core';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { dayTextFrom, shiftDay, shortDate } from '../../format/day.ts';
import { heatText } from '../../format/temperature.ts';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { monthTicks } from '../../ui/chart/axis.ts';
import { Chart } from '../../ui/chart/Chart.tsx';
import { frame } from '../../ui/chart/frame.ts';
import { AcrossAxis, Dot, Upright, Words } from '../../ui/chart/marks.tsx';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';
import { areaName } from './names.ts';

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

function Drawing({ line: { hang, flights } }: { line: SeasonLineView }) {
  const w = seasonWords.plan;
  if (hang.basis !== 'heat' && hang.basis !== 'chosen') return null;
  const { spread } = hang;
  const dates = [hang.on, spread.plausible, spread.earliest, spread.latest].sort();
  const dots = flights.filter(({ carried }) => carried !== null);
  const height = HEAD + dots.length * ROW + FOOT;
  const base = height - FOOT;
  return (
    <>
      <Chart height={height} className="flights-drawing">
        {(width) => {
          const shown = frame(shiftDay(dates[0]!, -MARGIN), shiftDay(dates.at(-1)!, MARGIN), width);
          const at = (on: string) => shown.x(day(on) + 0.5);
          const from = Math.min(at(hang.on), at(spread.plausible));
          const to = Math.max(at(hang.on), at(spread.plausible));
          const upright = { top: HEAD, bottom: base };
          const months = monthTicks(shown.from, shown.to, 12).map(({ at: tick, label }) => ({ x: shown.x(tick), label }));
          return (
            <>
              {months.map(({ x }) => (
                <Upright key={x} className="grid" plot={upright} x={x} />
              ))}
              <AcrossAxis ticks={months} y={height - 5} anchor="start" away={3} />
              <line className="ground" x1={shown.left} x2={shown.right} y1={base} y2={base} />
              <rect className="lead" x={from} width={Math.max(2, to - from)} y={base - 5} height={5} />
              <Upright className="plausible" plot={upright} x={at(spread.plausible)} />
              <Upright className="hang" plot={{ top: HEAD - 4, bottom: base }} x={at(hang.on)} />
              {dots.map(({ season, carried }, index) => (
                <Dot key={season} className="flight" x={at(carried!)} y={HEAD + index * ROW + 8} r={4.5} />
              ))}
              <Words
                plot={{ left: 0, top: 0, right: width, bottom: height }}
                words={[
                  {
                    text: `${w.hangMark} ${shortDate(hang.on)}`,
                    className: 'hang-word',
                    spots: [
                      { x: at(hang.on), y: HEAD - 8, anchor: 'middle' },
                      { x: at(hang.on) - 4, y: HEAD - 8, anchor: 'start' },
                      { x: at(hang.on) + 4, y: HEAD - 8, anchor: 'end' },
                    ],
                  },
                  ...dots.map(({ season, carried }, index) => ({
                    text: String(season),
                    spots: [
                      { x: at(carried!) + 9, y: HEAD + index * ROW + 12, anchor: 'start' as const },
                      { x: at(carried!) - 9, y: HEAD + index * ROW + 12, anchor: 'end' as const },
                    ],
                  })),
                ]}
              />
            </>
          );
        }}
      </Chart>
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
    <FoldedTable
      title={w.yearByYear}
      of={insectName(line.insect)}
      rows={line.flights}
      keyOf={({ season }) => season}
      columns={[
        { head: w.earlier, value: ({ season }) => season, names: true },
        { head: w.came, said },
        { head: w.carried, value: ({ carried }) => carried, cell: ({ carried }) => (carried ? shortDate(carried) : '–') },
      ]}
    />
  );
}
