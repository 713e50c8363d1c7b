/** Who drives and when, as this device remembers it. */
import { addDays, day, formatDay, type IsoDay, type RoundScout, type RoundsRequest, type StationToVisit } from '@duskwatch/core';

export interface ScoutSetup {
  readonly name: string;
  /** `08:00`. */
  readonly start: string;
  readonly hours: number;
  /** As written: `44.91, -63.50`; empty: none. */
  readonly home: string;
}

export interface Setup {
  readonly days: number;
  readonly scouts: readonly ScoutSetup[];
  /** Stations to be seen before noon. */
  readonly morning: readonly string[];
}

export const MOST_DAYS = 7;
const NOON = 12 * 60;
const KEY = 'duskwatch.rounds';

export const newScout = (name: string): ScoutSetup => ({ name, start: '08:00', hours: 8, home: '' });

export function readSetup(firstName: string): Setup {
  const usual = { days: 1, scouts: [newScout(firstName)], morning: [] };
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Setup | null;
    return kept && Array.isArray(kept.scouts) && Array.isArray(kept.morning) ? { ...usual, ...kept } : usual;
  } catch {
    return usual;
  }
}

export function keepSetup(setup: Setup): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(setup));
  } catch {}
}

/** Undefined: written, but no place. */
export function homeOf(written: string): RoundScout['home'] | undefined {
  if (written.trim() === '') return null;
  const [latitude, longitude, ...more] = written.split(/[,;]\s*|\s+/).map(Number);
  const isPlace = more.length === 0 && Math.abs(latitude ?? Number.NaN) <= 90 && Math.abs(longitude ?? Number.NaN) <= 180;
  return isPlace ? { latitude: latitude!, longitude: longitude! } : undefined;
}

export function minuteOf(clock: string): number {
  const [hours, minutes] = clock.split(':').map(Number);
  return Number.isInteger(hours) && Number.isInteger(minutes) ? hours! * 60 + minutes! : 8 * 60;
}

/** `08:05`; past midnight it counts on. */
export function clockText(minute: number): string {
  const whole = Math.round(minute);
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}

export const daysFrom = (on: IsoDay, days: number): IsoDay[] =>
  Array.from({ length: days }, (_, n) => formatDay(addDays(day(on), n)));

export function requestFor(
  stations: readonly StationToVisit[],
  { days, scouts, morning }: Setup,
  on: IsoDay,
  travel: RoundsRequest['travel'],
): RoundsRequest {
  return {
    stations: stations.map((station) => ({
      ...station,
      window: morning.includes(station.id) ? { fromMinute: 0, toMinute: NOON } : null,
    })),
    scouts: scouts.map(({ name, start, hours, home }) => ({
      id: name,
      home: homeOf(home) ?? null,
      startMinute: minuteOf(start),
      capacityHours: hours,
    })),
    days: daysFrom(on, days),
    travel,
  };
}
