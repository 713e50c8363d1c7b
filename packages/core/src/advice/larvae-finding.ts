/** What the moths caught at a field have left in it: which stages, where to look for them, and when it is worth going. */

import { addDays, type Day, daysBetween, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { lazily } from '../base/lazily.ts';
import { ASSUMPTIONS, catalogue, searchPlace } from '../catalogue/index.ts';
import type { PhenologyModel } from '../catalogue/types.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { EventForecast } from '../forecast/event-forecast.ts';
import { type LifeLine, lifeLine, type StageAmounts } from '../forecast/larvae.ts';
import { larvaeFromMoths, WORTH_GOING_SHARE } from '../forecast/larvae-outlook.ts';
import type { FieldRecord, TrapRecord } from '../records/schema.ts';
import { checkEvidence } from './catch-evidence.ts';
import { writtenWindow } from './phenology.ts';
import { historyOf, type Prepared, weatherSourceOf } from './prepare.ts';
import type { CaughtOutlook } from './shared.ts';
import type { TreatmentFinding } from './treatment.ts';
import type { Evidence, LarvaeDates } from './types.ts';
import { type HeatAhead, heatAhead } from './weather-ahead.ts';

type LarvaeEvidence = Evidence & { readonly kind: 'larvae' };

export interface LarvaeFinding {
  readonly because: LarvaeEvidence;
  /** When to go, where that is due now or within the lead time of scouting and moths enough were caught; else null. */
  readonly by: Day | null;
}

/** The model by which an insect's eggs and larvae are followed from the moths that lay them; null: none in the catalogue. */
export const larvaeModel = (insect: string): { readonly model: PhenologyModel; readonly line: LifeLine } | null =>
  LINES.get(insect) ?? null;

const LINES = new Map(
  [...catalogue.models].reverse().flatMap((model) => {
    const line = lifeLine(model);
    return line ? [[model.insect, { model, line }] as const] : [];
  }),
);

/** As far as scouting is announced; how the day worth going may shift is read off the heat, not off these days. */
const DAYS_AHEAD = ASSUMPTIONS.scoutLeadDays.value + 1;

/**
 * Follows the catch to its eggs and larvae, by the traps of the design that caught most: designs are never pooled. Only
 * nights whose offspring may still be eggs or larvae count, and none before the end of a recorded treatment's protection:
 * what was laid by then was laid before the treatment or under it.
 */
export function larvaeFinding(
  prepared: Prepared,
  field: FieldRecord,
  traps: readonly TrapRecord[],
  treatment: TreatmentFinding | null,
): LarvaeFinding | null {
  const since = treatment && (treatment.coversUntil ?? treatment.appliedOn);
  const found = [...groupBy(traps, ({ design }) => design).values()]
    .flatMap((own) => caughtOutlook(prepared, field, own, since, DAYS_AHEAD) ?? [])
    .reduce<CaughtOutlook | null>((best, one) => (best && best.outlook.moths >= one.outlook.moths ? best : one), null);
  if (found === null) return null;
  const because = lazily(() => evidenceOf(prepared, field, found));
  return {
    by: worthGoingBy(prepared.on, found),
    get because() {
      return because();
    },
  };
}

function worthGoingBy(on: Day, { outlook: { moths, worthGoing }, intervals }: CaughtOutlook): Day | null {
  const enough = moths >= ASSUMPTIONS.larvaeMoths.value * trapsOf(intervals.filter(isCounted));
  const near = worthGoing !== null && daysBetween(on, worthGoing) <= ASSUMPTIONS.scoutLeadDays.value;
  if (!enough || !near) return null;
  return worthGoing <= on ? addDays(worthGoing, ASSUMPTIONS.scoutWithinDays.value) : worthGoing;
}

const isCounted = ({ count }: CatchInterval): boolean => count !== null;

const trapsOf = (intervals: readonly CatchInterval[]): number => new Set(intervals.map(({ trapId }) => trapId)).size;

/** `traps` are of one insect and design. `since`: nights before this day do not count; null: all do. */
export function caughtOutlook(
  prepared: Prepared,
  field: FieldRecord,
  traps: readonly TrapRecord[],
  since: Day | null,
  daysAhead: number,
): CaughtOutlook | null {
  const [first] = traps;
  const life = first && larvaeModel(first.insect);
  const source = weatherSourceOf(prepared, field);
  if (!life || source === null) return null;
  const trapIds = traps.map(({ trapId }) => trapId);
  const key = `${source}\n${since}\n${daysAhead}\n${trapIds.join('\n')}`;
  const known = prepared.outlooks.get(key);
  if (known) return known.found;
  const heat = heatAhead(prepared, source, life.model.heat);
  const found = follow(prepared, traps, life, heat, since, daysAhead);
  prepared.outlooks.set(key, { trapIds, found });
  return found;
}

function follow(
  prepared: Prepared,
  traps: readonly TrapRecord[],
  { model, line }: { readonly model: PhenologyModel; readonly line: LifeLine },
  heat: HeatAhead,
  since: Day | null,
  daysAhead: number,
): CaughtOutlook | null {
  const { on } = prepared;
  const { measuredThrough, track } = heat;
  if (measuredThrough === null || daysBetween(measuredThrough, on) > ASSUMPTIONS.weatherStaleDays.value) return null;
  const grown = line.stages.findLast(({ stage }) => stage !== 'pupa')!.to + line.beforeLaying;
  let from = on;
  let sum = 0;
  for (let i = measuredThrough - track.start; i >= 0 && sum <= grown && !Number.isNaN(track.daily[i]!); i--) {
    sum += track.daily[i]!;
    from = addDays(track.start, i);
  }
  if (since !== null && since > from) from = since;
  const intervals = traps.flatMap((trap) =>
    historyOf(prepared, trap).intervals.filter((interval) => interval.from >= from && interval.to <= on),
  );
  const options = { daysAhead, measuredThrough };
  const outlook = larvaeFromMoths(intervals, model, track, on, options);
  return outlook && { model, intervals, outlook };
}

function evidenceOf(prepared: Prepared, field: FieldRecord, { model, intervals, outlook }: CaughtOutlook): LarvaeEvidence {
  const { worthGoing, worthGoingDates, hatch, days, now } = outlook;
  const at = worthGoing === null ? now : days.find(({ on }) => on === worthGoing)!;
  const shares = sharesOf(at.amounts);
  const lookFor = shares === null ? 'nothing-yet' : most(shares);
  const stages = new Map(model.stages.map(({ stage, lasts }) => [stage, lasts]));
  const caught = intervals.filter(isCounted);
  const written = (on: Day | null) => on && formatDay(on);
  return {
    kind: 'larvae',
    modelId: model.id,
    source: model.source,
    standing: model.standing,
    heat: { beforeLaying: stages.get('pre-egg-laying-adult') ?? 0, egg: stages.get('egg')!, unit: model.heat.unit },
    design: intervals[0]!.design,
    moths: outlook.moths,
    traps: trapsOf(caught),
    from: formatDay(Math.min(...caught.map(({ from }) => from)) as Day),
    to: formatDay(Math.max(...caught.map(({ to }) => to)) as Day),
    unknownNights: outlook.unknownNights,
    checks: caught.filter(({ count }) => count! > 0).map(checkEvidence),
    on: formatDay(at.on === now.on ? prepared.on : at.on),
    shares,
    lookFor,
    places: shares === null ? [] : placesOf(model.insect, field.crop, shares),
    worthGoing: worthGoingDates && datesOf(worthGoingDates, worthGoing!),
    hatch: { ten: written(hatch.ten), half: written(hatch.half) },
  };
}

type InField = NonNullable<LarvaeEvidence['shares']>;

/** Null while no egg has been laid. */
function sharesOf(amounts: StageAmounts): InField | null {
  const { egg, larva, 'small-larva': small, 'large-larva': large } = amounts;
  const all = egg + small + large + larva;
  return all > 0 ? { egg: egg / all, 'small-larva': small / all, 'large-larva': large / all, larva: larva / all } : null;
}

const IN_FIELD = ['egg', 'small-larva', 'large-larva', 'larva'] as const;

const most = (shares: InField) => IN_FIELD.reduce((a, b) => (shares[b] > shares[a] ? b : a));

function placesOf(insect: string, crop: string, shares: InField): LarvaeEvidence['places'] {
  return IN_FIELD.filter((stage) => shares[stage] >= WORTH_GOING_SHARE).flatMap((stage) => {
    const place = searchPlace(insect, crop, stage);
    return place ? [{ stage, where: place.where, source: place.source, standing: place.standing }] : [];
  });
}

/** The window of the day worth going; that day itself, by the mean of past years, never stands outside it. */
function datesOf(forecast: EventForecast, worthGoing: Day): LarvaeDates | null {
  const certain = { early: worthGoing, middle: worthGoing, late: worthGoing, lateOpen: false, years: 0 };
  if (forecast.status === 'came') return writtenWindow({ ...certain, method: 'reached' });
  if (forecast.status === 'in-own-forecast') return writtenWindow({ ...certain, method: 'own-forecast' });
  if (forecast.status !== 'ahead') return null;
  const { window } = forecast;
  const early = Math.min(window.early, worthGoing) as Day;
  const late = Math.max(window.late, worthGoing) as Day;
  return writtenWindow({ ...window, early, middle: worthGoing, late });
}
