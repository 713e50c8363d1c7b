/** How often windows hold the true date in simulated weather, by the number of past years. */
import { addDays, type Day, dayOf } from '../base/day.ts';
import { catalogue } from '../catalogue/catalogue.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatTrack } from '../heat/types.ts';
import { usualWaits } from '../heat/usual-heat.ts';
import { type WaitWindow, waitWindow } from '../heat/wait-window.ts';
import { waitsInYears } from '../heat/waits.ts';
import { monthlyMeans } from '../weather/normals.ts';
import { HINDCAST_LEAD_DAYS, HINDCAST_STARTS, targetsOf } from './hindcast.ts';
import { type Climate, FIRST_YEAR, simulatedWeather } from './simulated-weather.testing.ts';

export interface WindowCoverage {
  readonly leadDays: number;
  readonly cases: number;
  readonly held: number;
  readonly medianWidthDays: number;
}

/**
 * Each seed is one season after `years` others, with one event of one model of the catalogue, forecast as it would have
 * been so many days before it truly came: events of one season share its weather, and would count as more than they are.
 */
export function windowCoverage(seeds: number, years: number, climate: Climate): WindowCoverage[] {
  return covered(seeds, years, climate, (track, next, remaining) => {
    const past = Array.from({ length: years }, (_, i) => FIRST_YEAR + i);
    const waits = waitsInYears(track, next, remaining, past);
    return waits.sorted.length < years ? null : waitWindow(waits);
  });
}

/** The same of a source that begins with the season, by the monthly means of thirty other years of its climate. */
export function normalsCoverage(seeds: number, climate: Climate): WindowCoverage[] {
  return covered(seeds, 0, climate, (track, next, remaining, seed) => {
    const normals = monthlyMeans(simulatedWeather(NORMALS_SEED + seed, 30, climate), () => true)!;
    return usualWaits(track, addDays(next, -1), remaining, normals);
  });
}

const NORMALS_SEED = 1_000_000;

type WindowOf = (track: HeatTrack, next: Day, remaining: number, seed: number) => WaitWindow | null;

function covered(seeds: number, years: number, climate: Climate, windowOf: WindowOf): WindowCoverage[] {
  const found = new Map(HINDCAST_LEAD_DAYS.map((lead) => [lead, { held: 0, widths: [] as number[] }]));
  for (let seed = 1; seed <= seeds; seed++) {
    const series = simulatedWeather(1000 * years + seed, years + 1, climate);
    const year = FIRST_YEAR + years;
    const model = catalogue.models[seed % catalogue.models.length]!;
    const track = heatTrack(model.heat, series);
    const { start: begins } = model;
    const [month, date] =
      begins.kind === 'calendar' ? [begins.month, begins.date] : HINDCAST_STARTS[seed % HINDCAST_STARTS.length]!;
    const targets = targetsOf(model);
    const target = targets[seed % targets.length];
    const start = dayOf(year, month, date);
    const truth = target === undefined ? null : track.dayReaching(start, target);
    if (truth === null || truth > dayOf(year, 11, 30)) continue;
    for (const [lead, cell] of found) {
      const asOf = addDays(truth, -lead);
      const known = track.total(start, asOf);
      if (asOf < start || !known.ok) continue;
      const window = windowOf(track, addDays(asOf, 1), target! - known.degreeDays, seed);
      if (window === null) continue;
      const { early, late } = window;
      if (early <= lead && lead <= late) cell.held++;
      cell.widths.push(Number.isFinite(late) ? late - early + 1 : Infinity);
    }
  }
  return [...found].map(([leadDays, { held, widths }]) => ({
    leadDays,
    cases: widths.length,
    held: held / widths.length,
    medianWidthDays: widths.sort((a, b) => a - b)[widths.length >> 1]!,
  }));
}
