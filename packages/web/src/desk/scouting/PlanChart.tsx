import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { countText } from '../../format/number.ts';
import { Chart, type Margins, plotIn } from '../../ui/chart/Chart.tsx';
import { alongLine, around, besideUpright } from '../../ui/chart/labels.ts';
import { AcrossAxis, AxisNames, HeightAxis, Line, Upright, type Word, Words } from '../../ui/chart/marks.tsx';

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
const MARGINS: Margins = { left: 46, right: 14, top: 26, foot: 38 };

/** Lines over one axis each way. The numbers stand in a table behind it. */
export function PlanChart({ title, text, ...drawn }: Props) {
  return (
    <div className="plan-chart">
      <h3>{title}</h3>
      <p className="key">{text}</p>
      <Chart height={HEIGHT}>{(width) => <Drawing {...drawn} width={width} />}</Chart>
    </div>
  );
}

function Drawing({ width, xName, yName, xMost, yMost, series, marks }: Omit<Props, 'title' | 'text'> & { width: number }) {
  const plot = plotIn(width, HEIGHT, MARGINS);
  const x = scaleLinear([0, xMost], [plot.left, plot.right]);
  const y = scaleLinear([0, yMost], [plot.bottom, plot.top]);
  const path = line<readonly [number, number]>()
    .x(([at]) => x(at))
    .y(([, value]) => y(value))
    .digits(1);
  const taken = series.flatMap(({ points }) => alongLine(points.map(([at, value]) => [x(at), y(value)])));
  const words: readonly Word[] = [
    ...marks.map(({ at, name }) => ({ text: name, spots: besideUpright(x(at), plot) })),
    ...series.flatMap(({ name, points, named }) => {
      const start = points[named];
      if (!start) return [];
      // Where it was asked for; else at any other point of its own line.
      const along = [start, ...points.filter((_, index) => index % 8 === 0)];
      return [{ text: name, spots: along.flatMap(([at, value]) => around(x(at), y(value))) }];
    }),
  ];
  return (
    <>
      <HeightAxis plot={plot} y={y} ticks={y.ticks(5)} text={countText} />
      <AcrossAxis
        y={plot.bottom + 15}
        ticks={x.ticks(Math.max(3, Math.round(width / 90))).map((tick) => ({ x: x(tick), label: countText(tick) }))}
      />
      <AxisNames up={yName} across={xName} plot={plot} height={HEIGHT} />
      {marks.map(({ at, name }) => (
        <Upright key={name} className="plan-mark" plot={plot} x={x(at)} />
      ))}
      {series.map(({ name, dash, points }) => (
        <Line key={name} dash={dash} d={path([...points]) ?? ''} />
      ))}
      <Words words={words} plot={plot} taken={taken} />
    </>
  );
}
