import { emptyProgram } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { noaaStations } from '../noaa/read-noaa-daily.ts';
import { applyAnyMatch } from '../sheet/apply-match.ts';
import { proposeMatch } from '../sheet/propose-match.ts';

/** In the columns of NOAA's daily summaries with their station's place; invented. */
const DAILY = `"STATION","NAME","LATITUDE","LONGITUDE","ELEVATION","DATE","PRCP","TMAX","TMIN"
"XX000000001","INVENTED FIELD","44.9","-63.5","42.1","2025-07-01","0.0","25.1","12.0"
"XX000000001","INVENTED FIELD","44.9","-63.5","42.1","2025-07-02","1.2","26.3","13.4"
"XX000000002","INVENTED HILL","45.2","-63.1","","2025-07-01","0.0","21.0","9.9"
`;

test('the stations of a file of daily summaries are where it says', () => {
  expect(noaaStations(DAILY)).toMatchObject([
    { sourceId: 'XX000000001', name: 'INVENTED FIELD', kind: 'station', latitude: 44.9, longitude: -63.5, elevationM: 42.1 },
    { sourceId: 'XX000000002', name: 'INVENTED HILL', latitude: 45.2, longitude: -63.1, elevationM: null },
  ]);
});

test('a station that stands in two places, or in none that can be, is not placed', () => {
  const rows = (...places: readonly string[]) =>
    noaaStations(`STATION,LATITUDE,LONGITUDE,DATE,TMAX\n${places.map((place) => `A,${place},2025-07-01,20`).join('\n')}\n`);
  expect(rows('44,-63', '44,-63')).toHaveLength(1);
  expect(rows('44,-63', '45,-63')).toEqual([]);
  expect(rows('144,-63')).toEqual([]);
  expect(rows('n/a,-63')).toEqual([]);
});

test('a table of any make says where its station is, beside its days', async () => {
  const text = `Yard logger\nDate,Lat,Long,Tmin (°C),Tmax (°C)\n2025-07-01,44.9,-63.5,12,25\n2025-07-02,44.9,-63.5,13,26\n`;
  const bytes = new TextEncoder().encode(text);
  const looked = await proposeMatch(bytes, 'yard.csv');
  if (!looked.ok || looked.value.proposal.match?.kind !== 'weather') throw new Error(JSON.stringify(looked));
  const match = { ...looked.value.proposal.match, sourceId: 'yard' };
  const read = await applyAnyMatch(bytes, match, emptyProgram(), 'yard.csv');
  expect(read.ok && read.value.weather).toHaveLength(2);
  expect(read.ok && read.value.sources).toMatchObject([{ sourceId: 'yard', latitude: 44.9, longitude: -63.5 }]);
});
