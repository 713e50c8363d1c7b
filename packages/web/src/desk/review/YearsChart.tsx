import { day, degreeDaysFrom, type YearLine, type YearsView } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { shortDate } from '../../format/day.ts';
import { countText, rateText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { reviewWords } from '../../text/review.ts';
import { monthTicks } from '../../ui/chart/axis.ts';
import { Chart, type Margins, plotIn } from '../../ui/chart/Chart.tsx';
import { AcrossAxis, AxisNames, HeightAxis, Upright } from '../../ui/chart/marks.tsx';

const w = reviewWords.years;
const ROW = 92;
const AXIS = 34;
const MARGINS: Margins = { left: 42, right: 10, top: 22, foot: 8 };

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly perNight: number;
}

/** One small chart for each year under one another, on one axis and one scale. */
export function YearsChart(props: { lines: readonly YearLine[]; heat: YearsView['heat']; axis: 'calendar' | 'heat' }) {
  const { lines, heat, axis } = props;
  const [unit] = useTemperatureUnit();
  const inUnit = (sum: number) => (heat ? degreeDaysFrom(sum, heat.rule.unit, unit) : sum);
  const drawn = lines.map((line) => ({ line, stretches: stretchesOf(line, axis, inUnit) }));
  const all = drawn.flatMap(({ stretches }) => stretches);
  const [first, last] = [Math.min(...all.map(({ from }) => from)), Math.max(...all.map(({ to }) => to))];
  const most = Math.max(0.1, ...all.map(({ perNight }) => perNight));
  return (
    <Chart height={lines.length * ROW + AXIS} className="years">
      {(width) => {
        const plot = plotIn(width, ROW, MARGINS);
        const x = scaleLinear()
          .domain(axis === 'heat' ? [0, last] : [first, last])
          .range([plot.left, plot.right]);
        const y = scaleLinear().domain([0, most]).nice(2).range([plot.bottom, plot.top]);
        const ticks =
          axis === 'heat'
            ? x.ticks(width < 500 ? 4 : 8).map((at) => ({ x: x(at), label: countText(at) }))
            : monthTicks(Math.floor(first), Math.ceil(last)).map(({ at, label }) => ({ x: x(at), label }));
        return (
          <>
            {drawn.map(({ line, stretches }, row) => (
              <g key={line.year} transform={`translate(0 ${row * ROW})`}>
                {ticks.map((tick) => (
                  <Upright key={tick.x} className="grid" plot={plot} x={tick.x} />
                ))}
                <HeightAxis plot={plot} y={y} ticks={y.ticks(2)} text={rateText} />
                {stretches.map(({ from, to, perNight }) => (
                  <rect
                    key={from}
                    className="year-catch"
                    x={x(from)}
                    width={Math.max(0.5, x(to) - x(from))}
                    y={y(perNight)}
                    height={Math.max(0, y(0) - y(perNight))}
                  />
                ))}
                <text className="word" x={plot.left} y={14}>
                  {line.year}
                  {width >= 500 && ` · ${w.traps(line.traps, line.stations.length)}`}
                  {halfText(line, axis, inUnit, unit)}
                </text>
              </g>
            ))}
            <AcrossAxis
              y={lines.length * ROW + 12}
              ticks={ticks}
              {...(axis === 'heat' ? {} : { anchor: 'start' as const, away: 3 })}
            />
            <AxisNames
              across={axis === 'heat' ? w.heatShort(unit) : w.scale}
              plot={plot}
              height={lines.length * ROW + AXIS + 2}
            />
          </>
        );
      }}
    </Chart>
  );
}

function stretchesOf(line: YearLine, axis: 'calendar' | 'heat', inUnit: (sum: number) => number): Stretch[] {
  return line.points.flatMap(({ drawnFrom, drawnTo, heatFrom, heatTo, perNight }) => {
    if (perNight === null) return [];
    if (axis === 'calendar') return [{ from: day(drawnFrom), to: day(drawnTo), perNight }];
    return heatFrom === null || heatTo === null ? [] : [{ from: inUnit(heatFrom), to: inUnit(heatTo), perNight }];
  });
}

/** When half of the season's catch was in. */
function halfText(line: YearLine, axis: 'calendar' | 'heat', inUnit: (sum: number) => number, unit: 'F' | 'C'): string {
  if (line.open) return ` · ${w.soFar}`;
  const half = line.points.find(({ shareSoFar }) => shareSoFar !== null && shareSoFar >= 0.5);
  if (!half) return '';
  if (axis === 'calendar') return ` · ${w.half(shortDate(half.to))}`;
  return half.heatTo === null ? ` · ${w.noHeatDays}` : ` · ${w.half(heatText(inUnit(half.heatTo), unit, unit))}`;
}
