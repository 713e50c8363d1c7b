import type { ReactNode } from 'react';
import { monthTicks } from '../../ui/chart/axis.ts';
import type { Frame } from '../../ui/chart/frame.ts';

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
  if (frame.width === 0) return <svg className="strip" height={height} aria-hidden="true" />;
  const middle = frame.x(cursor + 0.5);
  return (
    <svg className={`strip ${props.className ?? ''}`} width={frame.width} height={height} aria-hidden="true">
      {monthTicks(frame.from, frame.to).map(({ at }) => (
        <line key={at} className="month" x1={frame.x(at)} x2={frame.x(at)} y1={0} y2={height} />
      ))}
      {props.children}
      <line className="today" x1={frame.x(today + 1)} x2={frame.x(today + 1)} y1={0} y2={height} />
      <line className="cursor" x1={middle} x2={middle} y1={0} y2={height} />
    </svg>
  );
}
