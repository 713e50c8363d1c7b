import type { ReactNode } from 'react';
import { monthTicks } from '../../ui/chart/axis.ts';
import type { Frame } from '../../ui/chart/frame.ts';
import { Upright } from '../../ui/chart/marks.tsx';

export interface StripProps {
  readonly frame: Frame;
  /** The day the page is read on. */
  readonly today: number;
  /** The day under the finger or the keys. */
  readonly cursor: number;
}

/** One drawing on the shared time axis, with its months, its day and its cursor. */
export function Strip(props: StripProps & { height: number; foot?: number; className?: string; children: ReactNode }) {
  const { frame, today, cursor } = props;
  const height = props.height + (props.foot ?? 0);
  if (frame.width === 0) return <svg className="chart strip" height={height} aria-hidden="true" />;
  const whole = { top: 0, bottom: height };
  return (
    <svg className={`chart strip ${props.className ?? ''}`} width={frame.width} height={height} aria-hidden="true">
      {monthTicks(frame.from, frame.to).map(({ at }) => (
        <Upright key={at} className="month" plot={whole} x={frame.x(at)} />
      ))}
      {props.children}
      <Upright className="today" plot={whole} x={frame.x(today + 1)} />
      <Upright className="cursor" plot={whole} x={frame.x(cursor + 0.5)} />
    </svg>
  );
}
