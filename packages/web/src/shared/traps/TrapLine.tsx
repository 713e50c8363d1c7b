import { day, type TrapView } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { rateText } from '../../format/number.ts';
import { monthTicks } from '../../ui/chart/axis.ts';
import { Chart, plotIn } from '../../ui/chart/Chart.tsx';
import { Band, Level, Line, Upright } from '../../ui/chart/marks.tsx';
import { bandPath, stepPath, stepVertices } from '../../ui/chart/steps.ts';

const HEIGHT = 46;

/** A trap's season small. `top`: the scale it shares with others of its design. */
export function TrapLine({ trap, top, from }: { trap: TrapView; top: number; from: number }) {
  const { chart, on } = trap;
  const vertices = stepVertices(chart.points);
  return (
    <Chart height={HEIGHT}>
      {(width) => {
        const plot = plotIn(width, HEIGHT, { left: 30, right: 2, top: 4, foot: 4 });
        const x = scaleLinear()
          .domain([from, day(on) + 1])
          .range([plot.left, plot.right])
          .clamp(true);
        const y = scaleLinear().domain([0, top]).range([plot.bottom, plot.top]).clamp(true);
        return (
          <>
            {monthTicks(from, day(on)).map(({ at }) => (
              <Upright key={at} className="month" plot={plot} x={x(at)} />
            ))}
            <line className="ground" x1={plot.left} x2={plot.right} y1={plot.bottom} y2={plot.bottom} />
            <text className="scale" x={plot.left - 4} y={plot.top + 8} textAnchor="end">
              {rateText(top)}
            </text>
            <Band className="rate-band" d={bandPath(vertices, x, y)} />
            <Line className="rate-line" d={stepPath(vertices, x, y)} />
            {chart.threshold && <Level className="threshold" plot={plot} y={y(chart.threshold.perNight)} />}
          </>
        );
      }}
    </Chart>
  );
}

/** The height that the lines of traps of one design share: their highest rate or threshold. */
export function sharedTop(traps: readonly TrapView[]): number {
  const heights = traps.flatMap(({ chart: { points, threshold } }) => [
    threshold?.perNight ?? 0,
    ...points.map(({ perNight }) => perNight ?? 0),
  ]);
  return Math.max(0.05, ...heights);
}
