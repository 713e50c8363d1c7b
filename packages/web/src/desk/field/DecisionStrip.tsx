import { day, daysLateOn, type FieldInsectView, type FieldView } from '@duskwatch/core';
import { useId } from 'react';
import { dayText } from '../../format/day.ts';
import { fieldPageWords } from '../../text/field-page.ts';
import { besideEnd } from '../../ui/chart/labels.ts';
import { Upright, type Word, Words } from '../../ui/chart/marks.tsx';
import { Hatch } from './marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 46;
const LINE = 25;
const w = fieldPageWords.chart;

const dayOfMonth = (on: string) => String(Number(on.slice(8)));

/** Whether there is anything to draw. */
export const hasDecisions = ({ advice, treatments, decisions }: FieldInsectView): boolean =>
  advice.verb === 'decide' || treatments.length + decisions.length > 0;

/** What was covered and decided, how late a decision is, when the next would be, and from when on there is none. */
export function DecisionStrip({ view, insect, ...props }: StripProps & { view: FieldView; insect: FieldInsectView }) {
  const { frame, today } = props;
  const hatch = useId();
  const { advice, treatments, decisions, ahead } = insect;
  const inside = (at: number) => Math.min(Math.max(frame.x(at), frame.left), frame.right);
  const late = advice.verb === 'decide' ? daysLateOn(view.on, advice.dueSince) : 0;
  const stop = ahead.noneFrom !== null && day(ahead.noneFrom) <= frame.to ? day(ahead.noneFrom) : null;
  const words: Word[] = [
    ...(late > 0 ? [{ text: w.late(late), className: 'late-word', spots: beside(inside(today), 'end') }] : []),
    ...ahead.again
      .filter((on) => day(on) <= frame.to)
      .map((on) => ({ text: dayOfMonth(on), spots: [{ x: frame.x(day(on) + 0.5), y: HEIGHT - 4, anchor: 'middle' as const }] })),
    ...(stop === null ? [] : [{ text: w.noneFrom(dayOfMonth(ahead.noneFrom!)), spots: beside(frame.x(stop), 'start') }]),
    ...[...treatments].reverse().map(({ appliedOn, coversUntil, protectsUntil }) => {
      const until = coversUntil ?? protectsUntil;
      return {
        text: until ? w.treatedUntil(dayText(appliedOn), dayText(until)) : w.treated(dayText(appliedOn)),
        className: 'treated-word',
        spots: beside(inside(day(appliedOn)), 'end').concat(beside(inside(day(appliedOn)), 'start')),
      };
    }),
    ...[...decisions].reverse().map(({ decidedOn }) => ({
      text: w.notTreated(dayText(decidedOn)),
      spots: beside(inside(day(decidedOn)), 'end').concat(beside(inside(day(decidedOn)), 'start')),
    })),
  ];
  return (
    <Strip {...props} height={HEIGHT} className="decisions">
      <Hatch id={hatch} />
      <text className="design-title" x={frame.left} y={11}>
        {w.decisions}
      </text>
      <line className="trap-ground" x1={frame.left} x2={frame.right} y1={LINE} y2={LINE} />
      {treatments.map(({ appliedOn, product, coversUntil, protectsUntil }) => {
        const until = coversUntil ?? protectsUntil;
        const [from, to] = [inside(day(appliedOn)), until === null ? inside(day(appliedOn) + 1) : inside(day(until))];
        return (
          <rect
            key={`${appliedOn}|${product}`}
            className="covered"
            fill={`url(#${hatch})`}
            x={from}
            y={LINE - 7}
            width={Math.max(2, to - from)}
            height={14}
          />
        );
      })}
      {decisions.map(({ decidedOn, decision }) => {
        const x = inside(day(decidedOn) + 0.5);
        return <path key={`${decidedOn}|${decision}`} className="not-treated" d={`M${x},${LINE - 6}l6,6l-6,6l-6,-6Z`} />;
      })}
      {late > 0 && <line className="late-span" x1={inside(day(advice.dueSince!))} x2={inside(today)} y1={LINE} y2={LINE} />}
      {ahead.again.map((on) => (
        <Upright key={on} className="again" plot={{ top: LINE - 7, bottom: LINE + 7 }} x={inside(day(on) + 0.5)} />
      ))}
      {stop !== null && <Upright className="stop" plot={{ top: LINE - 9, bottom: LINE + 9 }} x={frame.x(stop)} />}
      <Words plot={{ left: frame.left, right: frame.width, top: 0, bottom: HEIGHT + 4 }} words={words} />
    </Strip>
  );
}

/** Beside a place on the line, over it or under it, where the line itself leaves room. */
const beside = (x: number, anchor: 'start' | 'end') => {
  const away = anchor === 'start' ? 4 : -4;
  return besideEnd(x + away, LINE + 18, anchor, 0).concat(besideEnd(x + away, LINE - 10, anchor, 0));
};
