import { dayText, isoOf } from '../../format/day.ts';
import { monthTicks, weekTicks } from '../../ui/chart/axis.ts';
import { AcrossAxis, Upright } from '../../ui/chart/marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 30;

/** Mondays as ticks, months as words. */
export function TimeAxis(props: StripProps) {
  const { frame, today } = props;
  const days = frame.to - frame.from + 1;
  const room = Math.ceil((30 / Math.max(1, frame.right - frame.left)) * days);
  const atToday = frame.x(today + 1);
  const turned = atToday > frame.right - 90;
  return (
    <Strip {...props} height={HEIGHT} className="axis">
      <line className="ground" x1={frame.left} x2={frame.right} y1={0.5} y2={0.5} />
      {weekTicks(frame.from, frame.to).map((at) => (
        <Upright key={at} className="week-tick" plot={{ top: 0, bottom: 4 }} x={frame.x(at)} />
      ))}
      <AcrossAxis
        ticks={monthTicks(frame.from, frame.to, room).map(({ at, label }) => ({ x: frame.x(at), label }))}
        y={15}
        anchor="start"
        away={3}
      />
      <text className="today-word" x={atToday + (turned ? -3 : 3)} y={27} textAnchor={turned ? 'end' : 'start'}>
        {dayText(isoOf(today))}
      </text>
    </Strip>
  );
}
