/** What is said of a trap that the records leave in doubt, in English. */
import type { Evidence } from '../advice/types.ts';
import type { IsoDay } from '../base/day.ts';
import { figure } from './figures.ts';

type TrapDoubt = Evidence & { kind: 'trap-doubt' };

/** In a headline: what was seen, and what to look at. */
export function doubtLine(item: TrapDoubt, date: (day: IsoDay) => string): string {
  return item.doubt === 'silent'
    ? `Trap ${item.trapId} has caught nothing since ${date(item.since)} while others of its kind caught about ${figure(item.expected)} each: look at its lure, opening and place.`
    : `Trap ${item.trapId} has caught ${item.count} since ${date(item.since)} while others of its kind caught about ${figure(item.expected)} each: look at its lure, what was counted, and its place.`;
}

export function doubtSentence(item: TrapDoubt, date: (day: IsoDay) => string): string {
  const chance =
    item.chance < 0.0005 ? 'less than one sound trap in 2,000' : `about one sound trap in ${figure(Math.round(1 / item.chance))}`;
  const so =
    item.doubt === 'loud'
      ? 'Its catch is used, with a doubt.'
      : item.degree === 'strong'
        ? 'It is not used until it catches again, is put right, or somebody answers under Questions that its place is just so.'
        : 'It is still used, with a doubt, until it catches again, is put right, or somebody answers under Questions that its place is just so.';
  const look = item.doubt === 'silent' ? 'in a poor place is as silent' : 'in a good place catches as much';
  return `${doubtLine(item, date)} As places differ, ${chance} ${look}. ${so}`;
}
