import { addDays, day, type FieldInsectView } from '@duskwatch/core';
import { fieldPageWords } from '../../text/field-page.ts';
import { useWording } from '../../text/wording.ts';
import { CheckMark, LureMark } from './marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 36;
const CHECKS = 20;
const LURE = 31;

/** A trap's own log: its name, its checks, and the life of each lure beneath them. */
export function TrapStrip({
  insect,
  trap,
  ...props
}: StripProps & { insect: FieldInsectView; trap: FieldInsectView['traps'][number] }) {
  const { frame, today } = props;
  const wording = useWording();
  const hung = Math.max(frame.from, day(trap.hungOn));
  const down = trap.takenDownOn ? day(trap.takenDownOn) : today + 1;
  const lures = insect.lures.filter((lure) => lure.trapId === trap.trapId).sort((a, b) => a.placedOn.localeCompare(b.placedOn));
  const newest = lures.at(-1);
  const pastDays =
    newest && newest.lifeDays !== null && down > today ? Math.max(0, today - addDays(day(newest.placedOn), newest.lifeDays)) : 0;
  const middle = (at: number) => frame.x(at + 0.5);
  const inside = (at: number) => Math.min(Math.max(at, frame.from), frame.to + 1);
  return (
    <Strip {...props} height={HEIGHT} className="trap">
      <text x={frame.left} y={10}>
        <tspan className="trap-name">{trap.trapId}</tspan> {wording.design[trap.design]}
        {pastDays > 0 && <tspan className="past-word"> · {fieldPageWords.chart.past(pastDays)}</tspan>}
      </text>
      {lures.map((lure, index) => {
        const placed = day(lure.placedOn);
        const next = lures[index + 1];
        const until = Math.min(next ? day(next.placedOn) : today + 1, down);
        const spent = lure.lifeDays === null ? until : Math.min(until, addDays(placed, lure.lifeDays));
        return (
          <g key={lure.placedOn}>
            <line className="lure-life" x1={frame.x(inside(placed))} x2={frame.x(inside(spent))} y1={LURE} y2={LURE} />
            {spent < until && (
              <>
                <line className="lure-past" x1={frame.x(inside(spent))} x2={frame.x(inside(until))} y1={LURE} y2={LURE} />
                <line className="lure-end" x1={frame.x(inside(spent))} x2={frame.x(inside(spent))} y1={LURE - 4} y2={LURE + 4} />
              </>
            )}
            {placed >= frame.from && placed <= frame.to && <LureMark x={middle(placed)} y={LURE} />}
          </g>
        );
      })}
      <line className="trap-ground" x1={frame.x(inside(hung))} x2={frame.x(inside(down))} y1={CHECKS + 5.5} y2={CHECKS + 5.5} />
      {insect.checks
        .filter((check) => check.trapId === trap.trapId && day(check.on) >= frame.from && day(check.on) <= frame.to)
        .map((check, index) => (
          // Two visits on one day share day and trap.
          // biome-ignore lint/suspicious/noArrayIndexKey: marks carry no state
          <CheckMark key={`${check.on}|${index}`} condition={check.condition} x={middle(day(check.on))} y={CHECKS} />
        ))}
    </Strip>
  );
}
