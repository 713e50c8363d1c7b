/** One insect and farm on the shared axis: its flights, and the offspring of the moths caught. */
import type { FarmFlights, FlightMomentView } from '@duskwatch/core';
import { area, curveMonotoneX, line } from 'd3-shape';
import type { FlightAxis } from './axis.ts';

const HEIGHT = 46;
const GROUND = 29;
const [EGGS, LARVAE] = [35.5, 41.5];
/** Of the highest night; less lies on the ground. */
const LEAST_DRAWN = 0.01;

interface Point {
  readonly x: number;
  readonly y: number;
  readonly drawn: boolean;
}

export function FlightPicture({ row, axis }: { row: FarmFlights; axis: FlightAxis }) {
  const { x, width } = axis;
  const today = axis.today(row);
  const isNext = (what: 'peak' | 'end' | 'start', flight: number) => row.next?.what === what && row.next.flight === flight;
  return (
    <svg className="chart flight-picture" width={width} height={HEIGHT} aria-hidden="true">
      {axis.ticks.map(({ at }) => (
        <line key={at} className="month" x1={x(at)} x2={x(at)} y1={0} y2={HEIGHT} />
      ))}
      {row.ridge?.perNight.map((nights, index) => (
        <Ridge key={row.list[index]!.number} row={row} nights={nights} axis={axis} />
      ))}
      <Bar row={row} axis={axis} span={row.eggs} y={EGGS} className="eggs" />
      <Bar
        row={row}
        axis={axis}
        span={row.larvae}
        y={LARVAE}
        className={row.next?.what === 'larvae' ? 'larvae next' : 'larvae'}
      />
      {row.next?.what === 'larvae' && axis.kind === 'calendar' && (
        <Whisker className="next" at={axis.moment({ heat: 0, low: 0, high: 0, dates: row.next.dates })} y={LARVAE} axis={axis} />
      )}
      {row.list.map((flight) => (
        <g key={flight.number}>
          {isNext('start', flight.number) && <Moment what="start" moment={flight.start} axis={axis} next />}
          <Moment what="peak" moment={flight.peak} axis={axis} next={isNext('peak', flight.number)} />
          <Moment what="end" moment={flight.end} axis={axis} next={isNext('end', flight.number)} />
        </g>
      ))}
      {today !== null && <line className="today" x1={x(today)} x2={x(today)} y1={0} y2={HEIGHT} />}
    </svg>
  );
}

/** Filled as far as nights are measured, dashed after; to its own height, for the page is about time. */
function Ridge({ row, nights, axis }: { row: FarmFlights; nights: readonly number[]; axis: FlightAxis }) {
  const heights = row.ridge!.perNight.map((flight) => flight.map((perNight, index) => axis.height(row, index, perNight)));
  const top = Math.max(...heights.flat(), Number.MIN_VALUE);
  const points = nights.map((perNight, index) => {
    const share = axis.height(row, index, perNight) / top;
    return { x: axis.x(axis.night(row, index)), y: GROUND - share * (GROUND - 4), drawn: share > LEAST_DRAWN };
  });
  const { known } = row.ridge!;
  const caught = area<Point>()
    .defined(({ drawn }) => drawn)
    .x(({ x }) => x)
    .y0(GROUND)
    .y1(({ y }) => y)
    .curve(curveMonotoneX)
    .digits(1);
  const expected = line<Point>()
    .defined(({ drawn }) => drawn)
    .x(({ x }) => x)
    .y(({ y }) => y)
    .curve(curveMonotoneX)
    .digits(1);
  return (
    <>
      <path className="ridge" d={caught(points.slice(0, known)) ?? ''} />
      <path className="ridge-ahead" d={expected(points.slice(Math.max(0, known - 1))) ?? ''} />
    </>
  );
}

function Bar(props: { row: FarmFlights; axis: FlightAxis; span: FarmFlights['eggs']; y: number; className: string }) {
  const { row, axis, span, y, className } = props;
  if (span === null) return null;
  const from = axis.dayIn(row, span.from);
  const to = span.to === null ? null : axis.dayIn(row, span.to);
  if (from === null) return null;
  const end = to === null ? axis.width : axis.x(to + (axis.kind === 'calendar' ? 1 : 0));
  return <line className={`stage-bar ${className}`} x1={axis.x(from)} x2={end} y1={y} y2={y} />;
}

type Ends = readonly [low: number, middle: number, high: number] | null;

function Whisker({ at, y, axis, className }: { at: Ends; y: number; axis: FlightAxis; className: string }) {
  if (at === null) return null;
  const [low, , high] = at.map(axis.x) as [number, number, number];
  return (
    <path
      className={`whisker ${className}`}
      d={`M${low.toFixed(1)},${y}H${high.toFixed(1)}M${low.toFixed(1)},${y - 3}v6M${high.toFixed(1)},${y - 3}v6`}
    />
  );
}

function Moment(props: { what: 'start' | 'peak' | 'end'; moment: FlightMomentView; axis: FlightAxis; next: boolean }) {
  const { what, moment, axis, next } = props;
  const at = axis.moment(moment);
  if (at === null) return null;
  const x = axis.x(at[1]);
  const className = next ? 'moment next' : 'moment';
  return (
    <g className={className}>
      <Whisker at={at} y={GROUND} axis={axis} className="" />
      {what === 'peak' && <path className="mark-of" d={`M${x},${GROUND - 6}l4.5,8h-9Z`} />}
      {what === 'end' && <path className="mark-of bar" d={`M${x},${GROUND - 6}v12`} />}
      {what === 'start' && <circle className="mark-of" cx={x} cy={GROUND} r={4} />}
    </g>
  );
}

/** The axis itself, in the head of the column. */
export function AxisHead({ axis, today }: { axis: FlightAxis; today: number | null }) {
  return (
    <svg className="chart axis-head" width={axis.width} height={16} aria-hidden="true">
      {axis.ticks.map(({ at, label }) => (
        <text key={at} x={axis.x(at) + 3} y={12}>
          {label}
        </text>
      ))}
      {today !== null && <path className="today-mark" d={`M${axis.x(today)},16l-4,-7h8Z`} />}
    </svg>
  );
}

/** What the marks mean. */
export function KeyMark({ of }: { of: 'caught' | 'expected' | 'peak' | 'end' | 'eggs' | 'larvae' }) {
  return (
    <svg className="chart flight-picture" width={36} height={16} aria-hidden="true">
      {of === 'caught' && <path className="ridge" d="M2,14C12,14 12,3 19,3C26,3 26,14 34,14Z" />}
      {of === 'expected' && <path className="ridge-ahead" d="M2,4C14,6 18,13 34,14" />}
      {of === 'peak' && <path className="moment mark-of" d="M18,4l4.5,8h-9Z" />}
      {of === 'end' && <path className="moment mark-of bar" d="M18,2v12" />}
      {(of === 'eggs' || of === 'larvae') && <line className={`stage-bar ${of}`} x1={2} x2={34} y1={8} y2={8} />}
    </svg>
  );
}
