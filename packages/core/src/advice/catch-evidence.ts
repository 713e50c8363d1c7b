/** What traps and their visits say, as evidence. */

import { type Day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { CatchInterval, PooledCatch, RateEstimate, TrapHistory, UnusableTrap } from '../catch/types.ts';
import { trendOf } from '../flight/index.ts';
import type { TrapDesign } from '../records/schema.ts';
import type { CheckEvidence, Evidence, VisitScatter } from './types.ts';

export function rateEvidence(
  design: TrapDesign,
  rate: RateEstimate,
  intervals: readonly CatchInterval[],
  scatter: VisitScatter,
): Evidence {
  const { perNight, low, high, level, count, trapNights, model, k } = rate;
  const checks = intervals.map(checkEvidence);
  return { kind: 'rate', design, perNight, low, high, level, count, trapNights, model, k, scatter, checks };
}

export function checkEvidence(interval: CatchInterval): CheckEvidence {
  const { trapId, nights, count, others, condition, lureAgeDays, lureLifeDays } = interval;
  return {
    trapId,
    from: formatDay(interval.from),
    to: formatDay(interval.to),
    visits: interval.visits,
    nights,
    count,
    others,
    condition,
    lureAgeDays,
    lureLifeDays,
  };
}

export function unusableEvidence({ trapId, design, why, since, nightsWithoutSight }: UnusableTrap): Evidence {
  return {
    kind: 'trap-unusable',
    trapId,
    design,
    why,
    since: since === null ? null : formatDay(since),
    nights: nightsWithoutSight,
  };
}

export function trendEvidence(design: TrapDesign, histories: readonly TrapHistory[], on: Day): Evidence[] {
  const trend = trendOf(histories, on);
  return trend ? [{ kind: 'trend', design, ...trend }] : [];
}

/** What people should be asked about the visits behind the rate, or since. */
export function questions(histories: readonly TrapHistory[], pooled: PooledCatch): Evidence[] {
  const since = Math.min(...pooled.intervals.map((interval) => interval.from));
  return histories.flatMap((history) =>
    history.questions
      .filter((question) => question.on >= since)
      .map(({ kind, trapId, on, got, before }) => ({ kind: 'question', question: kind, trapId, on: formatDay(on), got, before })),
  );
}

export function lureUnknown(intervals: readonly CatchInterval[]): Evidence[] {
  const unknown = intervals.filter((interval) => interval.lurePastLife === null).map((interval) => interval.trapId);
  return unknown.length === 0 ? [] : [{ kind: 'lure-unknown', trapIds: [...new Set(unknown)] }];
}

export function lookAlikes(intervals: readonly CatchInterval[]): Evidence[] {
  return intervals
    .filter(({ count, others }) => {
      const all = (count ?? 0) + (others ?? 0);
      return others !== null && all >= ASSUMPTIONS.lookAlikeMoths.value && others / all >= ASSUMPTIONS.lookAlikeShare.value;
    })
    .map(({ trapId, to, count, others }) => ({
      kind: 'question',
      question: 'many-look-alikes',
      trapId,
      on: formatDay(to),
      got: others!,
      before: count ?? 0,
    }));
}
