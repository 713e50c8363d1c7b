import { scaleLinear, scaleSqrt } from 'd3-scale';
import { area, line } from 'd3-shape';
import { Chart, type Margins, plotIn } from '../../ui/chart/Chart.tsx';
import { besideUpright } from '../../ui/chart/labels.ts';
import {
  AcrossAxis,
  AxisNames,
  Band,
  Dot,
  type EndWord,
  EndWords,
  endBoxes,
  HeightAxis,
  Level,
  Line,
  Upright,
  Words,
} from '../../ui/chart/marks.tsx';

interface CurveVertex {
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
const MARGINS: Margins = { left: 46, right: 12, top: 18, foot: 40 };

/** A fitted curve with its interval, and what it was fitted to. */
export function CurvePlot(props: CurvePlotProps) {
  return (
    <Chart height={HEIGHT} className="curve-plot">
      {(width) => <Drawing {...props} width={width} />}
    </Chart>
  );
}

function Drawing(props: CurvePlotProps & { width: number }) {
  const { width, curve, xText, yText, dots = [], level, places = [] } = props;
  const plot = plotIn(width, HEIGHT, MARGINS);
  const most = Math.max(...curve.map(({ at }) => at), ...dots.map(({ at }) => at), ...places.map(({ at }) => at), 0.1);
  const x = (props.xRoot ? scaleSqrt() : scaleLinear()).domain([0, most]).range([plot.left, plot.right]);
  const y = scaleLinear().domain([0, props.yMost]).range([plot.bottom, plot.top]).clamp(true);
  const band = area<CurveVertex>()
    .x(({ at }) => x(at))
    .y0(({ low }) => y(low))
    .y1(({ high }) => y(high))
    .digits(1);
  const middle = line<CurveVertex>()
    .x(({ at }) => x(at))
    .y(({ value }) => y(value))
    .digits(1);
  const ends: readonly EndWord[] = level?.label ? [{ text: level.label, y: y(level.at) }] : [];
  return (
    <>
      <HeightAxis plot={plot} y={y} ticks={y.ticks(4)} text={yText} />
      <AcrossAxis y={plot.bottom + 16} ticks={x.ticks(width < 500 ? 4 : 7).map((tick) => ({ x: x(tick), label: xText(tick) }))} />
      <AxisNames up={props.yLabel} across={props.xLabel} plot={plot} height={HEIGHT} />
      <Band d={band([...curve]) ?? ''} />
      <Line d={middle([...curve]) ?? ''} />
      {dots.map(({ key, at, value }) => (
        <Dot key={key} className="sample" x={x(at)} y={y(value)} />
      ))}
      {level && <Level plot={plot} y={y(level.at)} />}
      {places.map(({ at, label }, index) => (
        <Upright key={label} plot={plot} x={x(at)} className={index === 0 ? 'place first' : 'place'} />
      ))}
      <EndWords words={ends} plot={plot} />
      <Words
        words={places.map(({ at, label }) => ({ text: label, spots: besideUpright(x(at), plot) }))}
        plot={{ ...plot, right: width }}
        taken={endBoxes(ends, plot)}
      />
    </>
  );
}
