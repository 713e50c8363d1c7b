/** The stations of one insect, or of all, as marks on a ground. */
import type { StationPlace, StationTrap, TrapsView } from '@duskwatch/core';
import { isDue } from '../../shared/traps/due.ts';

export interface StationMark {
  readonly key: string;
  readonly station: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly traps: readonly StationTrap[];
  /** The highest newest rate among the traps that tell something now, in moths per trap per night; null: none does. */
  readonly perNight: number | null;
  /** The trap that rate is of, else the first. */
  readonly lead: StationTrap;
  readonly due: boolean;
}

export interface Marks {
  readonly marks: readonly StationMark[];
  /** Places with a trap hanging and no coordinates. */
  readonly unplaced: readonly StationPlace[];
  /** The highest rate on the map; what sizes are measured against. */
  readonly highest: number;
}

/** A trap tells something now when it hangs, and its newest visit counted while nothing is overdue or unfit. */
function tells(trap: StationTrap): boolean {
  if (trap.state !== 'hanging' || trap.newest === null) return false;
  return trap.check === null || trap.check.state === 'not-due' || trap.check.state === 'due';
}

/** Only what hangs: a trap taken down stood at a place, and says nothing now. */
export function marksOf(view: TrapsView, insect: string | null): Marks {
  const marks: StationMark[] = [];
  const unplaced: StationPlace[] = [];
  for (const place of view.places) {
    const traps = place.traps.filter((trap) => trap.state === 'hanging' && (insect === null || trap.insect.id === insect));
    const [first] = traps;
    if (!first) continue;
    const { latitude, longitude, station } = place;
    if (latitude === null || longitude === null) {
      unplaced.push(place);
      continue;
    }
    const lead = traps.filter(tells).reduce<StationTrap | null>((best, trap) => (rate(trap) > rate(best) ? trap : best), null);
    marks.push({
      key: `${station}|${place.place}`,
      station,
      latitude,
      longitude,
      traps,
      perNight: lead?.newest?.perNight ?? null,
      lead: lead ?? first,
      due: traps.some(isDue),
    });
  }
  return { marks, unplaced, highest: Math.max(0, ...marks.map((mark) => mark.perNight ?? 0)) };
}

const rate = (trap: StationTrap | null): number => trap?.newest?.perNight ?? -1;

const LEAST_RADIUS = 5;
const MOST_RADIUS = 24;

/** Area grows with the rate, so that twice the moths look like twice the moths; none is a small dot, not nothing. */
export function radiusOf(perNight: number | null, highest: number): number {
  if (perNight === null) return LEAST_RADIUS + 3;
  if (highest === 0) return LEAST_RADIUS;
  return Math.sqrt(LEAST_RADIUS ** 2 + (MOST_RADIUS ** 2 - LEAST_RADIUS ** 2) * (perNight / highest));
}
