/** What the traps that inform a field say under the rule for their design. */

import { daysBetween } from '../base/day.ts';
import { distanceKm } from '../base/distance.ts';
import { lazily } from '../base/lazily.ts';
import { ASSUMPTIONS, canonicalStage } from '../catalogue/index.ts';
import type { CatchTier } from '../catalogue/types.ts';
import { type DispersionEstimate, estimateRate, probabilityAbove, sumIntervals } from '../catch/index.ts';
import type { CatchInterval, PooledCatch, RateEstimate } from '../catch/types.ts';
import type { FieldRecord, TrapDesign, TrapRecord } from '../records/schema.ts';
import { lookAlikes, lureUnknown, rateEvidence } from './catch-evidence.ts';
import { type StageFit, type StageKnown, stageFit, stageOf } from './crop-stage.ts';
import { pooled } from './pooled.ts';
import { type Prepared, recordDay, trapsThisSeason, weatherEnd, weatherSourceOf } from './prepare.ts';
import { type CatchRule, lowestPerNight, reaches, ruleForDesign, SLACK } from './rules.ts';
import type { SharedPool } from './shared.ts';
import type { Evidence } from './types.ts';
import { visitScatter } from './visit-dispersion.ts';

/** Evidence and what only some verbs ask for are worked out when first read: past days are read for their verb alone. */
export interface DesignFinding {
  readonly design: TrapDesign;
  readonly rule: CatchRule | null;
  readonly stage: StageFit;
  readonly rate: RateEstimate;
  readonly intervals: readonly CatchInterval[];
  /** The figure the rate is held against, in moths per trap per night; null without a rule. */
  readonly thresholdPerNight: number | null;
  readonly reached: boolean;
  readonly near: boolean;
  readonly accumulating: boolean;
  /** Clearly rising, and far enough up that the rule may soon be reached. */
  readonly rising: boolean;
  readonly probabilityAbove: number | null;
  readonly intervalDays: number | null;
  /** Every lure behind the rate is past its stated life, so that the true catch is higher. */
  readonly readsLow: boolean;
  readonly doubtful: boolean;
  /** The rule asks for nothing so close to harvest. */
  readonly harvestStop: boolean;
  /** Doubts about the traps behind the rate. */
  readonly doubts: readonly Evidence[];
  readonly because: readonly Evidence[];
}

export interface CatchFinding {
  readonly traps: readonly TrapRecord[];
  readonly designs: readonly DesignFinding[];
  /** Traps that say nothing now, and why. */
  readonly unusable: readonly Evidence[];
}

export function catchFinding(prepared: Prepared, field: FieldRecord, insect: string, rules: readonly CatchRule[]): CatchFinding {
  const traps = trapsThisSeason(prepared, field, insect);
  const stage = stageOf(prepared, field);
  const designs: DesignFinding[] = [];
  const pools: SharedPool[] = [];
  for (const design of new Set(traps.map((trap) => trap.design))) {
    const rule = ruleForDesign(rules, design);
    const own = traps.filter((trap) => trap.design === design);
    const windowNights = rule?.kind === 'catch-threshold' && rule.per === 'week' ? 7 : 1;
    const pool = pooled(prepared, own, windowNights);
    pools.push(pool);
    if (!pool.newest) continue;
    const longer = () => pooled(prepared, own, ASSUMPTIONS.accumulationNights.value).newest;
    designs.push(assess(prepared, field, { rule, windowNights }, stage, { pool, newest: pool.newest, longer }));
  }
  const unusable = lazily(() => pools.flatMap((pool) => pool.unusable));
  return {
    traps,
    designs,
    get unusable() {
      return unusable();
    },
  };
}

function assess(
  prepared: Prepared,
  field: FieldRecord,
  { rule, windowNights }: { readonly rule: CatchRule | null; readonly windowNights: number },
  stage: StageKnown | null,
  {
    pool,
    newest,
    longer,
  }: { readonly pool: SharedPool; readonly newest: PooledCatch; readonly longer: () => PooledCatch | null },
): DesignFinding {
  const { dispersion } = pool;
  const { rate, intervals, readsLow, spent } = freshest(newest, dispersion, rule);
  const own = {
    design: newest.design,
    rule,
    stage: stageFit(field, rule?.stages ?? null, stage),
    rate,
    intervals,
    readsLow,
    doubtful: intervals.some((interval) => interval.condition === 'doubtful'),
  };
  const evidence = (byRule: readonly Evidence[]): Evidence[] => [
    rateEvidence(newest.design, rate, intervals, visitScatter(dispersion)),
    ...spent,
    ...lureUnknown(intervals),
    ...lookAlikes(intervals),
    ...byRule,
    ...pool.doubts,
    ...pool.context,
  ];
  if (rule === null) {
    const because = lazily(() => evidence([]));
    return {
      ...own,
      thresholdPerNight: null,
      reached: false,
      near: false,
      accumulating: false,
      rising: false,
      probabilityAbove: null,
      intervalDays: null,
      harvestStop: false,
      get doubts() {
        return pool.doubts;
      },
      get because() {
        return because();
      },
    };
  }

  const nearby = nearbyThreshold(prepared, field, rule);
  const { thresholdPerNight } = nearby;
  const reached = reaches(rate.perNight, thresholdPerNight);
  const above = lazily(() => probabilityAbove(rate, thresholdPerNight, { k: dispersion }));
  const asked = intervalAsked(prepared, field, rule, rate, reached);
  const addsUp =
    !reached &&
    windowNights === 1 &&
    thresholdPerNight * ASSUMPTIONS.accumulationNights.value >= ASSUMPTIONS.accumulationMoths.value;
  const accumulation = lazily(() => (addsUp ? accumulate(longer(), thresholdPerNight) : null));
  const because = lazily(() => {
    const summed = accumulation();
    return evidence([
      ...nearby.because,
      figureEvidence(rule, rate, { ...nearby, reached, probabilityAbove: above() }),
      ...asked.changes,
      ...(summed ? [summed] : []),
    ]);
  });
  return {
    ...own,
    thresholdPerNight,
    reached,
    get near() {
      const close = !reached && rate.perNight >= thresholdPerNight * ASSUMPTIONS.nearShare.value;
      return close && above() >= ASSUMPTIONS.nearProbability.value;
    },
    get accumulating() {
      return accumulation()?.addsUp ?? false;
    },
    get rising() {
      const far = reached || rate.perNight < thresholdPerNight * ASSUMPTIONS.risingShare.value;
      return !far && pool.context.some((item) => item.kind === 'trend' && item.direction === 'rising');
    },
    get probabilityAbove() {
      return above();
    },
    intervalDays: asked.days,
    harvestStop: stopsBeforeHarvest(prepared, field, rule),
    get doubts() {
      return pool.doubts;
    },
    get because() {
      return because();
    },
  };
}

/** Days between decisions that the rule asks for at a catch, and what the weather changes in them. */
function intervalAsked(prepared: Prepared, field: FieldRecord, rule: CatchRule, rate: RateEstimate, reached: boolean) {
  if (rule.kind !== 'catch-table') return { days: reached ? rule.intervalDays : null, changes: [] };
  const { at } = tierOf(rule.tiers, rate.perNight);
  if (!at) return { days: null, changes: [] };
  const changes = weatherAdjustments(prepared, field, rule);
  const days = changes.reduce((sum, change) => sum + (change.applied ? change.addDays : 0), at.intervalDays);
  return { days: Math.max(1, days), changes };
}

/** The catch beside the figure of its rule. */
function figureEvidence(
  rule: CatchRule,
  { perNight }: RateEstimate,
  held: {
    readonly thresholdPerNight: number;
    readonly reached: boolean;
    readonly probabilityAbove: number;
    readonly crop: string | null;
  },
): Evidence {
  const { probabilityAbove } = held;
  if (rule.kind === 'catch-table') {
    const { at, next } = tierOf(rule.tiers, perNight);
    return {
      kind: 'tier',
      ruleId: rule.id,
      from: at?.from ?? null,
      below: next?.from ?? null,
      rate: perNight,
      intervalDays: at?.intervalDays ?? null,
      probabilityAbove,
    };
  }
  const nights = rule.per === 'week' ? 7 : 1;
  return {
    kind: 'threshold',
    ruleId: rule.id,
    threshold: held.thresholdPerNight * nights,
    per: rule.per,
    rate: perNight * nights,
    reached: held.reached,
    probabilityAbove,
    nearbyCrop: held.crop,
  };
}

/**
 * The rate from traps whose lures are within their life, where there are any. A spent lure only lowers the count, so if
 * the rate with those traps included reaches the rule anyway, it does so all the more truly.
 */
function freshest(newest: PooledCatch, k: DispersionEstimate, rule: CatchRule | null) {
  const spentIntervals = newest.intervals.filter((interval) => interval.lurePastLife === true);
  const spent = uniqueBy(spentIntervals, (interval) => interval.trapId).map(
    (interval): Evidence => ({
      kind: 'lure-spent',
      trapId: interval.trapId,
      ageDays: interval.lureAgeDays!,
      lifeDays: interval.lureLifeDays!,
    }),
  );
  const spentTraps = new Set(spentIntervals.map((interval) => interval.trapId));
  const fresh = newest.intervals.filter((interval) => !spentTraps.has(interval.trapId));
  const whole = { rate: newest.rate, intervals: newest.intervals, readsLow: spent.length > 0, spent };
  if (spent.length === 0 || fresh.length === 0) return whole;
  if (rule !== null && reaches(newest.rate.perNight, lowestPerNight(rule))) return whole;
  const rate = estimateRate(sumIntervals(fresh), { k, level: newest.rate.level });
  return { rate, intervals: fresh, readsLow: false, spent };
}

function tierOf(
  tiers: readonly CatchTier[],
  perNight: number,
): { readonly at: CatchTier | null; readonly next: CatchTier | null } {
  const inTier = (tier: CatchTier) => (tier.exclusive ? perNight > tier.from * (1 + SLACK) : reaches(perNight, tier.from));
  const index = tiers.findLastIndex(inTier);
  return { at: tiers[index] ?? null, next: tiers[index + 1] ?? null };
}

function accumulate(newest: PooledCatch | null, thresholdPerNight: number): (Evidence & { kind: 'accumulation' }) | null {
  if (!newest) return null;
  const { trapNights, count } = newest.rate;
  const traps = new Set(newest.intervals.map((interval) => interval.trapId)).size;
  const nights = trapNights / traps;
  if (nights < ASSUMPTIONS.accumulationNights.value / 2) return null;
  const share = count / trapNights / thresholdPerNight;
  return {
    kind: 'accumulation',
    nights,
    trapNights,
    perTrap: count / traps,
    atThreshold: thresholdPerNight * nights,
    share,
    addsUp: share >= ASSUMPTIONS.accumulationShare.value,
  };
}

function weatherAdjustments(prepared: Prepared, field: FieldRecord, rule: CatchRule & { kind: 'catch-table' }) {
  const source = weatherSourceOf(prepared, field);
  const series = source === null ? null : prepared.weather.get(source)!;
  const end = series && weatherEnd(series);
  const stale = end === null || daysBetween(end, prepared.on) > ASSUMPTIONS.weatherStaleDays.value;
  return rule.adjustments.map((adjustment) => {
    const { when, temperatureC, days, addDays: change } = adjustment;
    let applied: boolean | null = null;
    if (series && end !== null && !stale) {
      const last = end - series.start + 1;
      const maxima = series.tmaxC.subarray(Math.max(0, last - days), last);
      const qualifies = (t: number) => (when === 'maxima-below' ? t < temperatureC : t > temperatureC);
      applied = maxima.length < days || maxima.some(Number.isNaN) ? null : maxima.every(qualifies);
    }
    return { kind: 'weather-adjustment' as const, when, temperatureC, days, addDays: change, applied, source: adjustment.source };
  });
}

/** A rule may hold a higher figure while a neighbouring crop draws the moths away. */
export function nearbyThreshold(prepared: Prepared, field: FieldRecord, rule: CatchRule) {
  const usual = lowestPerNight(rule);
  const unless = rule.kind === 'catch-threshold' ? rule.unless : null;
  if (!unless) return { thresholdPerNight: usual, crop: null, because: [] };
  const neighbours = prepared.program.fields.filter((other) => {
    if (other.crop !== unless.nearbyCrop || other.fieldId === field.fieldId) return false;
    const km = distanceKm(field, other);
    return km === null || km <= ASSUMPTIONS.nearbyKm.value;
  });
  const drawing = neighbours.some((other) => {
    const fit = stageFit(
      other,
      unless.stages.map((word) => canonicalStage(other.crop, word) ?? word),
      stageOf(prepared, other),
    );
    return fit.kind === 'susceptible';
  });
  const drawn = rule.kind === 'catch-threshold' && rule.per === 'week' ? unless.threshold / 7 : unless.threshold;
  if (drawing) return { thresholdPerNight: drawn, crop: unless.nearbyCrop, because: [] };
  const missing: Evidence = { kind: 'missing', what: 'nearby-crop', from: null, to: null, detail: unless.nearbyCrop };
  return { thresholdPerNight: usual, crop: null, because: neighbours.length === 0 ? [missing] : [] };
}

function stopsBeforeHarvest(prepared: Prepared, field: FieldRecord, rule: CatchRule): boolean {
  const harvest = recordDay(field.harvestOn);
  if (rule.kind !== 'catch-table' || rule.harvestStopDays === null || harvest === null) return false;
  return daysBetween(prepared.on, harvest) < rule.harvestStopDays;
}

function uniqueBy<T>(items: readonly T[], key: (item: T) => string): T[] {
  return [...new Map(items.map((item) => [key(item), item])).values()];
}
