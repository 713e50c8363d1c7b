/** Do field and insect meet now? Host, planting, harvest and the stage of the crop. */

import { type Day, day, daysBetween, formatDay } from '../base/day.ts';
import { ASSUMPTIONS, canonicalStage, cropById, cropHeat, insectById, stageOrder } from '../catalogue/index.ts';
import type { FieldRecord } from '../records/schema.ts';
import { cellKey, growingYearStart, heatOf, once, type Prepared, recordDay, weatherSourceOf } from './prepare.ts';
import { type CarriedStage, type CropHeatTrack, carriedStage } from './stage-carried.ts';
import type { Evidence } from './types.ts';

export interface StageKnown {
  readonly written: string;
  /** The crop's own word for it; null when the crop or the word is not in the catalogue. */
  readonly canonical: string | null;
  readonly observedOn: string;
  readonly ageDays: number;
  /** Where the crop may be today; null where nothing carries the stage forward. */
  readonly carried: CarriedStage | null;
}

/** The newest stage somebody saw; null when nobody did since planting, or since the growing year began. */
export function stageOf(prepared: Prepared, field: FieldRecord): StageKnown | null {
  return once(prepared, 'no check', `stage ${field.fieldId}`, () => stageOn(prepared, field));
}

function stageOn(prepared: Prepared, field: FieldRecord): StageKnown | null {
  const today = formatDay(prepared.on);
  const seen = prepared.stagesByField.get(field.fieldId)?.findLast(({ observedOn }) => observedOn <= today);
  if (!seen || seen.observedOn < (field.plantedOn ?? formatDay(growingYearStart(field, prepared.on)))) return null;
  return {
    written: seen.stage,
    canonical: canonicalStage(field.crop, seen.stage),
    observedOn: seen.observedOn,
    ageDays: daysBetween(day(seen.observedOn), prepared.on),
    carried: carriedStage(field, { stage: seen.stage, on: day(seen.observedOn) }, prepared.on, heatOfCrop(prepared, field)),
  };
}

function heatOfCrop(prepared: Prepared, field: FieldRecord): CropHeatTrack | null {
  const crop = cropHeat(field.crop);
  const source = crop && weatherSourceOf(prepared, field);
  return crop && source !== null ? { crop, track: heatOf(prepared, source, crop.heat) } : null;
}

export type StageFit =
  | { readonly kind: 'any' }
  | { readonly kind: 'susceptible' | 'not-yet' | 'over'; readonly stage: StageKnown }
  /** Seen at another stage, or at this one long ago: by heat or by the calendar it may be there now, since `since` at the earliest. */
  | { readonly kind: 'may-be'; readonly stage: StageKnown; readonly since: Day }
  /** Nobody wrote a stage, the word is not understood, or nothing says how far the crop has moved on since it was seen. */
  | { readonly kind: 'unknown'; readonly stage: StageKnown | null };

/** Whether the crop is at one of a rule's stages, as far as anybody has seen. */
export function stageFit(field: FieldRecord, needed: readonly string[] | null, stage: StageKnown | null): StageFit {
  if (needed === null || needed.length === 0) return { kind: 'any' };
  if (stage === null || stage.canonical === null) return { kind: 'unknown', stage };
  const words = needed.map((word) => canonicalStage(field.crop, word) ?? word);
  const seenHere = words.includes(stage.canonical);
  const isOld = stage.ageDays > ASSUMPTIONS.stageOldDays.value;
  if (seenHere && !isOld) return { kind: 'susceptible', stage };
  const at = stageOrder(field.crop, stage.canonical);
  const places = words.map((word) => stageOrder(field.crop, word)).filter((place) => place !== null);
  if (at === null || places.length === 0) return { kind: 'unknown', stage };
  if (at > Math.max(...places)) return { kind: 'over', stage };
  const { carried } = stage;
  if (carried === null) return seenHere ? { kind: 'susceptible', stage } : { kind: isOld ? 'unknown' : 'not-yet', stage };
  const within = places.filter((place) => carried.from <= place && place <= carried.to);
  // Nobody saw this stage end: heat or the calendar alone ends it only where the crop must have come to harvest.
  const ended = carried.from >= (cropById(field.crop)?.stages.findIndex(({ id }) => id === 'harvest') ?? 0);
  if (seenHere && within.length === 0 && !ended) return { kind: 'may-be', stage, since: day(stage.observedOn) };
  if (within.length === 0) return { kind: carried.from > Math.max(...places) ? 'over' : 'not-yet', stage };
  const nowhereElse = within.length === carried.to - carried.from + 1;
  if (seenHere && nowhereElse) return { kind: 'susceptible', stage };
  return { kind: 'may-be', stage, since: seenHere ? day(stage.observedOn) : carried.mayHaveBegun(Math.min(...within)) };
}

/** Why the field is out of season for the insect whatever the catch; null when it may be in season. */
export function whyOutOfSeason(prepared: Prepared, field: FieldRecord, insect: string): Evidence | null {
  const { on } = prepared;
  if (!isHost(prepared, field, insect)) return { kind: 'out-of-season', why: 'not-a-host', date: null, days: null };
  const planted = recordDay(field.plantedOn);
  if (planted !== null && planted > on) {
    return { kind: 'out-of-season', why: 'not-planted', date: formatDay(planted), days: daysBetween(on, planted) };
  }
  const harvest = recordDay(field.harvestOn);
  if (harvest !== null && harvest < on) {
    return { kind: 'out-of-season', why: 'harvested', date: formatDay(harvest), days: daysBetween(harvest, on) };
  }
  return null;
}

/** A crop is a host when the catalogue says so, when it does not know, or when the program itself watches the pair. */
function isHost(prepared: Prepared, field: FieldRecord, insect: string): boolean {
  const known = insectById(insect);
  if (!known || !cropById(field.crop) || known.hosts.includes(field.crop) || known.feedsOn.includes(field.crop)) return true;
  const key = cellKey(field.fieldId, insect);
  return (
    prepared.trapsByCell.has(key) ||
    prepared.samplesByCell.has(key) ||
    prepared.program.rules.some((rule) => rule.crop === field.crop && rule.insect === insect)
  );
}
