import { addDays, type Day, formatDay } from '../base/day.ts';
import { ok, type Problem, type Result, refuse } from '../base/problem.ts';
import { degreeDaysIn } from '../base/temperature.ts';
import { BRIDGE_METHOD, bridgeGaps, DEFAULT_MAX_BRIDGE_DAYS, runsWhere } from '../weather/gaps.ts';
import type { DailyExtremes, Gap } from '../weather/types.ts';
import { dailyDegreeDays } from './daily.ts';
import type { HeatOptions, HeatRow, HeatRule, HeatSum } from './types.ts';

/**
 * The heat of each day of [from, to] and its running total, in the unit of the rule.
 *
 * Gaps of at most `maxBridgeDays` days between known days are interpolated, marked and counted. A sum over any other
 * missing day is refused with the dates: a sum that skips days is too small, and nothing in the number would tell.
 */
export function sumHeat(rule: HeatRule, series: DailyExtremes, from: Day, to: Day, options: HeatOptions = {}): Result<HeatSum> {
  if (to < from)
    return refuse({
      where: { column: 'date' },
      got: `${formatDay(from)} to ${formatDay(to)}`,
      expected: 'a first day and a last day, in that order',
      fix: 'exchange the two dates',
    });
  const maxDays = options.maxBridgeDays ?? DEFAULT_MAX_BRIDGE_DAYS;
  const bridge = bridgeGaps(series, maxDays);
  const daily = dailyDegreeDays(rule, bridge.series);
  const heatOn = (on: Day): number => daily[on - series.start] ?? Number.NaN;

  const gaps = runsWhere(from, to, (on) => Number.isNaN(heatOn(on)));
  if (gaps.length > 0) return refuse(...gaps.map((gap) => gapProblem(rule, series, gap, from, maxDays)));

  const bridged = new Set(bridge.bridged);
  const rows: HeatRow[] = [];
  let total = 0;
  let bridgedDays = 0;
  for (let on = from; on <= to; on = addDays(on, 1)) {
    const degreeDays = degreeDaysIn(heatOn(on), rule.unit);
    total += degreeDays;
    if (bridged.has(on)) bridgedDays++;
    rows.push({ date: formatDay(on), degreeDays, total, bridged: bridged.has(on) });
  }
  return ok({ unit: rule.unit, rows, total, bridgedDays, bridgeMethod: bridgedDays > 0 ? BRIDGE_METHOD : null });
}

function gapProblem(rule: HeatRule, series: DailyExtremes, gap: Gap, from: Day, maxDays: number): Problem {
  const days = gap.to - gap.from + 1;
  const nextMinimum =
    rule.method === 'double-sine' || rule.method === 'double-triangle' ? ', each with the next day’s minimum' : '';
  const shorten = gap.from > from ? `, or end the sum on ${formatDay(addDays(gap.from, -1))}` : '';
  return {
    where: { column: 'date' },
    got: `no heat for ${days} ${days === 1 ? 'day' : 'days'} at ${series.sourceId}, ${formatDay(gap.from)} to ${formatDay(gap.to)}`,
    expected: `a minimum and a maximum for every day${nextMinimum}; at most ${maxDays} missing days in a row between known days can be bridged`,
    fix: `add the missing days to the weather${shorten}`,
  };
}
