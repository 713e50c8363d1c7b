import { dayText, isoOf } from '../../format/day.ts';
import { monthTicks, weekTicks } from '../../ui/chart/axis.ts';
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
        <line key={at} className="week-tick" x1={frame.x(at)} x2={frame.x(at)} y1={0} y2={4} />
      ))}
      {monthTicks(frame.from, frame.to, room).map(({ at, label }) => (
        <text key={at} x={frame.x(at) + 3} y={15}>
          {label}
        </text>
      ))}
      <text className="today-word" x={atToday + (turned ? -3 : 3)} y={27} textAnchor={turned ? 'end' : 'start'}>
        {dayText(isoOf(today))}
      </text>
    </Strip>
  );
}
