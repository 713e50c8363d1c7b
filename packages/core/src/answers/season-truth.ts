import type { Prepared } from '../advice/prepare.ts';
import { formatDay } from '../base/day.ts';
import { planAgainstSeason, planRequest, seasonPlan, seasonSpan } from '../planning/index.ts';
import { fieldOf } from './season-field.ts';
import type { SeasonTruthView } from './season-schema.ts';

/** The plan of a season held against what has happened up to the day of `prepared`. */
export function seasonTruthView(prepared: Prepared, season: number): SeasonTruthView {
  const request = planRequest(prepared, season);
  const truths = planAgainstSeason(seasonPlan(prepared, request), prepared, request.wishes);
  const { from, to } = seasonSpan(prepared.program, season);
  const today = formatDay(prepared.on);
  return {
    season,
    today,
    state: today < from ? 'ahead' : today < to ? 'running' : 'over',
    lines: truths.map(({ line, deviations, effects, checksMade, advice, cause, telling, risk, traps }) => ({
      id: line.id,
      insect: line.insect,
      farm: line.farm,
      fields: line.fields.map((field) => fieldOf(prepared, field)),
      planned: { traps: line.traps.count, hangOn: line.hang.on, takeDownOn: line.takeDown.on },
      cause,
      telling,
      risk,
      traps: [...traps],
      deviations,
      effects,
      checksMade,
      advice: advice.map((one) => ({ ...one, name: fieldOf(prepared, one.field).name })),
    })),
  };
}
