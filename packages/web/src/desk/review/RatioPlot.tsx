import { scaleLog } from 'd3-scale';
import { rateText } from '../../format/number.ts';
import { learnWords } from '../../text/learn.ts';
import { useWidth } from '../../ui/chart/useWidth.ts';

const w = learnWords.designs;

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
  const [ref, width] = useWidth<HTMLDivElement>();
  const far = Math.max(2.2, ...ratios.flatMap(({ low, high }) => [high, 1 / low].filter(Number.isFinite)));
  const most = Math.min(120, far * 1.1);
  const x = scaleLog()
    .domain([1 / most, most])
    .range([8, Math.max(9, width - 8)])
    .clamp(true);
  const ticks = TICKS.filter((tick) => tick >= 1 / most && tick <= most);
  const bottom = ratios.length * ROW;
  return (
    <div ref={ref} className="plot">
      <svg width={width} height={bottom + FOOT} aria-hidden="true">
        {ticks.map((tick) => (
          <g key={tick}>
            <line className={tick === 1 ? 'equal' : 'grid'} x1={x(tick)} x2={x(tick)} y1={0} y2={bottom} />
            <text x={x(tick)} y={bottom + 14} textAnchor="middle">
              {tick === 1 ? w.equal : rateText(tick)}
            </text>
          </g>
        ))}
        <text x={width - 8} y={bottom + 30} textAnchor="end">
          {w.axis}
        </text>
        {ratios.map(({ label, value, low, high }, row) => (
          <g key={label}>
            <text className="plot-label" x={8} y={row * ROW + 14}>
              {label}
            </text>
            <line className="interval" x1={x(low)} x2={x(high)} y1={row * ROW + 28} y2={row * ROW + 28} />
            <circle className="dot" cx={x(value)} cy={row * ROW + 28} r={5} />
          </g>
        ))}
      </svg>
    </div>
  );
}
