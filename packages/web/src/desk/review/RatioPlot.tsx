import { scaleLog } from 'd3-scale';
import { rateText } from '../../format/number.ts';
import { reviewWords } from '../../text/review.ts';
import { Chart, plotIn } from '../../ui/chart/Chart.tsx';
import { AcrossAxis, AxisNames, Dot } from '../../ui/chart/marks.tsx';

const w = reviewWords.designs;

export interface DrawnRatio {
  readonly label: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

const ROW = 44;
const FOOT = 34;
const TICKS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.33, 0.5, 1, 2, 3, 5, 10, 20, 50, 100];

/** A dot and its interval for each ratio, on an axis on which half and twice are equally far from 1. */
export function RatioPlot({ ratios }: { ratios: readonly DrawnRatio[] }) {
  const bottom = ratios.length * ROW;
  const far = Math.max(2.2, ...ratios.flatMap(({ low, high }) => [high, 1 / low].filter(Number.isFinite)));
  const most = Math.min(120, far * 1.1);
  return (
    <Chart height={bottom + FOOT} className="ratio-plot">
      {(width) => {
        const plot = plotIn(width, bottom + FOOT, { left: 8, right: 8, top: 0, foot: FOOT });
        const x = scaleLog()
          .domain([1 / most, most])
          .range([plot.left, plot.right])
          .clamp(true);
        const ticks = TICKS.filter((tick) => tick >= 1 / most && tick <= most);
        return (
          <>
            {ticks.map((tick) => (
              <line key={tick} className={tick === 1 ? 'equal' : 'grid'} x1={x(tick)} x2={x(tick)} y1={0} y2={bottom} />
            ))}
            <AcrossAxis
              y={bottom + 14}
              ticks={ticks.map((tick) => ({ x: x(tick), label: tick === 1 ? w.equal : rateText(tick) }))}
            />
            <AxisNames across={w.axis} plot={plot} height={bottom + FOOT + 2} />
            {ratios.map(({ label, value, low, high }, row) => (
              <g key={label}>
                <text className="word" x={plot.left} y={row * ROW + 14}>
                  {label}
                </text>
                <line className="interval" x1={x(low)} x2={x(high)} y1={row * ROW + 28} y2={row * ROW + 28} />
                <Dot x={x(value)} y={row * ROW + 28} r={5} />
              </g>
            ))}
          </>
        );
      }}
    </Chart>
  );
}
