import type { Advice } from '../advice/types.ts';
import { day, daysBetween, type IsoDay } from '../base/day.ts';

const weekday = new Intl.DateTimeFormat('es', { weekday: 'short', timeZone: 'UTC' });
const dayMonth = new Intl.DateTimeFormat('es', { day: 'numeric', month: 'long', timeZone: 'UTC' });

/** `dom 13 de julio`. */
export function spanishDay(text: IsoDay): string {
  const instant = day(text) * 86_400_000;
  return `${weekday.format(instant)} ${dayMonth.format(instant)}`;
}

/** Days by which the date of a verb has passed; 0 while it has not. */
export const daysLate = ({ by, dueSince }: Pick<Advice, 'by' | 'dueSince'>): number =>
  by === null || dueSince === null ? 0 : daysBetween(day(dueSince), day(by));
