import { day, type FieldInsectView } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { bandPath, stepPath, stepVertices } from '../draw/steps.ts';
import { rateText } from '../format/number.ts';
import { words } from '../words/index.ts';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 168;
const TOP = 16;

/** The top of the axis holds every rate and the threshold; a wide interval may run off it, a rate never does. */
function topOf(insect: FieldInsectView): number {
  const rates = insect.lines.flatMap((line) => [line.thresholdPerNight ?? 0, ...line.points.map((point) => point.perNight ?? 0)]);
  const highs = insect.lines.flatMap((line) => line.points.map((point) => point.high ?? 0));
  const rate = Math.max(0.1, ...rates);
  return Math.min(Math.max(rate, ...highs), rate * 1.5);
}

export function RateStrip({ insect, ...props }: StripProps & { insect: FieldInsectView }) {
  const { frame } = props;
  const hatch = useId();
  const y = scaleLinear()
    .domain([0, topOf(insect)])
    .nice(4)
    .range([HEIGHT - 1, TOP])
    .clamp(true);
  const thresholds = [...new Set(insect.lines.map((line) => line.thresholdPerNight).filter((each) => each !== null))];
  return (
    <Strip {...props} height={HEIGHT} className="rate">
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="hatch" x1="0" x2="0" y1="0" y2="6" />
        </pattern>
      </defs>
      {y.ticks(4).map((tick) => (
        <g key={tick}>
          <line className={tick === 0 ? 'ground' : 'grid'} x1={frame.left} x2={frame.right} y1={y(tick)} y2={y(tick)} />
          <text className="scale" x={frame.left - 6} y={y(tick) + 4} textAnchor="end">
            {rateText(tick)}
          </text>
        </g>
      ))}
      {insect.treatments.map((each) => {
        const from = frame.x(day(each.appliedOn));
        const to = each.protectsUntil ? frame.x(day(each.protectsUntil) + 1) : from;
        return (
          <g key={`${each.appliedOn}|${each.product}`} className="treatment">
            <rect fill={`url(#${hatch})`} x={from} y={TOP} width={Math.max(0, to - from)} height={HEIGHT - TOP} />
            <line x1={from} x2={from} y1={TOP - 4} y2={HEIGHT} />
            <text x={from + 3} y={TOP - 4}>
              {words.field.treated}
            </text>
          </g>
        );
      })}
      {insect.lines.map((line, index) => {
        const vertices = stepVertices(line.points);
        return (
          <g key={line.design} className={`line-${index % 3}`}>
            <path className="rate-band" d={bandPath(vertices, frame.x, y)} />
            <path className="rate-line" d={stepPath(vertices, frame.x, y)} />
          </g>
        );
      })}
      {thresholds.map((threshold) => (
        <g key={threshold}>
          <line className="threshold" x1={frame.left} x2={frame.right} y1={y(threshold)} y2={y(threshold)} />
          <text className="threshold-word" x={frame.left + 5} y={y(threshold) - 4}>
            {words.field.threshold(rateText(threshold))}
          </text>
        </g>
      ))}
    </Strip>
  );
}
