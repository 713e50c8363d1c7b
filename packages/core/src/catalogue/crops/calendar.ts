/** How far a crop has come between planting and harvest, by the calendar. */

import { COMMON_PRACTICE } from '../sources/sources.ts';
import type { Crop, Sourced } from '../types.ts';

/** When the stages of a crop begin, as shares of its time from planting (of plants or seed) to the first harvest. */
export interface CropCalendar extends Sourced {
  /** Days from planting to the first harvest: of a fast planting and of a slow one. */
  readonly days: readonly [fast: number, slow: number];
  /** By stage, in the crop's order. */
  readonly begins: readonly number[];
}

const calendar = (days: readonly [number, number], begins: readonly number[]): CropCalendar => ({
  days,
  begins,
  ...COMMON_PRACTICE,
  note: {
    en: 'Shares of the time from planting to harvest, reckoned from what is commonly grown; dates typed for the field go before the days.',
    es: 'Partes del tiempo de la siembra a la cosecha, estimadas de lo que se cultiva comúnmente; las fechas anotadas de la parcela van antes que los días.',
  },
});

const fruiting = (days: readonly [number, number]) => calendar(days, [0, 0.12, 0.4, 0.5, 0.85, 1]);

/** A crop that is not here grows for years, or is not known. */
const CALENDARS: ReadonlyMap<Crop['id'], CropCalendar> = new Map([
  ['sweet-corn', calendar([60, 100], [0, 0.2, 0.64, 0.72, 0.82, 1])],
  ['field-corn', calendar([95, 150], [0, 0.14, 0.45, 0.5, 0.57, 1])],
  ['tomato', fruiting([60, 120])],
  ['pepper', fruiting([60, 120])],
  ['squash', calendar([45, 75], [0, 0.15, 0.6, 0.7, 0.95, 1])],
  ['pumpkin', fruiting([85, 130])],
  ['potato', calendar([80, 140], [0, 0.2, 0.35, 0.42, 0.5, 0.9, 1])],
  ['brassicas', calendar([50, 110], [0, 0.12, 0.55, 1, 1.15])],
  ['lettuce', calendar([45, 80], [0, 0.15, 0.6, 1, 1.15])],
  ['beet', calendar([50, 90], [0, 0.15, 1, 1.4])],
  ['onion', calendar([90, 150], [0, 0.12, 0.6, 1, 1.3])],
  ['garlic', calendar([200, 290], [0, 0.1, 0.75, 1, 1.2])],
  ['leek', calendar([90, 150], [0, 0.1, 1, 1.4])],
  ['peas', calendar([55, 80], [0, 0.15, 0.6, 0.75, 1])],
  ['beans', calendar([50, 100], [0, 0.15, 0.6, 0.75, 1])],
  ['eggplant', fruiting([65, 120])],
]);

export const cropCalendar = (crop: string): CropCalendar | null => CALENDARS.get(crop) ?? null;
