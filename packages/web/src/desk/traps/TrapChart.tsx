/** A trap's season drawn: what it caught a night and how sure that is, when it told nothing, its lures, its neighbours. */
import { day, type TrapView } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { useLengthUnit } from '../../browser/preferences.ts';
import { distanceText } from '../../format/length.ts';
import { rateText } from '../../format/number.ts';
import { trapsWords } from '../../text/traps.ts';
import { monthTicks } from '../../ui/chart/axis.ts';
import { Chart, plotIn } from '../../ui/chart/Chart.tsx';
import { AcrossAxis, Band, EndWords, HeightAxis, Level, Line, Upright } from '../../ui/chart/marks.tsx';
import { bandPath, stepPath, stepVertices } from '../../ui/chart/steps.ts';

const w = trapsWords.chart;
const HEIGHT = 250;
const MARGINS = { left: 44, right: 12, top: 14, foot: 62 };
const LURES = 20;
const WEEK = 7;

export function TrapChart({ trap }: { trap: TrapView }) {
  const { chart } = trap;
  const [unit] = useLengthUnit();
  if (chart.points.length === 0) return null;
  const neighbours = chart.neighbours.length;
  return (
    <section className="trap-chart" aria-label={w.title}>
      <h2>{w.title}</h2>
      <Chart height={HEIGHT}>{(width) => <Drawing trap={trap} width={width} />}</Chart>
      <ul className="legend">
        <li>{w.rate}</li>
        {chart.withoutInformation.length > 0 && <li>{w.without}</li>}
        <li>{w.lures}</li>
        {neighbours > 0 && (
          <li>
            {w.neighbours(neighbours)}{' '}
            {chart.neighbours.map(({ station, km }) => `${station} (${distanceText(km, unit)})`).join(', ')}
          </li>
        )}
      </ul>
    </section>
  );
}

function Drawing({ trap, width }: { trap: TrapView; width: number }) {
  const { chart } = trap;
  const plot = plotIn(width, HEIGHT, MARGINS);
  const today = day(trap.on);
  const first = day(chart.points[0]!.from);
  const last = Math.max(day(chart.points.at(-1)!.to), first + 1);
  // The season that is running goes on to the day the page is read on.
  const to = today - last < 60 ? Math.max(today + 1, last) : last + WEEK;
  const x = scaleLinear()
    .domain([Math.min(first, day(trap.hungOn)), to])
    .range([plot.left, plot.right]);
  const rates = chart.points.map(({ perNight }) => perNight ?? 0);
  const highs = chart.points.map(({ high }) => high ?? 0);
  const rate = Math.max(0.05, chart.threshold?.perNight ?? 0, ...rates);
  const top = Math.min(Math.max(rate, ...highs), 2 * rate);
  const y = scaleLinear().domain([0, top]).nice(4).range([plot.bottom, plot.top]).clamp(true);
  const most = y.domain()[1]!;
  const vertices = stepVertices(chart.points);
  return (
    <>
      {chart.withoutInformation.map(({ from, to: until }) => (
        <rect
          key={from}
          className="told-nothing"
          x={x(day(from))}
          y={plot.top}
          width={Math.max(1, x(day(until)) - x(day(from)))}
          height={plot.bottom - plot.top}
        />
      ))}
      <HeightAxis plot={plot} y={y} ticks={y.ticks(4)} text={rateText} />
      {monthTicks(first, to).map(({ at }) => (
        <Upright key={at} className="month" plot={plot} x={x(at)} />
      ))}
      {chart.neighbours.map(({ trapId, points }) => (
        <Line
          key={trapId}
          className="neighbour-line"
          d={stepPath(stepVertices(points.map((point) => ({ ...point, low: null, high: null }))), clampedTo(x, plot), y)}
        />
      ))}
      <Band className="rate-band" d={bandPath(vertices, x, y)} />
      <Line className="rate-line" d={stepPath(vertices, x, y)} />
      {chart.points.map((point) =>
        (point.high ?? 0) > most ? (
          <g key={point.from} className="beyond">
            <path d={`M${x(day(point.from)) + 6},${plot.top - 6}l4,6h-8Z`} />
            <text x={x(day(point.from)) + 12} y={plot.top + 2}>
              {rateText(point.high!)}
            </text>
          </g>
        ) : null,
      )}
      {chart.threshold && <Level className="threshold" plot={plot} y={y(chart.threshold.perNight)} />}
      {chart.threshold && (
        <EndWords
          plot={plot}
          words={[
            { text: w.threshold(rateText(chart.threshold.perNight), chart.threshold.field), y: y(chart.threshold.perNight) },
          ]}
        />
      )}
      <AcrossAxis
        ticks={monthTicks(first, to, ((to - first) * 30) / Math.max(1, width)).map(({ at, label }) => ({ x: x(at), label }))}
        y={plot.bottom + 14}
        anchor="start"
        away={3}
      />
      <LureLine trap={trap} x={x} y={plot.bottom + LURES + 14} until={to} />
      <Upright
        className="today"
        plot={{ top: plot.top, bottom: plot.bottom + LURES + 20 }}
        x={Math.min(plot.right, x(today + 1))}
      />
    </>
  );
}

/** Neighbours hung earlier run off the left edge there, not beside it. */
const clampedTo =
  (x: (at: number) => number, { left, right }: { left: number; right: number }) =>
  (at: number) =>
    Math.max(left, Math.min(right, x(at)));

/** Each lure's life as a line, dotted once it is past, with the change that began it. */
function LureLine({ trap, x, y, until }: { trap: TrapView; x: (at: number) => number; y: number; until: number }) {
  const lures = [...trap.lures].reverse();
  const [least] = [day(trap.chart.points[0]!.from)];
  return lures.map(({ placedOn, lifeDays }, index) => {
    const placed = day(placedOn);
    const end = Math.min(
      lures[index + 1] ? day(lures[index + 1]!.placedOn) : until,
      trap.takenDownOn ? day(trap.takenDownOn) : until,
    );
    if (end <= least) return null;
    const spent = lifeDays === null ? end : Math.min(end, placed + lifeDays);
    const from = Math.max(placed, least);
    return (
      <g key={placedOn}>
        <line className="lure-life" x1={x(from)} x2={x(Math.max(from, spent))} y1={y} y2={y} />
        {spent < end && <line className="lure-past" x1={x(Math.max(from, spent))} x2={x(end)} y1={y} y2={y} />}
        {placed >= least && <path className="lure-change" d={`M${x(placed)},${y - 4}l4,4l-4,4l-4,-4Z`} />}
      </g>
    );
  });
}
