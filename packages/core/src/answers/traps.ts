/** The table of stations and traps. */
import type { Prepared } from '../advice/prepare.ts';
import { formatDay } from '../base/day.ts';
import { distanceKm } from '../base/distance.ts';
import { catalogue, practicesFor } from '../catalogue/index.ts';
import type { TrapRecord } from '../records/schema.ts';
import { drawnFrom, trapChart } from './trap-chart.ts';
import { seasonBeginning, stationTrap, visitsOf } from './trap-facts.ts';
import type { StationPlace, TrapState, TrapsView, TrapView } from './traps-schema.ts';

/**
 * Farther apart than this, two traps of one station name stood in two places, and catch is local. Wide enough for
 * what a phone's position is off by, narrow enough to notice a trap moved to the next field. Own choice, no source.
 */
export const SAME_PLACE_M = 50;

/** Every trap that hangs, hung or is planned as known on the day, by station and place. */
export function trapsView(prepared: Prepared): TrapsView {
  const { name, invented } = prepared.program.settings;
  const byStation = new Map<string, TrapRecord[]>();
  for (const trap of [...prepared.program.traps].sort(byHanging)) {
    byStation.set(trap.station, [...(byStation.get(trap.station) ?? []), trap]);
  }
  const stations = [...byStation.keys()].sort((a, b) => a.localeCompare(b));
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    places: stations.flatMap((station) => placesOf(prepared, station, byStation.get(station)!)),
    designs: catalogue.designs.map(({ design, name: designName, heightM, siting, source, standing }) => ({
      design,
      name: designName,
      heightM,
      siting,
      source,
      standing,
    })),
    practices: (['setting-posts', 'siting'] as const).flatMap((act) =>
      practicesFor(act).map(({ id, weight, designs, text, source, standing }) => ({
        id,
        act,
        weight,
        designs,
        text,
        source,
        standing,
      })),
    ),
  };
}

/** One trap with its whole history; null when the program has no such trap. */
export function trapView(prepared: Prepared, trapId: string): TrapView | null {
  const trap = prepared.program.traps.find((each) => each.trapId === trapId);
  if (!trap) return null;
  const today = formatDay(prepared.on);
  const lures = (prepared.luresByTrap.get(trapId) ?? []).filter((lure) => lure.placedOn <= today);
  const told = stationTrap(prepared, trap);
  return {
    ...told,
    on: today,
    station: trap.station,
    visits: visitsOf(prepared, trapId).reverse(),
    lures: lures.map(({ placedOn, lifeDays }) => ({ placedOn, lifeDays })).sort((a, b) => (a.placedOn < b.placedOn ? 1 : -1)),
    chart: trapChart(prepared, trap, drawnFrom(prepared, seasonBeginning(prepared, trap), told.lastVisit?.on ?? null)),
  };
}

const byHanging = (a: TrapRecord, b: TrapRecord): number =>
  a.hungOn < b.hungOn ? -1 : a.hungOn > b.hungOn ? 1 : a.trapId < b.trapId ? -1 : 1;

/** Traps of one station name, in order of hanging, parted into the places where they stood. */
function partByPlace(traps: readonly TrapRecord[]): TrapRecord[][] {
  const places: TrapRecord[][] = [];
  const unplaced: TrapRecord[] = [];
  for (const trap of traps) {
    if (trap.latitude === null || trap.longitude === null) {
      unplaced.push(trap);
      continue;
    }
    const near = places.find(([first]) => distanceKm(first!, trap)! * 1000 <= SAME_PLACE_M);
    if (near) near.push(trap);
    else places.push([trap]);
  }
  // Without coordinates a trap belongs where its station is, if that is one place; among several nobody knows which.
  const [only] = places;
  if (only && places.length === 1) only.push(...unplaced);
  else if (unplaced.length > 0) places.push(unplaced);
  return places.map((place) => place.sort(byHanging)).sort(([a], [b]) => byHanging(a!, b!));
}

const ORDER: readonly TrapState[] = ['hanging', 'planned', 'taken-down'];

function placesOf(prepared: Prepared, station: string, traps: readonly TrapRecord[]): StationPlace[] {
  const parts = partByPlace(traps);
  const centre = (place: readonly TrapRecord[] | undefined) =>
    place?.find((trap) => trap.latitude !== null && trap.longitude !== null);
  const places = parts.map((part, index): StationPlace => {
    const at = centre(part);
    const before = centre(parts[index - 1]);
    const movedKm = at && before ? distanceKm(before, at) : null;
    const lines = part
      .map((trap) => stationTrap(prepared, trap))
      .sort(
        (a, b) => ORDER.indexOf(a.state) - ORDER.indexOf(b.state) || (a.hungOn < b.hungOn ? 1 : a.hungOn > b.hungOn ? -1 : 0),
      );
    return {
      station,
      place: index + 1,
      places: parts.length,
      latitude: at?.latitude ?? null,
      longitude: at?.longitude ?? null,
      movedM: movedKm === null ? null : Math.round(movedKm * 1000),
      firstHungOn: part[0]!.hungOn,
      inUse: lines.some((trap) => trap.state === 'hanging'),
      due: lines.some(
        (trap) =>
          (trap.check !== null && trap.check.state !== 'not-due') || (trap.state === 'hanging' && trap.lure?.spent === true),
      ),
      traps: lines,
    };
  });
  return places.reverse();
}
