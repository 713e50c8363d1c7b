import { day, degreeDaysFrom, type HeatStrip as Heat, type TemperatureUnit } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { countText } from '../../format/number.ts';
import type { Frame } from '../../ui/chart/frame.ts';
import { around } from '../../ui/chart/labels.ts';
import { HeightAxis, Line, Words } from '../../ui/chart/marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 132;
const TOP = 14;

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
  const plot = { left: frame.left, right: frame.right, top: TOP, bottom: HEIGHT };
  const marks = shown.map(({ label, event }) => {
    const { early, middle, late, method } = event.expected!;
    return {
      label,
      past: method === 'reached',
      from: inside(day(early)),
      at: inside(day(middle) + 0.5),
      to: inside(day(late) + 1),
      level: y(inUnit(event.from)),
    };
  });
  return (
    <Strip {...props} height={HEIGHT} foot={6} className="heat">
      <HeightAxis plot={plot} y={y} ticks={y.ticks(3)} text={countText} />
      <Line className="heat-line" d={path(heat.days as Heat['days'][number][]) ?? ''} />
      {marks.map(({ label, past, from, at, to, level }) => (
        <g key={label} className={past ? 'event reached' : 'event expected'}>
          {!past && <line x1={from} x2={to} y1={level} y2={level} />}
          <circle cx={at} cy={level} r={3.2} />
        </g>
      ))}
      <Words
        plot={{ ...plot, top: 0, right: frame.width }}
        taken={marks.map(({ past, from, at, to, level }) => ({
          left: (past ? at : from) - 3,
          right: (past ? at : to) + 3,
          top: level - 3,
          bottom: level + 3,
        }))}
        words={marks.map(({ label, past, at, to, level }) => ({
          text: label,
          className: 'event-word',
          spots: past
            ? [{ x: at - 7, y: level - 2, anchor: 'end' }, ...around(at, level, 7)]
            : [{ x: to + 5, y: level + 4, anchor: 'start' }, ...around(at, level, 7)],
        }))}
      />
    </Strip>
  );
}
