/** What a week comes to in a sentence, and which of its fields need nothing. */
import { day, daysBetween, type IsoDay } from '../base/day.ts';
import type { WeekField, WeekView } from './week-schema.ts';

export interface WeekSummary {
  /** Decisions that were due before the day read. */
  readonly lateDecisions: number;
  /** The others, and the last day by which they are due; null when there are none. */
  readonly moreDecisions: number;
  readonly moreBy: IsoDay | null;
  /** Fields to look into, be it for several insects. */
  readonly scouting: number;
  /** Field and insect pairs about which nothing can be told. */
  readonly blind: number;
  readonly fields: number;
  readonly farms: number;
  readonly quiet: number;
}

/** Days between the day a thing was due and the day of reading; 0 while it is not late. */
export const daysLateOn = (on: IsoDay, dueSince: IsoDay | null): number =>
  dueSince === null ? 0 : Math.max(0, daysBetween(day(dueSince), day(on)));

/** Nobody has to go or to decide: every insect is watched, or does not meet the crop now. */
export const needsNothing = ({ cells }: Pick<WeekField, 'cells'>): boolean =>
  cells.every(({ advice }) => advice.verb === 'watch' || advice.verb === 'none');

/** The soonest next check among what is watched in some fields; null when none has one. */
export const soonestCheck = (fields: readonly WeekField[]): IsoDay | null =>
  fields
    .flatMap(({ cells }) => cells.flatMap(({ advice }) => (advice.verb === 'watch' && advice.by !== null ? [advice.by] : [])))
    .sort()[0] ?? null;

export function weekSummary({ on, due, fields }: WeekView): WeekSummary {
  const isLate = ({ dueSince }: { readonly dueSince: IsoDay | null }) => daysLateOn(on, dueSince) > 0;
  const late = due.decisions.filter(isLate);
  const more = due.decisions.filter((one) => !isLate(one));
  return {
    lateDecisions: late.length,
    moreDecisions: more.length,
    moreBy: more.reduce<IsoDay | null>((last, { by }) => (by !== null && (last === null || by > last) ? by : last), null),
    scouting: new Set(due.scouting.map(({ fieldId }) => fieldId)).size,
    blind: fields.reduce((sum, { cells }) => sum + cells.filter(({ advice }) => advice.verb === 'blind').length, 0),
    fields: fields.length,
    farms: new Set(fields.map(({ farm }) => farm)).size,
    quiet: fields.filter(needsNothing).length,
  };
}
