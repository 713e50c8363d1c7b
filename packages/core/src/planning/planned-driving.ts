import type { Prepared } from '../advice/prepare.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { FarmDriving } from './budget.ts';
import type { LineLures } from './plan-lures.ts';
import { driveOrder, isPlaced, type Stop } from './route.ts';

/**
 * Driving and work on a farm's rounds over a season: hanging, every check day and every visit for a lure alone.
 *
 * A round passes the stations that have informed the farm's fields, or the fields themselves where none has coordinates;
 * kilometres are the great circle times the road factor, and the way from home is not in them. Hours are the drive at the
 * assumed speed, the stops and the traps. Not known where nothing of the farm has coordinates or no day is planned.
 */
export function plannedDriving(prepared: Prepared, lines: readonly LineLures[]): FarmDriving[] {
  const farms = [...new Set(lines.map(({ line }) => line.farm))];
  return farms.map((farm) => {
    const own = lines.filter(({ line }) => line.farm === farm);
    const days = own.flatMap(({ line, changes }) => [
      ...(line.hang.on === null || line.checkDays.length === 0 ? [] : [line.hang.on]),
      ...line.checkDays,
      ...changes.filter(({ extraVisit }) => extraVisit).map(({ on }) => on),
    ]);
    const stops = placesOf(prepared, new Set(own.flatMap(({ line }) => line.fields)));
    if (stops.length === 0 || days.length === 0) return { farm, hours: null, km: null };
    const { roadFactor, drivingKmPerHour, stopMinutes, trapMinutes } = SEASON_ASSUMPTIONS;
    const rounds = new Set(days).size;
    const km = rounds * driveOrder(stops).lengthKm * roadFactor.value;
    const atStations = own.reduce((sum, { line }) => sum + (line.checkDays.length + 1) * line.traps.count, 0) * trapMinutes.value;
    const minutes = rounds * stops.length * stopMinutes.value + atStations;
    return { farm, km, hours: km / drivingKmPerHour.value + minutes / 60 };
  });
}

function placesOf(prepared: Prepared, fields: ReadonlySet<string>): Stop[] {
  const stations = new Map<string, Stop>();
  for (const { station, latitude, longitude, informs } of prepared.traps.values())
    if (informs.some((field) => fields.has(field))) stations.set(station, { id: station, latitude, longitude });
  const placed = [...stations.values()].filter(isPlaced);
  if (placed.length > 0) return placed;
  return [...fields]
    .map((id) => prepared.fields.get(id)!)
    .map(({ fieldId, latitude, longitude }) => ({ id: fieldId, latitude, longitude }))
    .filter(isPlaced);
}
