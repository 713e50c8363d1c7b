import type { IsoDay, RoundStop, RoundTrap } from '@duskwatch/core';
import { shortDay } from '../../format/day.ts';
import { skippedText } from '../../shared/traps/skipped.ts';
import { driveWords } from '../../text/drive.ts';
import { roundWords as w } from '../../text/round.ts';
import { type DueWhy, whyDue } from '../shared/due-why.ts';
import { whole } from '../shared/figures.ts';

/** Why each stop is due: said once for all traps of which it is true. */
export function DueWords({
  stop,
  asked,
  on,
}: {
  readonly stop: RoundStop;
  readonly asked: (trap: RoundTrap) => boolean;
  readonly on: IsoDay;
}) {
  const traps = stop.traps.filter(asked);
  const said = new Map(traps.flatMap((trap) => whyDue(trap, on).map((why) => [dueText(why), why.kind !== 'check'] as const)));
  if (said.size === 0 && traps.length > 0) said.set(driveWords.due.notDue(shortDay(traps[0]!.checkDue)), false);
  return (
    <small className="due-why">
      {[...said].map(([text, marked], index) => (
        <span key={text}>
          {index > 0 && ' · '}
          {marked ? <b>{text}</b> : text}
        </span>
      ))}
    </small>
  );
}

export function dueText(why: DueWhy): string {
  const d = driveWords.due;
  switch (why.kind) {
    case 'check':
      return why.first ? d.never : why.daysLate === 0 ? d.today : d.late(why.daysLate);
    case 'unfit':
      return why.reason === null || why.reason === 'other' ? d.unfitUnsaid : d.unfit(w.trap.reasons[why.reason]);
    case 'lure':
      return why.daysLeft < 0 ? d.lurePast(-why.daysLeft) : why.daysLeft === 0 ? d.lureLast : d.lureSoon(why.daysLeft);
    case 'silent':
    case 'loud':
      return d[why.kind](why.nights, whole(why.count), whole(Math.round(why.expected)));
    case 'skipped':
      return skippedText(why);
  }
}
