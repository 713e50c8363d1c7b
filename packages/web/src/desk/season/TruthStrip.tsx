/** One line of the plan drawn on the season that all lines share: time lost, time in sight, checks and lures. */
import { day, type SeasonTruthLine, type SeasonTruthView } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { seasonWords } from '../../text/season.ts';
import { monthTicks } from '../../ui/chart/axis.ts';

const w = seasonWords.truth;
const HEIGHT = 22;
const [BAR, BAR_HIGH, SECOND, LURE] = [2, 7, 12, 17];
const AHEAD = 40;

export interface TruthAxisScale {
  readonly width: number;
  readonly x: (at: number) => number;
  readonly today: number;
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
}

export function truthAxis({ lines, today }: SeasonTruthView, width: number): TruthAxisScale {
  const now = day(today);
  const starts = lines.flatMap(({ planned, traps }) => [
    ...(planned.hangOn === null ? [] : [day(planned.hangOn)]),
    ...traps.map(({ hungOn }) => day(hungOn)),
  ]);
  const from = Math.min(now - 30, ...starts.filter((at) => at > now - 366));
  const to = now + AHEAD;
  const x = scaleLinear().domain([from, to]).range([0, width]).clamp(true);
  return { width, x, today: now, ticks: monthTicks(from, to, ((to - from) * 34) / width) };
}

export function TruthAxis({ axis: { width, x, today, ticks } }: { axis: TruthAxisScale }) {
  return (
    <svg className="chart" width={width} height={16} aria-hidden="true">
      {ticks.map(({ at, label }) => (
        <text key={at} x={x(at) + 2} y={12}>
          {label}
        </text>
      ))}
      <path className="today-mark" d={`M${x(today)},16l-4,-7h8Z`} />
    </svg>
  );
}

export function TruthStrip({ line, axis }: { line: SeasonTruthLine; axis: TruthAxisScale }) {
  const { width, x, today, ticks } = axis;
  const planned = line.planned.hangOn === null ? null : day(line.planned.hangOn);
  const [first, ...others] = line.traps;
  const hung = first ? day(first.hungOn) : null;
  const lost =
    planned === null || (hung !== null && hung <= planned) ? null : { from: planned, to: Math.min(hung ?? today, today) };
  const missing = line.deviations.some(({ kind }) => kind === 'not-hung');
  return (
    <svg className="chart truth-strip" width={width} height={HEIGHT} aria-hidden="true">
      {ticks.map(({ at }) => (
        <line key={at} className="month" x1={x(at)} x2={x(at)} y1={0} y2={HEIGHT} />
      ))}
      {lost && lost.to > lost.from && (
        <rect className="lost" x={x(lost.from)} y={BAR} width={x(lost.to) - x(lost.from)} height={BAR_HIGH} />
      )}
      {first && <Hung from={hung!} to={first.takenDownOn ? day(first.takenDownOn) : today} x={x} y={BAR} high={BAR_HIGH} />}
      {first?.checks.map((on) => (
        <path key={on} className="check-tick" d={`M${x(day(on)).toFixed(1)},${BAR}v${BAR_HIGH}`} />
      ))}
      {first?.missed.map((on) => (
        <path key={on} className="check-missed" d={`M${(x(day(on)) - 2.5).toFixed(1)},${BAR + 1}l5,5m0,-5l-5,5`} />
      ))}
      {others.map((trap, index) => (
        <Hung
          key={trap.trapId}
          from={day(trap.hungOn)}
          to={trap.takenDownOn ? day(trap.takenDownOn) : today}
          x={x}
          y={SECOND - 1.5 + index * 2}
          high={2.5}
        />
      ))}
      {missing && planned !== null && (
        <path className="never-hung" d={`M${x(Math.max(planned, hung ?? planned))},${SECOND}H${x(today)}`} />
      )}
      {first?.lures.map(({ placedOn, ends }, index) => {
        const until = first.lures[index + 1] ? day(first.lures[index + 1]!.placedOn) : Math.max(today, ends ? day(ends) : today);
        const spent = ends === null ? until : Math.min(until, day(ends));
        return (
          <g key={placedOn}>
            <path className="lure-life" d={`M${x(day(placedOn))},${LURE}H${x(spent)}`} />
            {spent < until && <path className="lure-past" d={`M${x(spent)},${LURE}H${x(until)}`} />}
            <path className="lure-change" d={`M${x(day(placedOn))},${LURE - 2.5}l2.5,2.5l-2.5,2.5l-2.5,-2.5Z`} />
          </g>
        );
      })}
      <line className="today" x1={x(today)} x2={x(today)} y1={0} y2={HEIGHT} />
      <Note line={line} axis={axis} from={hung ?? planned} />
    </svg>
  );
}

const Hung = (props: { from: number; to: number; x: (at: number) => number; y: number; high: number }) => (
  <rect
    className="hung"
    x={props.x(props.from)}
    y={props.y}
    width={Math.max(0, props.x(props.to) - props.x(props.from))}
    height={props.high}
  />
);

/** Days are written where they are past: late before the bar, a spent lure after today. */
function Note({ line, axis: { x, today }, from }: { line: SeasonTruthLine; axis: TruthAxisScale; from: number | null }) {
  const past = line.deviations.reduce((most, one) => (one.kind === 'lure-overdue' ? Math.max(most, one.days) : most), 0);
  const [first] = line.traps;
  const late = line.deviations.reduce(
    (days, one) => (one.kind === 'hung-late' && one.trapId === first?.trapId ? Math.max(days, one.daysLate) : days),
    0,
  );
  return (
    <>
      {late > 2 && from !== null && line.planned.hangOn !== null && x(day(line.planned.hangOn)) > 70 && (
        <text x={x(day(line.planned.hangOn)) - 4} y={10} textAnchor="end">
          {w.late(late)}
        </text>
      )}
      {past > 0 && (
        <text x={x(today) + 5} y={LURE + 3}>
          {w.pastShort(past)}
        </text>
      )}
    </>
  );
}

/** What the marks of a strip mean. */
export function TruthKey() {
  const k = w.key;
  const marks = [
    [k.lost, <rect key="lost" className="lost" x={1} y={3} width={22} height={8} />],
    [k.hung, <rect key="hung" className="hung" x={1} y={3} width={22} height={8} />],
    [k.never, <path key="never" className="never-hung" d="M1,7H24" />],
    [k.check, <path key="check" className="check-tick" d="M12,3v8" />],
    [k.missed, <path key="missed" className="check-missed" d="M9,4l5,5m0,-5l-5,5" />],
    [
      k.lure,
      <g key="lure">
        <path className="lure-life" d="M2,7H14" />
        <path className="lure-past" d="M14,7H26" />
        <path className="lure-change" d="M2,4.5l2.5,2.5l-2.5,2.5l-2.5,-2.5Z" />
      </g>,
    ],
  ] as const;
  return (
    <ul className="legend truth-key">
      {marks.map(([label, mark]) => (
        <li key={label}>
          <svg className="chart truth-strip" width={28} height={14} aria-hidden="true">
            {mark}
          </svg>
          {label}
        </li>
      ))}
    </ul>
  );
}
