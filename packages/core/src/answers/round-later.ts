/** A round read some days after it was fetched, by a phone that has had no signal since. */

import { addDays, day, daysBetween, formatDay, type IsoDay } from '../base/day.ts';
import { distanceKm } from '../base/distance.ts';
import { driveOrder } from '../planning/route.ts';
import { VISITS_TOLD } from '../questions/next-count.ts';
import type { CheckRecord, LureRecord, SkipRecord, StageRecord } from '../records/schema.ts';
import type { RoundField, RoundStop, RoundTrap, RoundView } from './round-schema.ts';
import { standingSkip } from './standing-skip.ts';

/** What the phone's own scout wrote since, sent or not. */
export interface WrittenSince {
  readonly checks: readonly CheckRecord[];
  readonly lures: readonly LureRecord[];
  readonly stages: readonly StageRecord[];
  readonly skips: readonly SkipRecord[];
}

/**
 * The round as far as it can be known on a later day: what is due, how old the lures are and which re-entry intervals
 * are over, with the scout's own visits counted in. A trap keeps the rhythm of visits it had when the view was made;
 * traps hung and fields treated by others since are not known here. On the view's own day with nothing written it is
 * the view itself.
 */
export function roundLater(view: RoundView, on: IsoDay, written: WrittenSince): RoundView {
  const { checks, lures, stages, skips } = written;
  if (on === view.on && checks.length + lures.length + stages.length + skips.length === 0) return view;
  const stops = view.stops.map((stop) => laterStop(stop, on, written));
  return { ...view, on, stops, dueLengthKm: roundOrder(stops.filter((stop) => stop.due)).lengthKm };
}

/** More stops than this are left in the order given, which a server found with more time than a phone has. */
const MOST_TO_REORDER = 60;

/** Stops in driving order, from a station when one is named, and the great-circle kilometres along them. */
export function roundOrder(stops: readonly RoundStop[], from: string | null = null): { stops: RoundStop[]; lengthKm: number } {
  if (stops.length > MOST_TO_REORDER) {
    const first = stops.findIndex(({ station }) => station === from);
    const turned = first > 0 ? [...stops.slice(first), ...stops.slice(0, first)] : [...stops];
    return { stops: turned, lengthKm: roundLengthKm(turned) };
  }
  const byId = new Map(stops.map((stop) => [stop.station, stop]));
  const places = stops.map(({ station, latitude, longitude }) => ({ id: station, latitude, longitude }));
  const { order, lengthKm } = driveOrder(places, from);
  return { stops: order.map(({ id }) => byId.get(id)!), lengthKm };
}

/** Great-circle kilometres along stops in the order given, past those whose place is not known. */
export function roundLengthKm(stops: readonly RoundStop[]): number {
  const placed = stops.filter(({ latitude, longitude }) => latitude !== null && longitude !== null);
  return placed.slice(1).reduce((sum, stop, index) => sum + distanceKm(placed[index]!, stop)!, 0);
}

function laterStop(stop: RoundStop, on: IsoDay, written: WrittenSince): RoundStop {
  const traps = stop.traps.map((trap) => laterTrap(trap, on, written));
  return {
    ...stop,
    due: traps.some((trap) => trap.due || trap.lure?.change),
    traps,
    fields: stop.fields.map((field) => laterField(field, on, written.stages)),
  };
}

function laterTrap(trap: RoundTrap, on: IsoDay, { checks, lures, skips }: WrittenSince): RoundTrap {
  const rhythm = daysBetween(day(trap.lastVisit?.on ?? trap.hungOn), day(trap.checkDue));
  const own = newest(
    checks.filter((check) => check.trapId === trap.trapId && check.checkedOn <= on),
    (check) => `${check.checkedOn} ${String(check.visit).padStart(2, '0')}`,
  );
  const isNews = own !== null && (trap.lastVisit === null || own.checkedOn >= trap.lastVisit.on);
  const lastVisit = isNews ? visitOf(own) : trap.lastVisit;
  const checkDue = isNews ? formatDay(addDays(day(own.checkedOn), rhythm)) : trap.checkDue;
  // A trap that was unfit is to be put right at once; having just been there is not a reason to turn round.
  const wasUnfit = isNews ? own.condition === 'unfit' && own.checkedOn < on : trap.due;
  const passedBy = newest(
    skips.filter((skip) => skip.trapId === trap.trapId && skip.skippedOn <= on),
    (skip) => skip.skippedOn,
  );
  const known = trap.skipped && { trapId: trap.trapId, skippedOn: trap.skipped.on, reason: trap.skipped.reason, note: null };
  return {
    ...trap,
    lastVisit,
    checkDue,
    due: wasUnfit || checkDue <= on,
    lure: laterLure(trap, on, lures, rhythm),
    most: !isNews || own.targetCount === null ? trap.most : Math.max(trap.most ?? 0, own.targetCount),
    told: isNews ? [...trap.told, ...toldBy(own, trap)].slice(-VISITS_TOLD) : trap.told,
    doubt: putRight(trap, isNews ? own : null, lures) ? null : (trap.doubt ?? null),
    skipped: standingSkip(passedBy ?? known ?? undefined, lastVisit?.on ?? null),
  };
}

/** Whether one's own visit answers the doubt about a trap: it was put right, has a fresh lure, or catches again. */
const putRight = ({ trapId, doubt, lure }: RoundTrap, own: CheckRecord | null, lures: readonly LureRecord[]): boolean =>
  lures.some((placed) => placed.trapId === trapId && placed.placedOn > (lure?.placedOn ?? '')) ||
  (own !== null && (own.condition !== 'fit' || (doubt?.kind === 'silent' && (own.targetCount ?? 0) > 0)));

/** What a visit of one's own says of its nights, where that is plain: what was left in, or unfit, only a server works out. */
function toldBy({ checkedOn, condition, targetCount }: CheckRecord, { lastVisit, hungOn }: RoundTrap): RoundTrap['told'] {
  const nights = daysBetween(day(lastVisit?.on ?? hungOn), day(checkedOn));
  const plain = condition !== 'unfit' && targetCount !== null && (lastVisit === null || lastVisit.emptied) && nights > 0;
  return plain ? [{ count: targetCount, nights }] : [];
}

function laterLure(trap: RoundTrap, on: IsoDay, lures: readonly LureRecord[], rhythm: number): RoundTrap['lure'] {
  const own = newest(
    lures.filter((lure) => lure.trapId === trap.trapId && lure.placedOn <= on),
    (lure) => lure.placedOn,
  );
  const lure = own !== null && (trap.lure === null || own.placedOn >= trap.lure.placedOn) ? own : trap.lure;
  if (lure === null) return null;
  const { placedOn, lifeDays } = lure;
  const ageDays = daysBetween(day(placedOn), day(on));
  return { placedOn, lifeDays, ageDays, change: lifeDays !== null && lifeDays < ageDays + rhythm };
}

function laterField(field: RoundField, on: IsoDay, stages: readonly StageRecord[]): RoundField {
  const own = newest(
    stages.filter((stage) => stage.fieldId === field.fieldId && stage.observedOn <= on),
    (stage) => stage.observedOn,
  );
  const isNews = own !== null && (field.stage === null || own.observedOn >= field.stage.observedOn);
  return {
    ...field,
    stage: isNews ? { stage: own.stage, observedOn: own.observedOn } : field.stage,
    keepOut: field.keepOut.filter(({ until }) => until >= on),
  };
}

const visitOf = (check: CheckRecord): NonNullable<RoundTrap['lastVisit']> => ({
  on: check.checkedOn,
  visit: check.visit,
  count: check.targetCount,
  condition: check.condition,
  emptied: check.emptied,
  unfitReason: check.unfitReason ?? null,
});

const newest = <T>(all: readonly T[], age: (each: T) => string): T | null =>
  all.reduce<T | null>((best, each) => (best === null || age(each) >= age(best) ? each : best), null);
