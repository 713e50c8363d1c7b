import { day, type RateLine } from '@duskwatch/core';
import { Band, Level, Line } from '../../ui/chart/marks.tsx';
import { bandPath, stepPath, stepVertices } from '../../ui/chart/steps.ts';
import { HEIGHT, type LineScale, RULE_Y, WIDTH } from './line-scale.ts';

/** A season in a line. The picture stretches to its cell; strokes do not. Numbers stand beside it, so it is hidden from readers. */
export function Sparkline({ line, scale }: { line: RateLine; scale: LineScale }) {
  const { x, y, ground } = scale;
  const vertices = stepVertices(line.points);
  const last = line.points.findLast((point) => point.perNight !== null);
  return (
    <svg className="chart spark" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} height={HEIGHT} preserveAspectRatio="none" aria-hidden="true">
      <path className="spark-ground" d={ground} />
      <Band className="rate-band" d={bandPath(vertices, x, y)} />
      {line.thresholdPerNight !== null && <Level className="threshold" plot={{ left: 0, right: WIDTH }} y={RULE_Y} />}
      <Line className="rate-line" d={stepPath(vertices, x, y)} />
      {last && (
        <line className="spark-last" x1={x(day(last.from))} x2={x(day(last.to))} y1={y(last.perNight!)} y2={y(last.perNight!)} />
      )}
    </svg>
  );
}

/** Holds the place of one. */
export const SparkPlace = () => <svg className="spark" height={HEIGHT} aria-hidden="true" />;
