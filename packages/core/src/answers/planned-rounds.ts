/** Stations whose traps fall due, as a desk plans rounds past them. */
import { hanging } from '../advice/due.ts';
import type { Prepared } from '../advice/prepare.ts';
import { type Day, formatDay } from '../base/day.ts';
import { dueStations } from '../planning/due-stations.ts';
import type { RoundsView, StationToVisit } from './planned-rounds-schema.ts';

/** Stations with a trap to check up to the day `until`, soonest first. */
export function roundsView(prepared: Prepared, until: Day): RoundsView {
  const { name, invented } = prepared.program.settings;
  const traps = hanging(prepared, [...prepared.traps.values()]);
  const stations = dueStations(prepared, until).map(({ window: _, keepOutUntil = null, ...station }): StationToVisit => {
    const own = traps.filter((trap) => trap.station === station.id);
    const fields = [...new Set(own.flatMap(({ informs }) => informs))]
      .map((id) => prepared.fields.get(id))
      .filter((field) => field !== undefined)
      .map(({ fieldId, name: fieldName, farm }) => ({ fieldId, name: fieldName, farm }));
    return { ...station, keepOutUntil, trapIds: own.map(({ trapId }) => trapId), fields };
  });
  const sorted = stations.sort((a, b) => (a.due !== b.due ? (a.due < b.due ? -1 : 1) : a.id < b.id ? -1 : 1));
  return { program: { name, invented }, on: formatDay(prepared.on), until: formatDay(until), stations: sorted };
}
