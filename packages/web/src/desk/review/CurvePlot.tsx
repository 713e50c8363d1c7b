import { scaleLinear, scaleSqrt } from 'd3-scale';
import { area, line } from 'd3-shape';
import { useWidth } from '../../ui/chart/useWidth.ts';

export interface CurveVertex {
  readonly at: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

interface Mark {
  readonly at: number;
  readonly label: string;
}

export interface CurvePlotProps {
  readonly curve: readonly CurveVertex[];
  readonly xLabel: string;
  readonly yLabel: string;
  readonly xText: (value: number) => string;
  readonly yText: (value: number) => string;
  readonly yMost: number;
  /** Spreads out what lies near nought. */
  readonly xRoot?: boolean;
  readonly dots?: readonly { readonly key: string; readonly at: number; readonly value: number }[];
  /** A level to hold the curve against. */
  readonly level?: Mark;
  /** Places on the axis below, first the one that matters most. */
  readonly places?: readonly Mark[];
}

const HEIGHT = 230;
const [LEFT, RIGHT, TOP, FOOT] = [46, 12, 18, 40];

/** A fitted curve with its interval, and what it was fitted to. */
export function CurvePlot(props: CurvePlotProps) {
  const { curve, xText, yText, dots = [], level, places = [] } = props;
  const [ref, width] = useWidth<HTMLDivElement>();
  const most = Math.max(...curve.map(({ at }) => at), ...dots.map(({ at }) => at), ...places.map(({ at }) => at), 0.1);
  const bottom = HEIGHT - FOOT;
  const x = (props.xRoot ? scaleSqrt() : scaleLinear()).domain([0, most]).range([LEFT, Math.max(LEFT + 1, width - RIGHT)]);
  const y = scaleLinear().domain([0, props.yMost]).range([bottom, TOP]).clamp(true);
  const band = area<CurveVertex>()
    .x(({ at }) => x(at))
    .y0(({ low }) => y(low))
    .y1(({ high }) => y(high));
  const middle = line<CurveVertex>()
    .x(({ at }) => x(at))
    .y(({ value }) => y(value));
  return (
    <div ref={ref} className="plot">
      <svg width={width} height={HEIGHT} aria-hidden="true">
        {y.ticks(4).map((tick) => (
          <g key={tick}>
            <line className={tick === 0 ? 'ground' : 'grid'} x1={LEFT} x2={width - RIGHT} y1={y(tick)} y2={y(tick)} />
            <text x={LEFT - 6} y={y(tick) + 4} textAnchor="end">
              {yText(tick)}
            </text>
          </g>
        ))}
        {x.ticks(width < 500 ? 4 : 7).map((tick) => (
          <text key={tick} x={x(tick)} y={bottom + 16} textAnchor="middle">
            {xText(tick)}
          </text>
        ))}
        <text x={LEFT} y={11}>
          {props.yLabel}
        </text>
        <text x={width - RIGHT} y={HEIGHT - 6} textAnchor="end">
          {props.xLabel}
        </text>
        <path className="curve-band" d={band([...curve]) ?? ''} />
        <path className="curve" d={middle([...curve]) ?? ''} />
        {dots.map(({ key, at, value }) => (
          <circle key={key} className="sample" cx={x(at)} cy={y(value)} r={3.5} />
        ))}
        {level && (
          <g>
            <line className="level" x1={LEFT} x2={width - RIGHT} y1={y(level.at)} y2={y(level.at)} />
            <text className="plot-label" x={width - RIGHT} y={y(level.at) - 5} textAnchor="end">
              {level.label}
            </text>
          </g>
        )}
        {places.map(({ at, label }, index) => {
          const turned = x(at) > width - 150;
          return (
            <g key={label} className={index === 0 ? 'place first' : 'place'}>
              <line x1={x(at)} x2={x(at)} y1={TOP} y2={bottom} />
              <text
                className="plot-label"
                x={x(at) + (turned ? -5 : 5)}
                y={TOP + 10 + 16 * index}
                textAnchor={turned ? 'end' : 'start'}
              >
                {label}
              </text>
            </g>
          );
        })}
      </svg>
    </div>
  );
}
