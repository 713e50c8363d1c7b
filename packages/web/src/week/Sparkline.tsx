import { day, type SeasonLine } from '@duskwatch/core';
import { scaleLinear, scaleSqrt } from 'd3-scale';
import { bandPath, stepPath, stepVertices } from '../draw/steps.ts';

/** What small lines share, so that they can be compared: the season across, and the rate upward. */
export interface LineScale {
  readonly from: number;
  readonly to: number;
  readonly top: number;
  /** The first of each month. */
  readonly months: readonly number[];
}

const WIDTH = 240;

/** A season in a line. The picture stretches to its cell; strokes do not. Numbers stand beside it, so it is hidden from readers. */
export function Sparkline({ line, scale, height = 30 }: { line: SeasonLine; scale: LineScale; height?: number }) {
  const { top, from, to, months } = scale;
  const x = scaleLinear().domain([from, to]).range([0, WIDTH]);
  const y = scaleSqrt()
    .domain([0, top > 0 ? top : 1])
    .range([height - 1, 2])
    .clamp(true);
  const vertices = stepVertices(line.points);
  const last = [...line.points].reverse().find((point) => point.perNight !== null);
  return (
    <svg className="spark" viewBox={`0 0 ${WIDTH} ${height}`} height={height} preserveAspectRatio="none" aria-hidden="true">
      {months.map((at) => (
        <line key={at} className="spark-month" x1={x(at)} x2={x(at)} y1={height - 4} y2={height - 1} />
      ))}
      <line className="spark-ground" x1={0} x2={WIDTH} y1={height - 0.5} y2={height - 0.5} />
      <path className="rate-band" d={bandPath(vertices, x, y)} />
      {line.thresholdPerNight !== null && (
        <line className="threshold" x1={0} x2={WIDTH} y1={y(line.thresholdPerNight)} y2={y(line.thresholdPerNight)} />
      )}
      <path className="rate-line" d={stepPath(vertices, x, y)} />
      {last && (
        <line className="spark-last" x1={x(day(last.from))} x2={x(day(last.to))} y1={y(last.perNight!)} y2={y(last.perNight!)} />
      )}
    </svg>
  );
}
