import { expect, test } from 'vitest';
import { fieldOf, programOf } from '../advice/test-program.ts';
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
    from: '2025-07-01',
    to: '2025-07-05',
    missing: 2,
    newestGap: '2025-07-03',
    daysBehind: 2,
    forecastTo: '2025-07-09',
    fields: [{ fieldId: 'a', name: 'Own', farm: 'Alder' }],
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
