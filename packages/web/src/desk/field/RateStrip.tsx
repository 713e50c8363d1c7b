import { day, type FieldInsectView, type RateLine, type RatePoint, type SeasonFlights } from '@duskwatch/core';
import { useId } from 'react';
import { rateText } from '../../format/number.ts';
import { fieldPageWords } from '../../text/field-page.ts';
import { useWording } from '../../text/wording.ts';
import { boxOf } from '../../ui/chart/labels.ts';
import { Band, type EndWord, EndWords, endBoxes, HeightAxis, Level, Line, Words } from '../../ui/chart/marks.tsx';
import { bandPath, stepPath, stepVertices } from '../../ui/chart/steps.ts';
import { EarlierLines, earlierEnds } from './EarlierLines.tsx';
import { FlightCurves, flightWords } from './FlightCurves.tsx';
import { Hatch } from './marks.tsx';
import { rateScale, ticksOf } from './rate-scale.ts';
import { Strip, type StripProps } from './Strip.tsx';
import { isWeak } from './weak.ts';

const HEIGHT = 150;
const TOP = 34;
const TITLE = 13;
const w = fieldPageWords.chart;

/**
 * The season of one trap design on a scale of its own, with its rule written on the line. An interval that leaves the scale
 * is open at the top, with an arrow and its figure; nights without a fit trap are gaps.
 */
export function RateStrip({
  insect,
  line,
  flights,
  ...props
}: StripProps & { insect: FieldInsectView; line: RateLine; flights: SeasonFlights | null }) {
  const { frame } = props;
  const hatch = useId();
  const wording = useWording();
  const plot = { left: frame.left, right: frame.right, top: TOP, bottom: HEIGHT };
  const y = rateScale(line, { top: TOP, bottom: HEIGHT - 1 });
  const most = y.domain()[1]!;
  const seasons = insect.earlierSeasons.filter(({ design }) => design === line.design);
  const ownFlights = flights?.design === line.design ? flights : null;
  const drawn = { frame, y };
  const ends: readonly EndWord[] = earlierEnds({ seasons, ...drawn });
  const threshold = line.thresholdPerNight;
  const open = line.points.filter((point) => point.perNight !== null && (point.high ?? 0) > most);
  const [weak, sound] = split(line.points, (point) => isWeak(point, insect, line.design));
  const rule =
    insect.rules.find((each) => each.inUse && each.design === line.design) ??
    insect.rules.find(({ design }) => design === line.design);
  const ruleWord = threshold === null ? null : w.rule(rule?.may === 'send-scouting' ? w.scout : w.decide, rateText(threshold));
  const title = w.strip(wording.design[line.design]);
  // Under the rule's line where it lies near the top, so that its words never leave the strip.
  const ruleY = threshold === null ? 0 : y(threshold) < TOP + 16 ? y(threshold) + 13 : y(threshold) - 4;
  const taken = [
    ...endBoxes(ends, plot),
    boxOf({ x: frame.left, y: TITLE, anchor: 'start' }, title),
    ...(ruleWord === null ? [] : [boxOf({ x: frame.left + 5, y: ruleY, anchor: 'start' }, ruleWord)]),
  ];
  const steps = (rule?.inUse ? rule.steps : []).filter(({ fromPerNight }) => fromPerNight !== threshold && fromPerNight < most);
  return (
    <Strip {...props} height={HEIGHT} foot={6} className="rate">
      <Hatch id={hatch} />
      <text className="design-title" x={frame.left} y={TITLE}>
        {title}
      </text>
      <HeightAxis plot={plot} y={y} ticks={ticksOf(y, 22)} text={rateText} />
      {ownFlights && <FlightCurves flights={ownFlights} {...drawn} />}
      <EarlierLines seasons={seasons} {...drawn} />
      {insect.treatments.map(({ appliedOn, product, coversUntil, protectsUntil }) => {
        const until = coversUntil ?? protectsUntil;
        const [from, to] = [frame.x(day(appliedOn)), until === null ? frame.x(day(appliedOn)) : frame.x(day(until))];
        return (
          <rect
            key={`${appliedOn}|${product}`}
            className="covered-span"
            fill={`url(#${hatch})`}
            x={from}
            y={TOP}
            width={Math.max(1.5, to - from)}
            height={HEIGHT - TOP}
          />
        );
      })}
      <Band className="rate-band" d={bandPath(stepVertices(sound), frame.x, y)} />
      <Band className="rate-band weak" d={bandPath(stepVertices(weak), frame.x, y)} />
      <Line className="rate-line" d={stepPath(stepVertices(line.points), frame.x, y)} />
      {steps.map(({ fromPerNight }) => (
        <Level key={fromPerNight} className="rule-step" plot={plot} y={y(fromPerNight)} />
      ))}
      {threshold !== null && <Level className="threshold" plot={plot} y={y(threshold)} />}
      {open.map((point) => {
        const x = middleOf(point, frame.x);
        return <path key={point.from} className="open-end" d={`M${x},${TOP + 6}V${TOP - 5}m-4,5l4,-5l4,5`} />;
      })}
      {ruleWord !== null && (
        <text className="word rule-word" x={frame.left + 5} y={ruleY}>
          {ruleWord}
        </text>
      )}
      <EndWords words={ends} plot={plot} />
      <Words
        plot={{ ...plot, top: 0, right: frame.width }}
        taken={taken}
        words={[
          ...byHeight(open).map((point) => ({
            text: w.upTo(rateText(point.high!)),
            className: 'open-word',
            spots: [
              { x: middleOf(point, frame.x) + 7, y: TOP - 1, anchor: 'start' as const },
              { x: middleOf(point, frame.x) - 7, y: TOP - 1, anchor: 'end' as const },
              { x: middleOf(point, frame.x) + 7, y: TOP - 12, anchor: 'start' as const },
            ],
          })),
          ...steps.flatMap(({ fromPerNight, intervalDays }) =>
            intervalDays === null
              ? []
              : [
                  {
                    text: w.step(rateText(fromPerNight), intervalDays),
                    className: 'step-word',
                    spots: [{ x: frame.left + 5, y: y(fromPerNight) - 3, anchor: 'start' as const }],
                  },
                ],
          ),
          ...(ownFlights ? flightWords({ flights: ownFlights, ...drawn }) : []),
        ]}
      />
    </Strip>
  );
}

const middleOf = ({ from, to }: RatePoint, x: (at: number) => number): number => (x(day(from)) + x(day(to))) / 2;

/** The furthest first: where there is no room for all figures, that of the widest interval stands. */
const byHeight = (points: readonly RatePoint[]): RatePoint[] => [...points].sort((a, b) => b.high! - a.high!);

/** The points of a line in two, each with gaps where the other speaks. */
function split(points: readonly RatePoint[], isFirst: (point: RatePoint) => boolean): [RatePoint[], RatePoint[]] {
  const gap = (point: RatePoint): RatePoint => ({ ...point, perNight: null, low: null, high: null });
  return [
    points.map((point) => (isFirst(point) ? point : gap(point))),
    points.map((point) => (isFirst(point) ? gap(point) : point)),
  ];
}
