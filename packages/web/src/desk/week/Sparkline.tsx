import { day, type RateLine } from '@duskwatch/core';
import { scaleLinear, scaleSqrt } from 'd3-scale';
import { Band, Level, Line } from '../../ui/chart/marks.tsx';
import { bandPath, stepPath, stepVertices } from '../../ui/chart/steps.ts';

/** What small lines share, so that they can be compared: the season across, and the rate upward. */
export interface LineScale {
  readonly from: number;
  readonly to: number;
  readonly top: number;
  /** The line at zero with a tick on the first of each month, as a path. */
  readonly ground: string;
}

const WIDTH = 240;
const HEIGHT = 30;

const across = (from: number, to: number) => scaleLinear().domain([from, to]).range([0, WIDTH]);

/** One path for all of a page's lines: hundreds of fields are too many for an element to each month. */
export function groundPath(from: number, to: number, months: readonly number[]): string {
  const x = across(from, to);
  return `M0,${HEIGHT - 0.5}H${WIDTH}${months.map((at) => `M${x(at).toFixed(1)},${HEIGHT - 4}v3`).join('')}`;
}

/** A season in a line. The picture stretches to its cell; strokes do not. Numbers stand beside it, so it is hidden from readers. */
export function Sparkline({ line, scale }: { line: RateLine; scale: LineScale }) {
  const { top, from, to, ground } = scale;
  const x = across(from, to);
  const y = scaleSqrt()
    .domain([0, top > 0 ? top : 1])
    .range([HEIGHT - 1, 2])
    .clamp(true);
  const vertices = stepVertices(line.points);
  const last = [...line.points].reverse().find((point) => point.perNight !== null);
  return (
    <svg className="chart spark" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} height={HEIGHT} preserveAspectRatio="none" aria-hidden="true">
      <path className="spark-ground" d={ground} />
      <Band className="rate-band" d={bandPath(vertices, x, y)} />
      {line.thresholdPerNight !== null && (
        <Level className="threshold" plot={{ left: 0, right: WIDTH }} y={y(line.thresholdPerNight)} />
      )}
      <Line className="rate-line" d={stepPath(vertices, x, y)} />
      {last && (
        <line className="spark-last" x1={x(day(last.from))} x2={x(day(last.to))} y1={y(last.perNight!)} y2={y(last.perNight!)} />
      )}
    </svg>
  );
}

/** Holds the place of one. */
export const SparkPlace = () => <svg className="spark" height={HEIGHT} aria-hidden="true" />;
