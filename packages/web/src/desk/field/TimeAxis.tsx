import { dayText, isoOf } from '../../format/day.ts';
import { monthTicks, weekTicks } from '../../ui/chart/axis.ts';
import { AcrossAxis, Upright } from '../../ui/chart/marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 30;

/** Mondays as ticks, months as words. */
export function TimeAxis({ at = 'bottom', ...props }: StripProps & { at?: 'top' | 'bottom' }) {
  const { frame, today } = props;
  const days = frame.to - frame.from + 1;
  const room = Math.ceil((30 / Math.max(1, frame.right - frame.left)) * days);
  const atToday = frame.x(today + 1);
  const turned = atToday > frame.right - 90;
  const top = at === 'top';
  const ground = top ? HEIGHT - 0.5 : 0.5;
  const ticks = top ? { top: HEIGHT - 4, bottom: HEIGHT } : { top: 0, bottom: 4 };
  return (
    <Strip {...props} height={HEIGHT} className="axis">
      <line className="ground" x1={frame.left} x2={frame.right} y1={ground} y2={ground} />
      {weekTicks(frame.from, frame.to).map((tick) => (
        <Upright key={tick} className="week-tick" plot={ticks} x={frame.x(tick)} />
      ))}
      <AcrossAxis
        ticks={monthTicks(frame.from, frame.to, room).map((month) => ({ x: frame.x(month.at), label: month.label }))}
        y={top ? 24 : 15}
        anchor="start"
        away={3}
      />
      <text className="today-word" x={atToday + (turned ? -3 : 3)} y={top ? 11 : 27} textAnchor={turned ? 'end' : 'start'}>
        {dayText(isoOf(today))}
      </text>
    </Strip>
  );
}
