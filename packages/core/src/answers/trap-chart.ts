/** One trap's season as it is drawn: its rate, the nights without information, its threshold and its neighbours. */
import { nearbyThreshold } from '../advice/catch-finding.ts';
import { historyOf, type Prepared } from '../advice/prepare.ts';
import { ratePoints } from '../advice/rate-points.ts';
import { cellRules, ruleForDesign } from '../advice/rules.ts';
import { visitDispersion } from '../advice/visit-dispersion.ts';
import { type Day, day, formatDay } from '../base/day.ts';
import { distanceKm } from '../base/distance.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { TrapRecord } from '../records/schema.ts';
import type { TrapChart } from './traps-schema.ts';

/** Traps farther away see other fields' moths. Own choice, no source. */
const NEIGHBOUR_KM = 10;
const NEIGHBOURS = 8;

/** `from`: the first day of the season that is drawn. */
export function trapChart(prepared: Prepared, trap: TrapRecord, from: Day): TrapChart {
  const own = seasonOf(prepared, trap, from);
  const dispersion = visitDispersion(prepared, trap.insect, trap.design);
  const neighbours = prepared.program.traps
    .filter((other) => other.trapId !== trap.trapId && other.insect === trap.insect && other.design === trap.design)
    .map((other) => ({ other, km: distanceKm(trap, other), intervals: seasonOf(prepared, other, from) }))
    .filter(({ km, intervals }) => km !== null && km <= NEIGHBOUR_KM && intervals.length > 0)
    .sort((a, b) => a.km! - b.km! || (a.other.trapId < b.other.trapId ? -1 : 1))
    .slice(0, NEIGHBOURS);
  return {
    from: formatDay(from),
    points: ratePoints(own, dispersion),
    withoutInformation: own.flatMap((interval) =>
      interval.noInformation === null
        ? []
        : [{ from: formatDay(interval.from), to: formatDay(interval.to), why: interval.noInformation }],
    ),
    threshold: thresholdOf(prepared, trap),
    neighbours: neighbours.map(({ other, km, intervals }) => ({
      trapId: other.trapId,
      station: other.station,
      km: km!,
      points: ratePoints(intervals, dispersion).map(({ from: begins, to, perNight }) => ({ from: begins, to, perNight })),
    })),
  };
}

const seasonOf = (prepared: Prepared, trap: TrapRecord, from: Day): readonly CatchInterval[] =>
  historyOf(prepared, trap).intervals.filter(({ to }) => to > from);

/** The lowest of the fields it informs: the one that would be reached first. */
function thresholdOf(prepared: Prepared, trap: TrapRecord): TrapChart['threshold'] {
  const found = trap.informs.flatMap((id) => {
    const field = prepared.fields.get(id);
    const rule = field && ruleForDesign(cellRules(prepared, field, trap.insect).catch, trap.design);
    if (!rule) return [];
    const { thresholdPerNight } = nearbyThreshold(prepared, field, rule);
    return [{ perNight: thresholdPerNight, fieldId: field.fieldId, field: field.name }];
  });
  return found.sort((a, b) => a.perNight - b.perNight)[0] ?? null;
}

/** The season that the newest visit lies in; without one, that of the day asked about. */
export const drawnFrom = (prepared: Prepared, beginning: (on: Day) => Day, lastVisit: string | null): Day =>
  beginning(lastVisit === null ? prepared.on : day(lastVisit));
