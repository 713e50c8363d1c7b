import { type Day, day, daysBetween } from '../base/day.ts';
import { TRAP_DESIGNS, type TrapDesign, type TrapRecord } from '../records/schema.ts';
import { estimateRate, type RateOptions } from './rate.ts';
import { sumIntervals } from './sum.ts';
import type { CatchInterval, PooledCatch, TrapHistory, UnusableTrap } from './types.ts';

export interface TrapSeason {
  readonly trap: TrapRecord;
  readonly history: TrapHistory;
}

export interface PoolOptions extends RateOptions {
  readonly on: Day;
  /** Whole newest intervals are taken until they cover this many nights: 1 for a rule per night, 7 for one per week. */
  readonly windowNights: number;
  /** A trap whose newest visit is older than this is overdue and left out. */
  readonly maxAgeDays: number;
}

/**
 * The newest nights of the traps that inform a field, one rate per trap design: designs are never pooled together.
 *
 * Each trap gives its newest intervals, whole, until `windowNights` are covered or an interval without information
 * breaks the run. A trap whose newest interval carries none is unusable, as are traps that are overdue, never
 * checked, not hung yet or taken down; `unusable` lists them all, and each design its own again. A design without a
 * usable trap has no rate. Doubtful checks are kept, and can be seen in `intervals`.
 */
export function poolNewest(
  traps: readonly TrapSeason[],
  options: PoolOptions,
): { readonly designs: readonly PooledCatch[]; readonly unusable: readonly UnusableTrap[] } {
  const used = new Map<TrapDesign, CatchInterval[]>();
  const unusable: UnusableTrap[] = [];
  for (const season of [...traps].sort(byTrapId)) {
    const reason = whyUnusable(season, options);
    if (reason !== null) unusable.push(reason);
    else {
      const intervals = used.get(season.trap.design) ?? [];
      intervals.push(...newestNights(season.history.intervals, options.windowNights));
      used.set(season.trap.design, intervals);
    }
  }
  const designs = TRAP_DESIGNS.filter((design) => used.has(design)).map((design): PooledCatch => {
    const intervals = used.get(design)!;
    return {
      design,
      rate: estimateRate(sumIntervals(intervals), options),
      intervals,
      unusable: unusable.filter((trap) => trap.design === design),
      newest: Math.max(...intervals.map(({ to }) => to)) as Day,
    };
  });
  return { designs, unusable };
}

function byTrapId(a: TrapSeason, b: TrapSeason): number {
  return a.trap.trapId < b.trap.trapId ? -1 : a.trap.trapId > b.trap.trapId ? 1 : 0;
}

function whyUnusable({ trap, history }: TrapSeason, { on, maxAgeDays }: PoolOptions): UnusableTrap | null {
  const { trapId, design } = trap;
  const hungOn = day(trap.hungOn);
  if (hungOn > on) return { trapId, design, why: 'not-hung', since: null, nightsWithoutSight: null };
  const since = sightUntil(history, hungOn);
  const unusable = (why: UnusableTrap['why']) => ({ trapId, design, why, since, nightsWithoutSight: daysBetween(since, on) });
  if (trap.takenDownOn !== null && day(trap.takenDownOn) <= on) return unusable('taken-down');
  const newest = history.intervals.at(-1);
  if (newest === undefined) return unusable('never-checked');
  if (daysBetween(newest.to, on) > maxAgeDays) return unusable('overdue');
  return newest.noInformation === null ? null : unusable(newest.noInformation);
}

/** The end of the newest interval with information, or the hanging. */
function sightUntil({ intervals }: TrapHistory, hungOn: Day): Day {
  return intervals.findLast(({ count }) => count !== null)?.to ?? hungOn;
}

function newestNights(intervals: readonly CatchInterval[], windowNights: number): CatchInterval[] {
  const taken: CatchInterval[] = [];
  let nights = 0;
  for (let i = intervals.length - 1; i >= 0 && nights < windowNights; i--) {
    const interval = intervals[i]!;
    if (interval.count === null) break;
    taken.push(interval);
    nights += interval.nights;
  }
  return taken;
}
