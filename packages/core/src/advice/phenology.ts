/** When heat says that something is due: model events of an insect at a field, and the scouting they call for. */

import { addDays, type Day, day, dayOf, daysBetween, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { ASSUMPTIONS, insectById, modelById } from '../catalogue/index.ts';
import type { BiofixRule, EventId, HeatScoutRule, PhenologyModel } from '../catalogue/types.ts';
import { captureChance, findBiofix } from '../flight/index.ts';
import type { Biofix } from '../flight/types.ts';
import { type HeatTrack, type Projection, projectEvent } from '../heat/index.ts';
import type { FieldRecord } from '../records/schema.ts';
import { cellKey, growingYearStart, heatOf, historyOf, type Prepared, trapsThisSeason, weatherSourceOf } from './prepare.ts';
import type { Evidence } from './types.ts';
import { type HeatAhead, heatAhead } from './weather-ahead.ts';

export type EventEvidence = Evidence & { readonly kind: 'event' };
type Missing = Evidence & { readonly kind: 'missing' };

/** Heat since a model's start at a field, as far as the weather goes. */
export interface ModelHeat {
  readonly model: PhenologyModel;
  readonly start: Day;
  readonly biofix: Biofix | null;
  readonly track: HeatTrack;
  /** The same and what somebody forecast after it. */
  readonly ahead: HeatAhead;
  /** In the model's unit, from `start` through `through`. */
  readonly total: number;
  readonly through: Day;
  readonly bridgedDays: number;
  /** Days of it that another source stood in for. */
  readonly filledDays: number;
}

export type ModelHeatResult =
  | { readonly kind: 'known'; readonly heat: ModelHeat }
  /** The model has not started: its biofix has not been seen. */
  | { readonly kind: 'not-started' }
  | { readonly kind: 'missing'; readonly missing: Missing; readonly biofix: Biofix | null };

export function modelHeat(prepared: Prepared, field: FieldRecord, model: PhenologyModel): ModelHeatResult {
  const biofix = model.start.kind === 'biofix' ? biofixOf(prepared, field, model.insect) : null;
  const start = model.start.kind === 'calendar' ? calendarStart(prepared, field, model.start) : (biofix?.on ?? null);
  if (start === null) return { kind: 'not-started' };
  const source = weatherSourceOf(prepared, field);
  if (source === null) {
    const what = prepared.weather.size === 0 ? 'weather' : 'weather-source';
    return { kind: 'missing', missing: missing(what, start, prepared.on), biofix };
  }
  const track = heatOf(prepared, source, model.heat);
  const ahead = heatAhead(prepared, source, model.heat);
  const { end } = track;
  if (end === null) return { kind: 'missing', missing: missing('weather', start, prepared.on), biofix };
  const behind = daysBetween(end, prepared.on);
  if (behind > ASSUMPTIONS.weatherStaleDays.value && end >= start) {
    return { kind: 'missing', missing: missing('weather', addDays(end, 1), prepared.on), biofix };
  }
  if (end < start) {
    if (daysBetween(start, prepared.on) > ASSUMPTIONS.weatherStaleDays.value) {
      return { kind: 'missing', missing: missing('weather', start, prepared.on), biofix };
    }
    return {
      kind: 'known',
      heat: { model, start, biofix, track, ahead, total: 0, through: addDays(start, -1), bridgedDays: 0, filledDays: 0 },
    };
  }
  const sum = track.total(start, end);
  if (!sum.ok) return { kind: 'missing', missing: missing('weather', sum.gap.from, sum.gap.to), biofix };
  const { degreeDays: total, bridgedDays, filledDays } = sum;
  return { kind: 'known', heat: { model, start, biofix, track, ahead, total, through: end, bridgedDays, filledDays } };
}

function biofixOf(prepared: Prepared, field: FieldRecord, insect: string): Biofix | null {
  const rule = insectById(insect)?.biofix?.rule;
  if (!rule) return null;
  const histories = trapsThisSeason(prepared, field, insect).map((trap) => historyOf(prepared, trap));
  const biofix = findBiofix(rule, histories);
  if (!biofix?.running || biofix.earliest !== null) return biofix;
  const past = earliestOfPastYears(prepared, field, insect, rule);
  return { ...biofix, earliest: past === null ? null : (Math.min(past, biofix.on) as Day) };
}

/** How early in its season any past year's flight may have begun at this field, moved to this season; null without one seen to begin. */
function earliestOfPastYears(prepared: Prepared, field: FieldRecord, insect: string, rule: BiofixRule): Day | null {
  const start = growingYearStart(field, prepared.on);
  const traps = prepared.trapsByCell.get(cellKey(field.fieldId, insect)) ?? [];
  const bySeason = groupBy(traps, ({ hungOn }) => formatDay(growingYearStart(field, day(hungOn))));
  const days = [...bySeason].flatMap(([begun, own]) => {
    const season = day(begun);
    if (season >= start) return [];
    const found = findBiofix(
      rule,
      own.map((trap) => historyOf(prepared, trap)),
    );
    return found === null || found.running || found.earliest === null ? [] : [addDays(start, found.earliest - season)];
  });
  return days.length === 0 ? null : (Math.min(...days) as Day);
}

/** Where one event stands: ahead with its expected dates, under way, or past. */
export function eventAt(
  heat: ModelHeat,
  event: { readonly event: EventId; readonly generation: number | null; readonly from: number; readonly to: number | null },
): EventEvidence {
  const { model, total } = heat;
  const status = total < event.from ? 'ahead' : event.to !== null && total < event.to ? 'now' : 'past';
  return {
    kind: 'event',
    modelId: model.id,
    event: event.event,
    generation: event.generation,
    from: event.from,
    to: event.to,
    unit: model.heat.unit,
    heatSoFar: total,
    heatThrough: formatDay(heat.through),
    bridgedDays: heat.bridgedDays,
    filledDays: heat.filledDays,
    filledFrom: heat.filledDays === 0 ? null : heat.track.filledFrom,
    status,
    start: unsureStart(heat.biofix),
    expected: withEarlyStart(
      heat,
      event.from,
      status === 'ahead' ? projected(heat, heat.start, event.from) : reachedOn(heat, event.from),
    ),
  };
}

/** Where a model may have started before the day its heat is counted from; null where that day is as sure as a visit is. */
function unsureStart(biofix: Biofix | null): EventEvidence['start'] {
  if (biofix === null || !(biofix.running || biofix.probability !== null) || biofix.earliest === addDays(biofix.on, -1))
    return null;
  return {
    earliest: biofix.earliest === null ? null : formatDay(biofix.earliest),
    latest: formatDay(biofix.on),
    running: biofix.running,
  };
}

/** The dates of an event with the early end that an earlier start gives. */
function withEarlyStart(heat: ModelHeat, target: number, expected: EventEvidence['expected']): EventEvidence['expected'] {
  const start = unsureStart(heat.biofix);
  if (expected === null || start?.earliest == null) return expected;
  const from = day(start.earliest);
  const reached = heat.track.dayReaching(from, target);
  const early = reached === null ? projected(heat, from, target)?.early : formatDay(reached);
  return early !== undefined && early < expected.early ? { ...expected, early } : expected;
}

export interface HeatFinding {
  /** Scouting that heat calls for now or within the lead time, soonest first. */
  readonly due: readonly { readonly rule: HeatScoutRule; readonly event: EventEvidence; readonly by: Day }[];
  /** True when at least one rule's model could be followed. */
  readonly seen: boolean;
  readonly missing: Missing | null;
  readonly because: readonly Evidence[];
}

/** Applies the rules that send somebody into the field by heat. */
export function heatFinding(prepared: Prepared, field: FieldRecord, rules: readonly HeatScoutRule[]): HeatFinding {
  const due: { rule: HeatScoutRule; event: EventEvidence; by: Day }[] = [];
  const because: Evidence[] = [];
  const biofixes = new Set<Biofix>();
  let seen = false;
  let lacking: Missing | null = null;
  for (const rule of rules) {
    const model = modelById(rule.modelId);
    if (!model) continue;
    const result = modelHeat(prepared, field, model);
    const biofix = result.kind === 'known' ? result.heat.biofix : result.kind === 'missing' ? result.biofix : null;
    if (biofix && ![...biofixes].some((known) => known.on === biofix.on)) biofixes.add(biofix);
    if (result.kind === 'not-started') because.push(...chanceOfStart(prepared, field, model.insect));
    if (result.kind === 'missing') lacking = result.missing;
    else seen = true;
    if (result.kind !== 'known') continue;
    const event = eventAt(result.heat, { event: rule.lookFor, generation: null, from: rule.from, to: rule.to });
    because.push(event);
    const by = scoutBy(event, prepared.on);
    if (by !== null) due.push({ rule, event, by });
  }
  const found = [...biofixes].map(
    (biofix): Evidence => ({
      kind: 'biofix',
      rule: biofix.rule,
      on: formatDay(biofix.on),
      earliest: biofix.earliest === null ? null : formatDay(biofix.earliest),
      running: biofix.running,
      probability: biofix.probability,
      assumed: biofix.probability === null ? null : captureAssumed(),
      trapId: biofix.trapId,
    }),
  );
  due.sort((a, b) => a.by - b.by);
  return { due, seen, missing: lacking, because: [...found, ...because, ...(lacking ? [lacking] : [])] };
}

/** What the catches say of a start that is not likely enough to date anything by. */
function chanceOfStart(prepared: Prepared, field: FieldRecord, insect: string): Evidence[] {
  const rule = insectById(insect)?.biofix?.rule;
  if (rule?.kind !== 'intense-capture') return [];
  const histories = trapsThisSeason(prepared, field, insect).map((trap) => historyOf(prepared, trap));
  const chance = captureChance(rule, histories);
  if (chance === null) return [];
  const { probability, trapId, from, on } = chance;
  const { moths, nights } = rule;
  return [
    {
      kind: 'capture-chance',
      ...{ moths, nights, probability, trapId, from: formatDay(from), to: formatDay(on), assumed: captureAssumed() },
    },
  ];
}

const captureAssumed = () => ({ k: ASSUMPTIONS.nightDispersionK.value, likely: ASSUMPTIONS.captureLikely.value });

/** The day by which it is worth going: at once while the window is open, the expected day while it is near. */
function scoutBy(event: EventEvidence, on: Day): Day | null {
  if (event.status === 'past') return null;
  const unsure = event.start === null ? null : scoutByEarly(event, event.start, on);
  if (unsure !== null) return unsure;
  // From the day the window opened: who did not go in time is late, and stays so.
  if (event.status === 'now') return addDays(event.expected ? day(event.expected.middle) : on, ASSUMPTIONS.scoutWithinDays.value);
  if (event.expected === null) return null;
  const middle = day(event.expected.middle);
  if (daysBetween(on, middle) > ASSUMPTIONS.scoutLeadDays.value) return null;
  return Math.max(on, middle) as Day;
}

/** Where the start is not sure, people go by the early end: what the late one dates may have come already. */
function scoutByEarly(
  { expected }: EventEvidence,
  { earliest, latest }: NonNullable<EventEvidence['start']>,
  on: Day,
): Day | null {
  const within = ASSUMPTIONS.scoutWithinDays.value;
  if (earliest === null) return addDays(day(latest), within);
  if (expected === null) return null;
  const early = day(expected.early);
  if (early <= on) return addDays(early, within);
  return daysBetween(on, early) > ASSUMPTIONS.scoutLeadDays.value ? null : early;
}

function projected(heat: ModelHeat, start: Day, target: number): EventEvidence['expected'] {
  const { track, forecastThrough } = heat.ahead;
  // A sum begun after the last known day has all its heat still to come.
  const known = track.total(start, track.end!);
  const reached = forecastThrough === null ? null : track.dayReaching(start, target);
  if (reached !== null) return { ...oneDate(reached), method: 'own-forecast', forecastThrough: formatDay(forecastThrough!) };
  if (!known.ok) return null;
  const window = projectEvent(track, target - known.degreeDays);
  return window && { ...writtenWindow(window), forecastThrough: forecastThrough === null ? null : formatDay(forecastThrough) };
}

/** A window with its days as they are written. */
export function writtenWindow<M extends string>({
  early,
  middle,
  late,
  lateOpen,
  method,
  years,
}: Omit<Projection, 'method'> & { readonly method: M }) {
  return { early: formatDay(early), middle: formatDay(middle), late: formatDay(late), lateOpen, method, years };
}

function oneDate(on: Day) {
  const date = formatDay(on);
  return { early: date, middle: date, late: date, lateOpen: false, years: 0 };
}

function reachedOn(heat: ModelHeat, target: number): EventEvidence['expected'] {
  const reached = heat.track.dayReaching(heat.start, target);
  if (reached === null) return null;
  return { ...oneDate(reached), method: 'reached', forecastThrough: null };
}

/**
 * The model's calendar start in the growing year that holds `on`: as many days into that year as the model's date lies
 * after 1 January, so that south of the equator a sum from 1 January begins on 1 July, in the same season.
 */
function calendarStart(prepared: Prepared, field: FieldRecord, start: { readonly month: number; readonly date: number }): Day {
  return addDays(growingYearStart(field, prepared.on), dayOf(2001, start.month, start.date) - dayOf(2001, 1, 1));
}

function missing(what: 'weather' | 'weather-source', from: Day, to: Day): Missing {
  return { kind: 'missing', what, from: formatDay(from), to: formatDay(to), detail: null };
}
