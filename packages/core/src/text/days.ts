import { day, type IsoDay } from '../base/day.ts';

const weekday = new Intl.DateTimeFormat('es', { weekday: 'short', timeZone: 'UTC' });
const dayMonth = new Intl.DateTimeFormat('es', { day: 'numeric', month: 'long', timeZone: 'UTC' });

/** `dom 13 de julio`. */
export function spanishDay(text: IsoDay): string {
  const instant = day(text) * 86_400_000;
  return `${weekday.format(instant)} ${dayMonth.format(instant)}`;
}
