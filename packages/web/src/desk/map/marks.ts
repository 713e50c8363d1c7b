/** What stands on the map: the fields by their most pressing verb, and the stations with what hangs there. */
import {
  day,
  daysBetween,
  type FieldRecord,
  type IsoDay,
  type StationPlace,
  type StationTrap,
  type TrapsView,
  type Verb,
  type WeekCell,
  type WeekView,
} from '@duskwatch/core';
import { VERBS } from '../../shared/advice/verbs.ts';
import type { Place } from '../../shared/places/projection.ts';
import { isDue } from '../../shared/traps/due.ts';

export interface FieldMark extends Place {
  readonly fieldId: string;
  readonly name: string;
  readonly farm: string;
  readonly verb: Verb;
  readonly by: IsoDay | null;
  /** Days past the day by which the verb was due; 0 until then. */
  readonly daysLate: number;
}

export interface StationMark extends Place {
  readonly key: string;
  readonly station: string;
  /** Of the first field that a trap there informs; empty when none does. */
  readonly farm: string;
  /** Those that hang, of the insect and design asked for. */
  readonly traps: readonly StationTrap[];
  /** The newest rate of the highest trap that tells something now, in moths per trap per night; null: none does. */
  readonly perNight: number | null;
  /** The trap that rate is of, else the first. */
  readonly lead: StationTrap;
  readonly due: boolean;
}

export interface StationMarks {
  readonly marks: readonly StationMark[];
  /** Places with a trap hanging and no coordinates. */
  readonly unplaced: readonly StationPlace[];
  /** The highest rate on the map; what sizes are measured against. */
  readonly highest: number;
}

/** Of which insect and design; null: of all. */
export interface Wanted {
  readonly insect: string | null;
  readonly design: string | null;
}

/** A trap tells something now when it hangs, and its newest visit counted while nothing is overdue or unfit. */
export function tells(trap: StationTrap): boolean {
  if (trap.state !== 'hanging' || trap.newest === null) return false;
  return trap.check === null || trap.check.state === 'not-due' || trap.check.state === 'due';
}

const wantedOf =
  ({ insect, design }: Wanted) =>
  (trap: StationTrap) =>
    trap.state === 'hanging' && (insect === null || trap.insect.id === insect) && (design === null || trap.design === design);

/** Only what hangs: a trap taken down stood at a place, and says nothing now. */
export function stationMarks(view: TrapsView, wanted: Wanted): StationMarks {
  const marks: StationMark[] = [];
  const unplaced: StationPlace[] = [];
  for (const place of view.places) {
    const traps = place.traps.filter(wantedOf(wanted));
    const [first] = traps;
    if (!first) continue;
    const { latitude, longitude, station } = place;
    if (latitude === null || longitude === null) {
      unplaced.push(place);
      continue;
    }
    const lead = traps.filter(tells).reduce<StationTrap | null>((best, trap) => (rate(trap) > rate(best) ? trap : best), null);
    marks.push({
      key: place.place === 1 ? station : `${station}|${place.place}`,
      station,
      farm: traps.flatMap(({ informs }) => informs)[0]?.farm ?? '',
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

/** The verb first, then the day it has been due since or is due by. */
const urgency = ({ verb, by, daysLate }: Pick<FieldMark, 'verb' | 'by' | 'daysLate'>): string =>
  `${VERBS.indexOf(verb)}|${String(99_999 - daysLate).padStart(5, '0')}|${by ?? '9999'}`;

const inOrder = <T>(key: (each: T) => string) => {
  const collator = new Intl.Collator('en', { numeric: true });
  return (a: T, b: T) => collator.compare(key(a), key(b));
};

function pressing(cells: readonly WeekCell[], on: IsoDay): Pick<FieldMark, 'verb' | 'by' | 'daysLate'> {
  const told = cells.map(({ advice: { verb, by, dueSince } }) => ({
    verb,
    by,
    daysLate: dueSince === null ? 0 : Math.max(0, daysBetween(day(dueSince), day(on))),
  }));
  return told.sort(inOrder(urgency))[0] ?? { verb: 'none', by: null, daysLate: 0 };
}

/** The fields that have a place, the most pressing first, by the verb of one insect or of all. */
export function fieldMarks(week: WeekView, places: ReadonlyMap<string, FieldRecord>, insect: string | null): FieldMark[] {
  const columns = week.insects.flatMap(({ id }, index) => (insect === null || id === insect ? [index] : []));
  const marks = week.fields.flatMap(({ fieldId, name, farm, cells }): FieldMark[] => {
    const at = places.get(fieldId);
    if (!at || at.latitude === null || at.longitude === null) return [];
    const { latitude, longitude } = at;
    return [
      {
        fieldId,
        name,
        farm,
        latitude,
        longitude,
        ...pressing(
          columns.map((column) => cells[column]!),
          week.on,
        ),
      },
    ];
  });
  return marks.sort(inOrder((mark) => `${urgency(mark)}|${mark.name}`));
}

/** Stations the most pressing first: by the verbs that their traps speak for, then what is due, then by name. */
export function mostPressingFirst(marks: readonly StationMark[], week: WeekView): StationMark[] {
  const cells = new Map(
    week.fields.flatMap(({ fieldId, cells: of }) => of.map((cell, column) => [`${fieldId}|${week.insects[column]!.id}`, cell])),
  );
  const order = (mark: StationMark): string => {
    const spokenFor = mark.traps.flatMap(({ informs, insect }) =>
      informs.flatMap(({ fieldId }) => cells.get(`${fieldId}|${insect.id}`) ?? []),
    );
    return `${urgency(pressing(spokenFor, week.on))}|${mark.due ? 0 : 1}|${mark.station}`;
  };
  return [...marks].sort(inOrder(order));
}

/** Station names of one farm often end in a number: that is enough beside the farm's own name. */
export const shortName = (station: string): string => /(\d{1,2})$/.exec(station)?.[1] ?? '';

const LEAST_RADIUS = 4;
const MOST_RADIUS = 24;
/** Of a station that tells nothing now. */
export const HOLLOW_RADIUS = 8;

/** Area grows with the rate, so that twice the moths look like twice the moths; none is a small dot, not nothing. */
export function radiusOf(perNight: number | null, highest: number): number {
  if (perNight === null) return HOLLOW_RADIUS;
  if (highest === 0) return LEAST_RADIUS;
  return Math.sqrt(LEAST_RADIUS ** 2 + (MOST_RADIUS ** 2 - LEAST_RADIUS ** 2) * (perNight / highest));
}

/** Up to three round rates (1, 2 or 5 × 10ⁿ) that the legend draws, the smallest first; none where nothing was caught. */
export function legendRates(highest: number): number[] {
  if (highest <= 0) return [];
  const rates: number[] = [];
  for (let power = Math.floor(Math.log10(highest)); rates.length < 3; power--)
    for (const step of [5, 2, 1]) {
      const round = Number((step * 10 ** power).toPrecision(1));
      const last = rates.at(-1);
      if (rates.length < 3 && round <= highest && (last === undefined || round <= last / 2.5)) rates.push(round);
    }
  return rates.reverse();
}
