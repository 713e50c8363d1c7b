import { day, type LarvaeView } from '@duskwatch/core';
import { area } from 'd3-shape';
import { flightsWords as w } from '../../text/flights.ts';
import { Band } from '../../ui/chart/marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const LANE = 24;

/** How much of the offspring is at each stage, day by day: one low hill for each stage, dotted ground where only expected. */
export function LarvaeStrip({ larvae, ...props }: StripProps & { larvae: LarvaeView }) {
  const { frame } = props;
  const lanes = [
    [w.larvae.eggs, (each: Day) => each.egg],
    [larvae.twoSizes ? w.larvae.small : w.larvae.larvae, (each: Day) => each.small],
    ...(larvae.twoSizes ? [[w.larvae.large, (each: Day) => each.large] as const] : []),
  ] as const;
  const shown = larvae.days.filter(({ on }) => day(on) >= frame.from && day(on) <= frame.to);
  const known = frame.x(Math.min(day(larvae.measuredThrough) + 1, frame.to + 1));
  return (
    <Strip {...props} height={LANE * lanes.length} foot={2} className="larvae">
      {lanes.map(([label, shareOf], index) => {
        const ground = LANE * (index + 1) - 1;
        const hill = area<Day>()
          .x(({ on }) => frame.x(day(on) + 0.5))
          .y0(ground)
          .y1((each) => ground - shareOf(each) * (LANE - 5))
          .digits(1);
        return (
          <g key={label} className={`lane lane-${index}`}>
            <line className="ground" x1={frame.left} x2={known} y1={ground} y2={ground} />
            <line className="ground ahead" x1={known} x2={frame.right} y1={ground} y2={ground} />
            <Band d={hill(shown) ?? ''} />
            <text x={frame.left + 4} y={ground - 6}>
              {label}
            </text>
          </g>
        );
      })}
    </Strip>
  );
}

type Day = LarvaeView['days'][number];
