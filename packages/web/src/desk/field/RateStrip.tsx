import { day, type FieldInsectView, type SeasonFlights } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { rateText } from '../../format/number.ts';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { besideUpright } from '../../ui/chart/labels.ts';
import { Band, type EndWord, EndWords, endBoxes, HeightAxis, Level, Line, Upright, Words } from '../../ui/chart/marks.tsx';
import { bandPath, stepPath, stepVertices } from '../../ui/chart/steps.ts';
import { EarlierLines, earlierEnds } from './EarlierLines.tsx';
import { FlightCurves, flightWords } from './FlightCurves.tsx';
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
  const plot = { left: frame.left, right: frame.right, top: TOP, bottom: HEIGHT };
  const drawn = { frame, y };
  const manyDesigns = insect.lines.length > 1;
  const ends: readonly EndWord[] = [
    ...insect.lines.flatMap(({ design, thresholdPerNight: threshold }) => {
      if (threshold === null) return [];
      const figure = frame.width > 700 ? words.field.threshold(rateText(threshold)) : rateText(threshold);
      return [{ text: manyDesigns ? `${figure}, ${wording.design[design]}` : figure, y: y(threshold) }];
    }),
    ...earlierEnds({ seasons: insect.earlierSeasons, ...drawn }),
  ];
  return (
    <Strip {...props} height={HEIGHT} foot={6} className="rate">
      <Hatch id={hatch} />
      <HeightAxis plot={plot} y={y} ticks={y.ticks(4)} text={rateText} />
      {flights && <FlightCurves flights={flights} {...drawn} />}
      <EarlierLines seasons={insect.earlierSeasons} {...drawn} />
      {insect.treatments.map(({ appliedOn, product, protectsUntil }) => {
        const from = frame.x(day(appliedOn));
        const to = protectsUntil ? frame.x(day(protectsUntil) + 1) : from;
        return (
          <g key={`${appliedOn}|${product}`} className="treatment">
            <rect fill={`url(#${hatch})`} x={from} y={TOP} width={Math.max(0, to - from)} height={HEIGHT - TOP} />
            <Upright plot={{ top: TOP - 4, bottom: HEIGHT }} x={from} />
          </g>
        );
      })}
      {insect.lines.map((line, index) => {
        const vertices = stepVertices(line.points);
        return (
          <g key={line.design} className={`line-${index % 3}`}>
            <Band className="rate-band" d={bandPath(vertices, frame.x, y)} />
            <Line className="rate-line" d={stepPath(vertices, frame.x, y)} />
          </g>
        );
      })}
      {insect.lines.map(
        ({ design, thresholdPerNight: threshold }) =>
          threshold !== null && <Level key={design} className="threshold" plot={plot} y={y(threshold)} />,
      )}
      <EndWords words={ends} plot={plot} />
      <Words
        plot={{ ...plot, top: 0, right: frame.width }}
        taken={endBoxes(ends, plot)}
        words={[
          ...insect.treatments.map(({ appliedOn }) => ({
            text: words.field.treated,
            className: 'treated-word',
            spots: besideUpright(frame.x(day(appliedOn)) - 2, { top: 0, bottom: HEIGHT }),
          })),
          ...(flights ? flightWords({ flights, ...drawn }) : []),
        ]}
      />
    </Strip>
  );
}
