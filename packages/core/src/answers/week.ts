/** This week: every field and insect with its verb, and what is due today. */

import { stageOf } from '../advice/crop-stage.ts';
import { adviseCell } from '../advice/decide.ts';
import { checkDue, hanging, lureEnds } from '../advice/due.ts';
import { historyOf, type Prepared, weatherEnd } from '../advice/prepare.ts';
import type { Advice, Verb } from '../advice/types.ts';
import { addDays, type Day, day, daysBetween, formatDay } from '../base/day.ts';
import { insectById } from '../catalogue/index.ts';
import { quickOrder } from '../planning/route.ts';
import { scientificNameOf } from '../records/own-insect.ts';
import type { FieldRecord, TrapRecord } from '../records/schema.ts';
import { cellAdvice, trapsBehind } from './cell.ts';
import { rateLines } from './rate-line.ts';
import type { InsectName, RateLine } from './schema.ts';
import { skipOf } from './skipped.ts';
import { standingSkip } from './standing-skip.ts';
import type { DueField, DueTrap, WeekCell, WeekField, WeekView } from './week-schema.ts';

interface AdvisedField {
  readonly field: FieldRecord;
  /** In the order of the prepared insects. */
  readonly advice: readonly Advice[];
}

export function weekView(prepared: Prepared): WeekView {
  const fields = advisedFields(prepared);
  const leadsTo = fieldsOfTraps(fields);
  const { name, invented } = prepared.program.settings;
  const traps = hanging(prepared, [...prepared.traps.values()]);
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    countsTo: newestCheck(prepared),
    weatherTo: newestWeather(prepared),
    insects: prepared.insects.map(insectName),
    due: {
      decisions: dueFields(fields, 'decide'),
      scouting: dueFields(fields, 'scout'),
      checks: inRoundOrder(
        traps,
        traps.map((trap) => checkDueAt(prepared, trap, leadsTo)).filter((due) => due !== null),
      ),
      lures: inRoundOrder(
        traps,
        traps.map((trap) => lureDueAt(prepared, trap, leadsTo)).filter((due) => due !== null),
      ),
    },
    fields: fields.map((field) => weekField(prepared, field)),
  };
}

/** This year's fields with the advice for each. */
export const advisedFields = (prepared: Prepared): AdvisedField[] =>
  prepared.program.fields
    .filter((field) => inThisYear(prepared, field))
    .map((field) => ({
      field,
      advice: prepared.insects.map((insect) => adviseCell(prepared, field.fieldId, insect)),
    }));

/** The fields where a decision or a walk is due, the latest first. */
export function dueFieldsOf(prepared: Prepared): Readonly<Record<'decide' | 'scout', DueField[]>> {
  const fields = advisedFields(prepared);
  return { decide: dueFields(fields, 'decide'), scout: dueFields(fields, 'scout') };
}

/** A field whose crop came off long ago, or is planted next year, has no line on this week's page. */
export function inThisYear(prepared: Prepared, field: FieldRecord): boolean {
  const near = 60;
  const gone = field.harvestOn !== null && daysBetween(day(field.harvestOn), prepared.on) > near;
  const far = field.plantedOn !== null && daysBetween(prepared.on, day(field.plantedOn)) > near;
  return !gone && !far;
}

/** For each trap that some advice rests on, the first field that it leads to. */
function fieldsOfTraps(fields: readonly AdvisedField[]): ReadonlyMap<string, string> {
  const leadsTo = new Map<string, string>();
  for (const { field, advice } of fields)
    for (const trap of advice.flatMap(trapsBehind)) if (!leadsTo.has(trap)) leadsTo.set(trap, field.fieldId);
  return leadsTo;
}

function weekField(prepared: Prepared, { field, advice }: AdvisedField): WeekField {
  const stage = stageOf(prepared, field);
  const { fieldId, name, farm, crop, growthHabit } = field;
  return {
    fieldId,
    name,
    farm,
    crop,
    growthHabit,
    stage: stage && { stage: stage.written, observedOn: stage.observedOn },
    cells: advice.map((each) => weekCell(prepared, field, each)),
  };
}

function weekCell(prepared: Prepared, field: FieldRecord, advice: Advice): WeekCell {
  const lines = advice.verb === 'none' ? [] : rateLines(prepared, field, advice.insect);
  const design = advice.because.find((item) => item.kind === 'rate')?.design;
  return { advice: cellAdvice(advice), line: smallLine(lines.find((line) => line.design === design) ?? lines[0] ?? null) };
}

/** Figures that a line of thirty pixels can show: hundreds of fields weigh on the way to a phone. The field's own page has all. */
const SMALL_DIGITS = 3;

function smallLine(line: RateLine | null): RateLine | null {
  if (!line) return null;
  const small = (value: number | null) => value && Number(value.toPrecision(SMALL_DIGITS));
  const points = line.points.map((point) => ({
    ...point,
    perNight: small(point.perNight),
    low: small(point.low),
    high: small(point.high),
  }));
  return { ...line, points };
}

function dueFields(fields: readonly AdvisedField[], verb: Verb): DueField[] {
  return fields
    .flatMap(({ field: { fieldId, name, farm }, advice }) =>
      advice
        .filter((each) => each.verb === verb)
        .map(({ insect, by, dueSince }) => ({ fieldId, name, farm, insect, verb, by, dueSince })),
    )
    .sort((a, b) => dueDay(a).localeCompare(dueDay(b)));
}

/** The latest come first: by the day it has been due since, or will be. */
const dueDay = ({ by, dueSince }: Pick<DueField, 'by' | 'dueSince'>): string => dueSince ?? by ?? '';

type LeadsTo = ReadonlyMap<string, string>;

function checkDueAt(prepared: Prepared, trap: TrapRecord, leadsTo: LeadsTo): DueTrap | null {
  const last = historyOf(prepared, trap).intervals.at(-1);
  const due = checkDue(prepared, trap);
  if (last?.noInformation === 'unfit')
    return dueTrap(prepared, trap, leadsTo, 'unfit', last.to < prepared.on ? addDays(last.to, 1) : prepared.on);
  if (due > prepared.on) return null;
  return dueTrap(prepared, trap, leadsTo, due < prepared.on ? 'check-overdue' : 'check-due', due);
}

/** A lure is due when its life ends before the trap's next visit would come. */
function lureDueAt(prepared: Prepared, trap: TrapRecord, leadsTo: LeadsTo): DueTrap | null {
  const lure = lureEnds(prepared, trap);
  if (!lure) return null;
  const nextVisit = Math.max(prepared.on, checkDue(prepared, trap)) as Day;
  if (lure.ends >= nextVisit && lure.ends > prepared.on) return null;
  return dueTrap(prepared, trap, leadsTo, lure.ends < prepared.on ? 'lure-overdue' : 'lure-due', lure.ends);
}

function dueTrap(prepared: Prepared, trap: TrapRecord, leadsTo: LeadsTo, why: DueTrap['why'], due: Day): DueTrap {
  const { trapId, station, insect } = trap;
  const daysLate = Math.max(0, daysBetween(due, prepared.on));
  return {
    trapId,
    station,
    insect,
    why,
    due: formatDay(due),
    daysLate,
    skipped: passedBy(prepared, trap),
    fieldId: leadsTo.get(trapId) ?? null,
  };
}

/** Why a trap was last passed by, if nobody has been there since. */
export function passedBy(prepared: Prepared, trap: TrapRecord) {
  const last = historyOf(prepared, trap).intervals.at(-1);
  return standingSkip(skipOf(prepared, trap.trapId), last ? formatDay(last.to) : null);
}

/** Station by station, as one may drive past them: the list is worked through outdoors. */
export function inRoundOrder<T extends { readonly trapId: string; readonly station: string }>(
  traps: readonly TrapRecord[],
  due: readonly T[],
): T[] {
  const asked = new Set(due.map(({ station }) => station));
  const places = new Map<string, TrapRecord>();
  for (const trap of traps) {
    const known = places.get(trap.station);
    if (asked.has(trap.station) && (!known || (known.latitude === null && trap.latitude !== null)))
      places.set(trap.station, trap);
  }
  const stations = [...places.values()].sort((a, b) => a.station.localeCompare(b.station));
  const place = new Map(quickOrder(stations).map(({ station }, index) => [station, index]));
  return [...due].sort((a, b) => place.get(a.station)! - place.get(b.station)! || a.trapId.localeCompare(b.trapId));
}

export function insectName(id: string): InsectName {
  const known = insectById(id);
  return known
    ? { id, scientificName: known.scientificName, commonName: known.commonName }
    : { id, scientificName: scientificNameOf(id), commonName: { en: scientificNameOf(id), es: scientificNameOf(id) } };
}

export function newestCheck(prepared: Prepared): string | null {
  const today = formatDay(prepared.on);
  let newest: string | null = null;
  for (const { checkedOn } of prepared.program.checks)
    if (checkedOn <= today && (newest === null || checkedOn > newest)) newest = checkedOn;
  return newest;
}

function newestWeather(prepared: Prepared): string | null {
  const ends = [...prepared.weather.values()].map(weatherEnd).filter((end) => end !== null);
  return ends.length === 0 ? null : formatDay(Math.max(...ends) as Day);
}
