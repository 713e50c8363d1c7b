import { expect, test } from 'vitest';
import { prepare, weatherSourceOf } from '../advice/prepare.ts';
import { fieldOf, programOf } from '../advice/test-program.ts';
import { day, formatDay } from '../base/day.ts';
import { leftEmpty } from '../records/left-empty.ts';
import type { SourceRecord } from '../records/schema.ts';
import { weatherComparison, weatherComparisonSchema } from './weather-comparison.ts';
import { weatherSourcesSchema, weatherSourcesView } from './weather-sources.ts';

const measured = (date: string, tmaxC: number | null = 27, sourceId = 'yard') => ({
  sourceId,
  date,
  tminC: 14,
  tmaxC,
  precipitationMm: null,
});
const program = programOf({
  fields: [
    fieldOf({ fieldId: 'a', name: 'Own', farm: 'Alder', weatherSource: 'yard' }),
    fieldOf({ fieldId: 'b', name: 'None', farm: 'Birch', weatherSource: 'elsewhere' }),
  ],
  weather: [
    measured('2025-07-01'),
    // The 2nd lacks a record, the 3rd one of its extremes.
    measured('2025-07-03', null),
    measured('2025-07-04'),
    measured('2025-07-05'),
    { ...measured('2025-07-09'), forecastMadeOn: '2025-07-06' },
    measured('2025-07-05', 20, 'ridge'),
  ],
});

test('a source tells how far it reaches, what is missing within, and whom it informs', () => {
  const view = weatherSourcesView(program, '2025-07-08');
  expect(weatherSourcesSchema.parse(view)).toEqual(view);
  expect(view.sources.find(({ sourceId }) => sourceId === 'yard')).toEqual({
    sourceId: 'yard',
    name: null,
    kind: null,
    service: null,
    fetching: false,
    credit: null,
    fillFrom: null,
    filled: 0,
    waiting: false,
    from: '2025-07-01',
    to: '2025-07-05',
    missing: 2,
    newestGap: '2025-07-03',
    daysBehind: 2,
    forecastTo: '2025-07-09',
    fields: [{ fieldId: 'a', name: 'Own', farm: 'Alder', km: null }],
  });
  expect(view.without.map(({ fieldId }) => fieldId)).toEqual(['b']);
});

test('on an earlier day only what was known then counts, and a source of yesterday is not behind', () => {
  const [, yard] = weatherSourcesView(program, '2025-07-05').sources;
  expect(yard).toMatchObject({ to: '2025-07-05', daysBehind: 0, forecastTo: null });
  const [ridge] = weatherSourcesView(program, '2025-07-02').sources;
  expect(ridge).toMatchObject({ sourceId: 'ridge', from: null, to: null, missing: 0, daysBehind: null });
});

test('without weather every field is without', () => {
  const { sources, without } = weatherSourcesView({ ...program, weather: [] }, '2025-07-08');
  expect(sources).toEqual([]);
  expect(without).toHaveLength(2);
});

const source = (sourceId: string, change: Partial<SourceRecord> = {}): SourceRecord => ({
  ...leftEmpty('sources'),
  sourceId,
  fetching: false,
  ...change,
});
/** On one meridian: a degree of latitude is 111.195 km on the sphere of the mean radius. */
const at = (latitude: number) => ({ latitude, longitude: -62 });

test('a source far from a field is asked about and not taken, until somebody names it', () => {
  const fields = [
    fieldOf({ fieldId: 'near', weatherSource: null, ...at(44.3) }),
    fieldOf({ fieldId: 'far', weatherSource: null, ...at(46) }),
    fieldOf({ fieldId: 'unplaced', weatherSource: null, latitude: null, longitude: null }),
  ];
  const one = { ...program, fields, weather: program.weather.filter(({ sourceId }) => sourceId === 'yard') };
  const placed = { ...one, sources: [source('yard', at(44))] };
  const view = weatherSourcesView(placed, '2025-07-08');
  expect(view.sources[0]!.fields.map(({ fieldId, km }) => [fieldId, km === null ? null : Math.round(km)])).toEqual([
    ['near', 33],
    ['unplaced', null],
  ]);
  expect(view.far).toMatchObject([{ fieldId: 'far', sourceId: 'yard' }]);
  expect(view.far[0]!.km).toBeCloseTo(2 * 111.195, 1);
  expect(view.without).toEqual([]);
  expect(weatherSourceOf(prepare(placed, { on: day('2025-07-08') }), fields[1]!)).toBeNull();

  const answered = { ...placed, fields: [fields[0]!, { ...fields[1]!, weatherSource: 'yard' }, fields[2]!] };
  expect(weatherSourcesView(answered, '2025-07-08')).toMatchObject({ far: [], without: [] });
  // Where the source is not known to be, there is nothing to ask.
  expect(weatherSourcesView(one, '2025-07-08').far).toEqual([]);
});

test('a source named for gaps stands in where there is none, and informs no field by itself', () => {
  const fields = [fieldOf({ fieldId: 'a', weatherSource: null })];
  const weather = [
    ...program.weather.filter(({ sourceId }) => sourceId === 'yard'),
    ...['2025-07-01', '2025-07-02', '2025-07-03', '2025-07-06', '2025-07-07'].map((date) => measured(date, 20, 'grid')),
    measured('2025-06-30', 20, 'grid'),
  ];
  const filled = { ...program, fields, weather, sources: [source('yard', { fillFrom: 'grid' })] };
  const [grid, yard] = weatherSourcesView(filled, '2025-07-08').sources;
  // The 2nd, the 3rd, and the 6th and 7th after its newest day; not June, before it began.
  expect(yard).toMatchObject({ missing: 2, filled: 4, fields: [{ fieldId: 'a' }] });
  expect(grid!.fields).toEqual([]);
  const series = prepare(filled, { on: day('2025-07-08') }).weather.get('yard')!;
  expect(formatDay(series.start)).toBe('2025-07-01');
  expect([...series.tmaxC]).toEqual([27, 20, 20, 27, 27, 20, 20]);
  expect([...series.filled!]).toEqual([0, 1, 1, 0, 0, 1, 1]);
});

test('advice waits for a source whose newest day is old', () => {
  expect(weatherSourcesView(program, '2025-07-08').sources.map(({ waiting }) => waiting)).toEqual([false, false]);
  expect(weatherSourcesView(program, '2025-08-08').sources.map(({ waiting }) => waiting)).toEqual([true, true]);
});

test('two sources are held against each other on the days that both have', () => {
  const weather = [
    { ...measured('2025-07-01'), tminC: 10, tmaxC: 20 },
    { ...measured('2025-07-02'), tminC: 11, tmaxC: 21 },
    { ...measured('2025-07-03'), tminC: 12, tmaxC: 22 },
    { ...measured('2025-07-01', 21, 'grid'), tminC: 12 },
    { ...measured('2025-07-02', 18, 'grid'), tminC: 12 },
    { ...measured('2025-07-03', 30, 'grid'), forecastMadeOn: '2025-07-01' },
  ];
  const compared = weatherComparison({ ...program, weather }, '2025-07-08', 'yard', 'grid');
  expect(weatherComparisonSchema.parse(compared)).toEqual(compared);
  // By hand: lows 2 and 1 warmer; highs 1 warmer and 3 cooler. The forecast day is not compared.
  expect(compared).toMatchObject({ days: 2, from: '2025-07-01', to: '2025-07-02' });
  expect(compared.tmin).toEqual({ mean: 1.5, meanAbsolute: 1.5, most: 2, mostOn: '2025-07-01' });
  expect(compared.tmax).toEqual({ mean: -1, meanAbsolute: 2, most: 3, mostOn: '2025-07-02' });
  expect(weatherComparison({ ...program, weather }, '2025-07-08', 'yard', 'ridge')).toMatchObject({ days: 0, tmin: null });
});
