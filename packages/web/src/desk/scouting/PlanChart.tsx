import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { countText } from '../../format/number.ts';
import { useWidth } from '../../ui/chart/useWidth.ts';

export interface Series {
  readonly name: string;
  /** Told apart by dashes, so that it needs no colour. */
  readonly dash: string;
  readonly points: readonly (readonly [number, number])[];
  /** Where its name stands: the index of a point. */
  readonly named: number;
}

interface Props {
  readonly title: string;
  readonly text: string;
  readonly xName: string;
  readonly yName: string;
  readonly xMost: number;
  readonly yMost: number;
  readonly series: readonly Series[];
  readonly marks: readonly { readonly at: number; readonly name: string }[];
}

const HEIGHT = 250;
const MARGIN = { top: 26, right: 14, bottom: 38, left: 46 };

/** Lines over one axis each way. The numbers stand in a table behind it, so it is a picture to a screen reader. */
export function PlanChart({ title, text, xName, yName, xMost, yMost, series, marks }: Props) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const x = scaleLinear([0, xMost], [MARGIN.left, Math.max(MARGIN.left + 1, width - MARGIN.right)]);
  const y = scaleLinear([0, yMost], [HEIGHT - MARGIN.bottom, MARGIN.top]);
  const path = line<readonly [number, number]>()
    .x(([at]) => x(at))
    .y(([, value]) => y(value))
    .digits(1);
  return (
    <div className="plan-chart" ref={ref}>
      <h3>{title}</h3>
      <p className="key">{text}</p>
      {width > 0 && (
        <svg className="strip plan-svg" width={width} height={HEIGHT} aria-hidden="true">
          {y.ticks(5).map((tick) => (
            <g key={tick}>
              <line
                className={tick === 0 ? 'ground' : 'grid'}
                x1={MARGIN.left}
                x2={width - MARGIN.right}
                y1={y(tick)}
                y2={y(tick)}
              />
              <text x={MARGIN.left - 6} y={y(tick) + 4} textAnchor="end">
                {countText(tick)}
              </text>
            </g>
          ))}
          {x.ticks(Math.max(3, Math.round(width / 90))).map((tick) => (
            <text key={tick} x={x(tick)} y={HEIGHT - MARGIN.bottom + 15} textAnchor="middle">
              {tick.toLocaleString()}
            </text>
          ))}
          <text x={width - MARGIN.right} y={HEIGHT - 6} textAnchor="end">
            {xName}
          </text>
          <text x={4} y={12}>
            {yName}
          </text>
          {marks.map(({ at, name }, index) => (
            <g key={name}>
              <line className="plan-mark" x1={x(at)} x2={x(at)} y1={MARGIN.top} y2={HEIGHT - MARGIN.bottom} />
              <text className="sample-word" x={x(at) + 3} y={MARGIN.top + 10 + index * 13}>
                {name}
              </text>
            </g>
          ))}
          {series.map(({ name, dash, points, named }) => (
            <g key={name}>
              <path className="plan-line" d={path([...points]) ?? ''} strokeDasharray={dash} />
              {points[named] && (
                <text className="threshold-word" x={x(points[named][0]) + 6} y={y(points[named][1]) - 6}>
                  {name}
                </text>
              )}
            </g>
          ))}
        </svg>
      )}
    </div>
  );
}
