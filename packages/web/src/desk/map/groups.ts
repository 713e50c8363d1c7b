/** The marks of the map as groups to lay out: a farm's together while it is small on the ground, one by one when near. */
import type { Verb } from '@duskwatch/core';
import type { Place } from '../../shared/places/projection.ts';
import { textWidth } from '../../ui/chart/labels.ts';
import { around, type Cluster, type Group, type Item } from './layout.ts';
import { type FieldMark, HOLLOW_RADIUS, radiusOf, type StationMark } from './marks.ts';

type Point = readonly [x: number, y: number];
type Project = (place: Place) => Point;

/** A farm wider or higher than this is looked at from so near that its marks stand by themselves. */
const SMALL = 240;
const GLYPH = 10;
export const STATION = 9;

/** A group and the place on the ground that it moves with. */
export interface GroundGroup extends Group {
  readonly place: Place;
}

/** One mark standing for a whole farm. */
export interface FarmMark {
  readonly key: string;
  readonly farm: string;
  readonly verb: Verb | null;
  readonly fields: readonly FieldMark[];
  readonly stations: readonly StationMark[];
}

export interface Wordings {
  readonly field: (mark: FieldMark) => string;
  readonly station: (mark: StationMark) => string;
  readonly farm: (mark: FarmMark) => string;
}

export const fieldKey = (mark: FieldMark) => `field|${mark.fieldId}`;
export const stationKey = (mark: StationMark) => `station|${mark.key}`;
const farmKey = (farm: string) => `farm|${farm}`;

/** By farm, the farm of the most pressing field first. */
export function farmMarks(fields: readonly FieldMark[], stations: readonly StationMark[]): FarmMark[] {
  const farms = new Map<string, { fields: FieldMark[]; stations: StationMark[] }>();
  const of = (farm: string) => {
    const held = farms.get(farm) ?? { fields: [], stations: [] };
    farms.set(farm, held);
    return held;
  };
  for (const field of fields) of(field.farm).fields.push(field);
  for (const station of stations) of(station.farm).stations.push(station);
  return [...farms].map(([farm, held]) => ({ key: farmKey(farm), farm, verb: held.fields[0]?.verb ?? null, ...held }));
}

/** Fields by their verbs, with the stations around them; `folded`: each farm as one mark, where all are in sight at once. */
export function verbGroups(farms: readonly FarmMark[], project: Project, words: Wordings, folded: boolean): GroundGroup[] {
  return farms.flatMap((farm) => {
    const labels = farm.fields.map((field): Item => {
      const half = field.verb === 'none' ? 3 : GLYPH;
      return { key: fieldKey(field), at: project(field), half, wide: textWidth(words.field(field)) };
    });
    const marks = farm.stations.map(
      (station): Item => ({ key: stationKey(station), at: project(station), half: STATION, wide: 0 }),
    );
    return grouped(farm, labels, marks, words.farm(farm), folded);
  });
}

/** Stations by their rates; what tells nothing is drawn hollow, and without a figure. */
export function rateGroups(farms: readonly FarmMark[], highest: number, project: Project, words: Wordings): GroundGroup[] {
  return farms.flatMap((farm) => {
    const labels = farm.stations.map(
      (station): Item => ({
        key: stationKey(station),
        at: project(station),
        half: station.perNight === null ? HOLLOW_RADIUS : radiusOf(station.perNight, highest),
        wide: textWidth(words.station(station)),
      }),
    );
    return grouped(farm, labels, [], words.farm(farm), false);
  });
}

function grouped(
  farm: FarmMark,
  labels: readonly Item[],
  marks: readonly Item[],
  farmWord: string,
  folded: boolean,
): GroundGroup[] {
  const all = [...labels, ...marks];
  if (all.length === 0) return [];
  const { left, right, top, bottom } = around(all.map(({ at }) => at));
  const heading = farm.farm === '' ? null : textWidth(farm.farm) * 1.05;
  if (farm.farm !== '' && right - left <= SMALL && bottom - top <= SMALL) {
    const middle: Point = [(left + right) / 2, (top + bottom) / 2];
    const asOne = (wide: number): Cluster => ({
      heading: null,
      labels: [{ key: farm.key, at: middle, half: GLYPH, wide }],
      marks: [],
    });
    const ways: Cluster[] = [
      { heading, labels, marks },
      { heading, labels, marks: [] },
    ];
    const place = (farm.fields[0] ?? farm.stations[0])!;
    const folding = [asOne(textWidth(farmWord)), asOne(0)];
    return [{ key: farm.key, place, ways: folded && all.length > 1 ? folding : [...ways, ...folding] }];
  }
  const alone = (item: Item, withWord: boolean): Cluster => {
    const bare = { ...item, wide: withWord ? item.wide : 0 };
    return item.wide > 0 ? { heading: null, labels: [bare], marks: [] } : { heading: null, labels: [], marks: [bare] };
  };
  const places = new Map<string, Place>([
    ...farm.fields.map((field) => [fieldKey(field), field] as const),
    ...farm.stations.map((station) => [stationKey(station), station] as const),
  ]);
  const one = all.map((item): GroundGroup => {
    const ways = item.wide > 0 ? [alone(item, true), alone(item, false)] : [alone(item, true)];
    return { key: item.key, place: places.get(item.key)!, ways };
  });
  if (heading === null) return one;
  // The farm's name by itself, over its northernmost mark.
  const north = all.reduce((best, each) => (each.at[1] < best.at[1] ? each : best));
  const named: Item = { key: `${farm.key}|name`, at: [north.at[0], north.at[1] - 26], half: 0, wide: heading };
  return [
    ...one,
    { key: `${farm.key}|name`, place: places.get(north.key)!, ways: [{ heading: null, labels: [named], marks: [] }] },
  ];
}
