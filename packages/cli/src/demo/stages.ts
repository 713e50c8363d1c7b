/** Crop stages as scouts wrote them down. */
import { addDays, type Day, day, formatDay, type StageRecord } from '@duskwatch/core';
import type { DemoField } from './farms.ts';
import { randomFor } from './prng.ts';

/** Invented calendars: days after planting (or setting out) on which a stage begins. */
const STAGE_BEGINS: Readonly<Record<string, readonly (readonly [stage: string, days: number])[]>> = {
  'sweet-corn': [
    ['emergence', 9],
    ['whorl', 22],
    ['tassel', 50],
    ['silk', 56],
    ['dry-silk', 70],
    ['harvest', 77],
  ],
  'field-corn': [
    ['emergence', 10],
    ['whorl', 24],
    ['tassel', 64],
    ['silk', 69],
    ['dry-silk', 85],
    ['harvest', 155],
  ],
  tomato: [
    ['vegetative', 7],
    ['flowering', 28],
    ['fruiting', 45],
    ['ripening', 72],
    ['harvest', 78],
  ],
  pepper: [
    ['vegetative', 7],
    ['flowering', 32],
    ['fruiting', 48],
    ['ripening', 74],
    ['harvest', 78],
  ],
  potato: [
    ['emergence', 20],
    ['vegetative', 34],
    ['flowering', 58],
    ['tuber-bulking', 72],
    ['harvest', 118],
  ],
  squash: [
    ['emergence', 8],
    ['vegetative', 18],
    ['flowering', 38],
    ['fruiting', 48],
    ['harvest', 55],
  ],
  pumpkin: [
    ['emergence', 8],
    ['vegetative', 20],
    ['flowering', 40],
    ['fruiting', 56],
    ['harvest', 108],
  ],
};

/** A stage is written when it is new, or when the last note is this old. */
const REPEAT_AFTER_DAYS = 10;
/** How far a past season's planting may stray from this one's. */
const SOWING_SHIFT_DAYS = 6;

/** The day a field was sown in a season; this season's is the one in the table. */
export function sownOn(field: DemoField, year: number): Day {
  const shift = year === 2026 ? 0 : Math.round((randomFor(`sown ${field.id} ${year}`)() - 0.5) * 2 * SOWING_SHIFT_DAYS);
  return addDays(day(`${year}-${field.sown}`), shift);
}

/** One season of stage notes, made on the farm's rounds. */
export function stageNotes(field: DemoField, year: number, rounds: readonly Day[]): StageRecord[] {
  const begins = STAGE_BEGINS[field.crop] ?? [];
  const sown = sownOn(field, year);
  const notes: StageRecord[] = [];
  for (const on of rounds) {
    const stage = begins.findLast(([, days]) => on - sown >= days)?.[0];
    if (!stage) continue;
    const last = notes.at(-1);
    const known = last?.stage === stage && (stage === 'harvest' || on - day(last.observedOn) < REPEAT_AFTER_DAYS);
    if (!known) notes.push({ fieldId: field.id, observedOn: formatDay(on), stage });
  }
  return notes;
}
