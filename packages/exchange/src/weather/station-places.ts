/** Where the stations of a weather file are, where it says so: far weather is then asked about, and not taken unasked. */
import { leftEmpty, type SourceRecord, sourceSchema, type WeatherMatch } from '@duskwatch/core';
import { cellIn, columnIndex, columnLetters, type Grid } from '../sheet/grid.ts';

/** What a row says of its station, as written. */
export interface StationTold {
  readonly sourceId: string;
  readonly name: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly elevation: string;
}

/** Headings of national archives and of what people export, in degrees and metres. */
export const STATION_HEADINGS = {
  name: /^(name|station[ _]?name|nombre)$/i,
  latitude: /^lat(itude|itud)?\.?$/i,
  longitude: /^(lon|long|lng)(itude|itud)?\.?$/i,
  elevation: /^(elev(ation|aci[oó]n)?|altitude|altitud)\.?(\s*\(?m\)?)?$/i,
} as const;

const figure = (text: string): number | null => (/^-?\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : null);

/** A source for each station whose place is told, and told alike in every row; another place, and it is not known. */
export function stationSources(rows: Iterable<StationTold>): SourceRecord[] {
  const stations = new Map<string, SourceRecord | null>();
  for (const { sourceId, name, latitude, longitude, elevation } of rows) {
    const source = {
      ...leftEmpty('sources'),
      sourceId,
      name: name.trim() === '' ? null : name.trim(),
      kind: 'station' as const,
      latitude: figure(latitude),
      longitude: figure(longitude),
      elevationM: figure(elevation),
      fetching: false,
    };
    if (source.latitude === null || source.longitude === null || !sourceSchema.safeParse(source).success) continue;
    const known = stations.get(sourceId);
    if (known === undefined) stations.set(sourceId, source);
    else if (known !== null && (known.latitude !== source.latitude || known.longitude !== source.longitude))
      stations.set(sourceId, null);
  }
  return [...stations.values()].filter((source) => source !== null);
}

/** The same of tables of weather: what their headings say of places. */
export const sourcesOfTables = (grids: readonly Grid[], match: WeatherMatch): SourceRecord[] =>
  stationSources(toldBy(grids, match));

function* toldBy(grids: readonly Grid[], match: WeatherMatch): Generator<StationTold> {
  for (const table of match.tables) {
    const grid = grids.find(({ sheet }) => sheet === table.sheet) ?? grids[0]!;
    const column = (heading: RegExp) => columnHeaded(grid, table.from, heading);
    const [name, latitude, longitude, elevation] = [
      column(STATION_HEADINGS.name),
      column(STATION_HEADINGS.latitude),
      column(STATION_HEADINGS.longitude),
      column(STATION_HEADINGS.elevation),
    ];
    if (latitude === null || longitude === null) continue;
    for (let row = table.from; row <= table.to; row++) {
      const text = (at: string | null) => (at === null ? '' : cellIn(grid, row - 1, columnIndex(at)).text);
      const sourceId = text(table.station) || (match.sourceId ?? '');
      if (sourceId !== '')
        yield { sourceId, name: text(name), latitude: text(latitude), longitude: text(longitude), elevation: text(elevation) };
    }
  }
}

/** Rows of headings above a table are seldom more. */
const MOST_HEADINGS = 3;

function columnHeaded(grid: Grid, from: number, heading: RegExp): string | null {
  for (let row = from - 2; row >= Math.max(0, from - 1 - MOST_HEADINGS); row--) {
    const at = grid.rows[row]?.findIndex(({ text }) => heading.test(text.trim())) ?? -1;
    if (at >= 0) return columnLetters(at);
  }
  return null;
}
