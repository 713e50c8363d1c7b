import { day, degreeDaysFrom, type YearLine, type YearsView } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { shortDate } from '../../format/day.ts';
import { countText, rateText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { learnWords } from '../../text/learn.ts';
import { monthTicks } from '../../ui/chart/axis.ts';
import { useWidth } from '../../ui/chart/useWidth.ts';

const w = learnWords.years;
const ROW = 92;
const [LEFT, RIGHT, TOP] = [42, 10, 22];

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly perNight: number;
}

/** One small chart for each year under one another, on one axis and one scale. */
export function YearsChart(props: { lines: readonly YearLine[]; heat: YearsView['heat']; axis: 'calendar' | 'heat' }) {
  const { lines, heat, axis } = props;
  const [ref, width] = useWidth<HTMLDivElement>();
  const [unit] = useTemperatureUnit();
  const inUnit = (sum: number) => (heat ? degreeDaysFrom(sum, heat.rule.unit, unit) : sum);
  const drawn = lines.map((line) => ({ line, stretches: stretchesOf(line, axis, inUnit) }));
  const all = drawn.flatMap(({ stretches }) => stretches);
  const [first, last] = [Math.min(...all.map(({ from }) => from)), Math.max(...all.map(({ to }) => to))];
  const x = scaleLinear()
    .domain(axis === 'heat' ? [0, last] : [first, last])
    .range([LEFT, Math.max(LEFT + 1, width - RIGHT)]);
  const most = Math.max(0.1, ...all.map(({ perNight }) => perNight));
  const y = scaleLinear()
    .domain([0, most])
    .nice(2)
    .range([ROW - 8, TOP]);
  const ticks =
    axis === 'heat'
      ? x.ticks(width < 500 ? 4 : 8).map((at) => ({ at, label: countText(at) }))
      : monthTicks(Math.floor(first), Math.ceil(last));
  return (
    <div ref={ref} className="plot years">
      {drawn.map(({ line, stretches }) => (
        <svg key={line.year} width={width} height={ROW} aria-hidden="true">
          {ticks.map(({ at }) => (
            <line key={at} className="grid" x1={x(at)} x2={x(at)} y1={TOP} y2={ROW - 8} />
          ))}
          {y.ticks(2).map((tick) => (
            <g key={tick}>
              <line className={tick === 0 ? 'ground' : 'grid'} x1={LEFT} x2={width - RIGHT} y1={y(tick)} y2={y(tick)} />
              <text x={LEFT - 6} y={y(tick) + 4} textAnchor="end">
                {rateText(tick)}
              </text>
            </g>
          ))}
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
          <text className="plot-label" x={LEFT} y={14}>
            {line.year}
            {width >= 500 && ` · ${w.traps(line.traps, line.stations.length)}`}
            {halfText(line, axis, inUnit, unit)}
          </text>
        </svg>
      ))}
      <svg width={width} height={34} aria-hidden="true">
        {ticks.map(({ at, label }) => (
          <text key={at} x={x(at) + (axis === 'heat' ? 0 : 3)} y={12} textAnchor={axis === 'heat' ? 'middle' : 'start'}>
            {label}
          </text>
        ))}
        <text x={width - RIGHT} y={30} textAnchor="end">
          {axis === 'heat' ? w.heatShort(unit) : w.scale}
        </text>
      </svg>
    </div>
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
