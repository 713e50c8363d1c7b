import { day, type HeatStrip as Heat, type TemperatureUnit } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { countText } from '../format/number.ts';
import { heatIn } from '../format/temperature.ts';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 132;
const TOP = 14;

export interface NumberedEvent {
  readonly number: number;
  readonly event: Heat['events'][number];
}

export const numbered = (heat: Heat): NumberedEvent[] => heat.events.map((event, index) => ({ number: index + 1, event }));

/** Heat summed from the model's start, and where on it each published event falls or is expected. */
export function HeatStrip({ heat, unit, ...props }: StripProps & { heat: Heat; unit: TemperatureUnit }) {
  const { frame } = props;
  const shown = numbered(heat).filter(({ event }) => event.expected && day(event.expected.early) <= frame.to);
  const reached = Math.max(0, ...heat.days.map((each) => each.total ?? 0));
  const top = Math.max(reached, ...shown.map(({ event }) => event.from), 1);
  const inUnit = (total: number) => heatIn(total, heat.unit, unit);
  const y = scaleLinear()
    .domain([0, inUnit(top) * 1.08])
    .range([HEIGHT - 1, TOP]);
  const path = line<Heat['days'][number]>()
    .defined((each) => each.total !== null && day(each.date) >= frame.from && day(each.date) <= frame.to)
    .x((each) => frame.x(day(each.date) + 1))
    .y((each) => y(inUnit(each.total!)))
    .digits(1);
  const inside = (at: number) => Math.min(Math.max(frame.x(at), frame.left), frame.right);
  return (
    <Strip {...props} height={HEIGHT} className="heat">
      {y.ticks(3).map((tick) => (
        <g key={tick}>
          <line className={tick === 0 ? 'ground' : 'grid'} x1={frame.left} x2={frame.right} y1={y(tick)} y2={y(tick)} />
          <text className="scale" x={frame.left - 6} y={y(tick) + 4} textAnchor="end">
            {countText(tick)}
          </text>
        </g>
      ))}
      <path className="heat-line" d={path(heat.days as Heat['days'][number][]) ?? ''} />
      {shown.map(({ number, event }) => {
        const { early, middle, late, method } = event.expected!;
        const level = y(inUnit(event.from));
        const at = inside(day(middle) + 0.5);
        const past = method === 'reached';
        return (
          <g key={number} className={past ? 'event reached' : 'event expected'}>
            {!past && <line x1={inside(day(early))} x2={inside(day(late) + 1)} y1={level} y2={level} />}
            <circle cx={at} cy={level} r={3.2} />
            <text x={past ? at - 7 : inside(day(late) + 1) + 5} y={level + (past ? -2 : 4)} textAnchor={past ? 'end' : 'start'}>
              {number}
            </text>
          </g>
        );
      })}
    </Strip>
  );
}
