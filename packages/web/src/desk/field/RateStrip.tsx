import { day, type FieldInsectView, type SeasonFlights } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { rateText } from '../../format/number.ts';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { bandPath, stepPath, stepVertices } from '../../ui/chart/steps.ts';
import { EarlierLines } from './EarlierLines.tsx';
import { FlightCurves } from './FlightCurves.tsx';
import { Hatch } from './marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 168;
const TOP = 16;

/** The top of the axis holds every rate of this season and the threshold; an interval or an earlier season may run off it. */
function topOf(insect: FieldInsectView): number {
  const rates = insect.lines.flatMap((line) => [line.thresholdPerNight ?? 0, ...line.points.map((point) => point.perNight ?? 0)]);
  const highs = insect.lines.flatMap((line) => line.points.map((point) => point.high ?? 0));
  const before = insect.earlierSeasons.flatMap((season) => season.points.map((point) => point.perNight ?? 0));
  const rate = Math.max(0.1, ...rates);
  return Math.min(Math.max(rate, ...highs, ...before), rate * 1.5);
}

export function RateStrip({
  insect,
  flights,
  ...props
}: StripProps & { insect: FieldInsectView; flights: SeasonFlights | null }) {
  const { frame } = props;
  const hatch = useId();
  const y = scaleLinear()
    .domain([0, topOf(insect)])
    .nice(4)
    .range([HEIGHT - 1, TOP])
    .clamp(true);
  const wording = useWording();
  return (
    <Strip {...props} height={HEIGHT} foot={6} className="rate">
      <Hatch id={hatch} />
      {y.ticks(4).map((tick) => (
        <g key={tick}>
          <line className={tick === 0 ? 'ground' : 'grid'} x1={frame.left} x2={frame.right} y1={y(tick)} y2={y(tick)} />
          <text className="scale" x={frame.left - 6} y={y(tick) + 4} textAnchor="end">
            {rateText(tick)}
          </text>
        </g>
      ))}
      {flights && <FlightCurves flights={flights} frame={frame} y={y} />}
      <EarlierLines seasons={insect.earlierSeasons} frame={frame} y={y} />
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
      {insect.lines.map(
        ({ design, thresholdPerNight: threshold }) =>
          threshold !== null && (
            <g key={design}>
              <line className="threshold" x1={frame.left} x2={frame.right} y1={y(threshold)} y2={y(threshold)} />
              <text className="threshold-word" x={frame.right - 4} y={y(threshold) - 4} textAnchor="end">
                {frame.width > 700 ? words.field.threshold(rateText(threshold)) : rateText(threshold)}
                {insect.lines.length > 1 && `, ${wording.design[design]}`}
              </text>
            </g>
          ),
      )}
    </Strip>
  );
}
