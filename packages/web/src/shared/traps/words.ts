/** What a trap's columns say. */
import type { StationPlace, StationTrap } from '@duskwatch/core';
import { lengthUnit } from '../../browser/preferences.ts';
import { shortDay } from '../../format/day.ts';
import { distanceText, lengthText } from '../../format/length.ts';
import { countText, rateText } from '../../format/number.ts';
import { trapsWords as w } from '../../text/traps.ts';

/** Short when it is this year's, with the year when it is not. */
export const dayOnPage = (date: string, on: string): string =>
  date.slice(0, 4) === on.slice(0, 4) ? shortDay(date) : `${shortDay(date)} ${date.slice(0, 4)}`;

export function hungText({ state, hungOn, takenDownOn }: StationTrap, on: string): string {
  if (state === 'planned') return w.planned(dayOnPage(hungOn, on));
  return takenDownOn === null
    ? w.hungSince(dayOnPage(hungOn, on))
    : w.hungSpan(dayOnPage(hungOn, on), dayOnPage(takenDownOn, on));
}

export function visitText({ lastVisit }: StationTrap, on: string, condition: Readonly<Record<string, string>>): string {
  if (lastVisit === null) return w.noChecks;
  const when = dayOnPage(lastVisit.on, on);
  return lastVisit.count === null
    ? w.uncounted(condition[lastVisit.condition] ?? lastVisit.condition, when)
    : w.count(countText(lastVisit.count), when);
}

export const rateOf = ({ newest }: StationTrap): string => (newest === null ? w.noRate : w.perNight(rateText(newest.perNight)));

export function dueText({ check, state }: StationTrap, on: string): string {
  if (check === null) return state === 'hanging' ? w.notSent : w.notHanging[state];
  return w.due[check.state](dayOnPage(check.due, on), check.daysLate);
}

export function lureText({ lure }: StationTrap): string {
  if (lure === null) return w.lure.unknown;
  const age = lure.lifeDays === null ? w.lure.age(lure.ageDays) : `${lure.ageDays} ${w.lure.life(lure.lifeDays)} d`;
  return lure.spent ? `${age}, ${w.lure.spent}` : age;
}

export function placeText(place: StationPlace): string | null {
  if (place.places === 1) return null;
  const which = w.place(place.place, place.places);
  if (place.place === 1) return which;
  return `${which}, ${place.movedM === null ? w.movedWhere : w.moved(movedText(place.movedM))}`;
}

const movedText = (metres: number): string =>
  metres >= 1000 ? distanceText(metres / 1000, lengthUnit()) : lengthText(metres, lengthUnit());

export const degreesText = (latitude: number, longitude: number): string => `${latitude.toFixed(5)}°, ${longitude.toFixed(5)}°`;
