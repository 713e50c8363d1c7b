import { degreeDaysFrom, type TemperatureUnit } from '@duskwatch/core';
import { countText } from './number.ts';

/** The one place where a sum of heat becomes text: `1,204 °F·d`, in the unit the reader chose. */
export function heatText(degreeDays: number, modelUnit: TemperatureUnit, shown: TemperatureUnit): string {
  return `${countText(degreeDaysFrom(degreeDays, modelUnit, shown))} °${shown}·d`;
}
