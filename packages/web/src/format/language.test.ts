/** Key texts of one page, in each language, order of dates and unit. */
import { afterEach, expect, test, vi } from 'vitest';

async function texts(tags: readonly string[]) {
  vi.resetModules();
  vi.stubGlobal('navigator', { language: tags[0], languages: tags });
  const [day, number, length, temperature, names] = await Promise.all([
    import('./day.ts'),
    import('./number.ts'),
    import('./length.ts'),
    import('./temperature.ts'),
    import('../text/names.ts'),
  ]);
  return { ...day, ...number, ...length, ...temperature, ...names };
}

afterEach(() => vi.unstubAllGlobals());

test('in the United States the month comes first', async () => {
  const t = await texts(['en-US']);
  expect([t.shortDay('2025-07-13'), t.dayText('2025-07-13'), t.longDay('2025-07-13')]).toEqual([
    'Sun Jul 13',
    'Sun July 13',
    'Sunday, July 13, 2025',
  ]);
  expect(t.daySpan('2025-07-13', '2025-07-16')).toBe('Sun Jul 13 – Wed 16');
});

test('elsewhere in English the day comes first', async () => {
  const t = await texts(['en-CA', 'en']);
  expect([t.shortDay('2025-07-13'), t.longDay('2025-07-13')]).toEqual(['Sun 13 Jul', 'Sunday 13 July 2025']);
  expect(t.daySpan('2025-07-13', '2025-07-16')).toBe('Sun 13 – Wed 16 Jul');
});

test('Spanish has its own dates and names, and the decimal point of Mexico', async () => {
  const t = await texts(['es-MX', 'en-US']);
  expect([t.shortDay('2025-07-13'), t.dayText('2025-07-13'), t.longDay('2025-07-13')]).toEqual([
    'dom 13 jul',
    'dom 13 de julio',
    'domingo 13 de julio de 2025',
  ]);
  expect(t.dayTextFrom('2025-07-13', '2026-07-13')).toBe('dom 13 de julio de 2025');
  expect([t.rateText(3.14), t.rateText(0.001), t.intervalText(0.2, 4.31)]).toEqual(['3.1', 'menos de 0.01', '0.2–4.3']);
  expect([t.cropName('sweet-corn'), t.insectName('helicoverpa-zea')]).not.toContain('sweet corn');
  expect(t.cropText({ crop: 'squash', growthHabit: 'bush' })).toMatch(/ de mata$/);
});

test('a language that is not spoken here is answered in English', async () => {
  expect((await texts(['fr-CA', 'es'])).dayText('2025-07-13')).toBe('dom 13 de julio');
  expect((await texts(['fr-CA'])).dayText('2025-07-13')).toBe('Sun 13 July');
});

test('heights, ways and heat are written in either unit', async () => {
  const t = await texts(['en-GB']);
  expect([t.lengthText(1.2, 'm'), t.lengthText(1.2, 'ft'), t.lengthText(60, 'ft')]).toEqual(['1.2 m', '3.9 ft', '197 ft']);
  expect([t.distanceText(12, 'm'), t.distanceText(12, 'ft')]).toEqual(['12 km', '7.5 mi']);
  expect([t.heatText(1800, 'F', 'F'), t.heatText(1800, 'F', 'C')]).toEqual(['1,800 °F·d', '1,000 °C·d']);
});
