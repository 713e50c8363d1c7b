import { day, degreeDaysFrom, type HeatStrip as Heat, type TemperatureUnit } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { countText } from '../../format/number.ts';
import type { Frame } from '../../ui/chart/frame.ts';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 132;
const TOP = 14;
/** Pixels a label needs to the left of its mark; with less, it goes below to the right. */
const LABEL_ROOM = 18;

export interface NumberedEvent {
  readonly number: number;
  readonly event: Heat['events'][number];
}

export const numbered = (heat: Heat): NumberedEvent[] => heat.events.map((event, index) => ({ number: index + 1, event }));

/** Events published at one sum of heat share one mark, which carries all their numbers. */
function marksOf(heat: Heat, frame: Frame): { label: string; event: Heat['events'][number] }[] {
  const marks = new Map<number, { label: string; event: Heat['events'][number] }>();
  for (const { number, event } of numbered(heat)) {
    if (!event.expected || day(event.expected.early) > frame.to) continue;
    const mark = marks.get(event.from);
    marks.set(event.from, { label: mark ? `${mark.label}, ${number}` : String(number), event });
  }
  return [...marks.values()];
}

/** Heat summed from the model's start, and where on it each published event falls or is expected. */
export function HeatStrip({ heat, unit, ...props }: StripProps & { heat: Heat; unit: TemperatureUnit }) {
  const { frame } = props;
  const shown = marksOf(heat, frame);
  const reached = Math.max(0, ...heat.days.map((each) => each.total ?? 0));
  const top = Math.max(reached, ...shown.map(({ event }) => event.from), 1);
  const inUnit = (total: number) => degreeDaysFrom(total, heat.unit, unit);
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
    <Strip {...props} height={HEIGHT} foot={6} className="heat">
      {y.ticks(3).map((tick) => (
        <g key={tick}>
          <line className={tick === 0 ? 'ground' : 'grid'} x1={frame.left} x2={frame.right} y1={y(tick)} y2={y(tick)} />
          <text className="scale" x={frame.left - 6} y={y(tick) + 4} textAnchor="end">
            {countText(tick)}
          </text>
        </g>
      ))}
      <path className="heat-line" d={path(heat.days as Heat['days'][number][]) ?? ''} />
      {shown.map(({ label, event }, index) => {
        const { early, middle, late, method } = event.expected!;
        const level = y(inUnit(event.from));
        const at = inside(day(middle) + 0.5);
        const past = method === 'reached';
        const before = shown[index - 1]?.event.expected?.middle;
        const crowded = before !== undefined && at - frame.x(day(before) + 0.5) < LABEL_ROOM;
        return (
          <g key={label} className={past ? 'event reached' : 'event expected'}>
            {!past && <line x1={inside(day(early))} x2={inside(day(late) + 1)} y1={level} y2={level} />}
            <circle cx={at} cy={level} r={3.2} />
            {past ? (
              <text x={crowded ? at + 5 : at - 7} y={level + (crowded ? 13 : -2)} textAnchor={crowded ? 'start' : 'end'}>
                {label}
              </text>
            ) : (
              <text x={inside(day(late) + 1) + 5} y={level + 4}>
                {label}
              </text>
            )}
          </g>
        );
      })}
    </Strip>
  );
}
