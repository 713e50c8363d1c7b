import { afterEach, expect, test, vi } from 'vitest';

afterEach(() => {
  vi.unstubAllGlobals();
  // The next file must not meet the words of the last language asked for.
  vi.resetModules();
});

async function inLanguage(tag: string) {
  vi.resetModules();
  vi.stubGlobal('navigator', { language: tag, languages: [tag] });
  const [naming, { wordingIn }] = await Promise.all([import('./naming.ts'), import('../../text/wording.ts')]);
  const names = { wording: wordingIn('C'), fields: new Map() };
  return (property: string, value: unknown) => [
    naming.propertyLabel('settings', property),
    naming.propertyText('settings', property, value, {}, names),
  ];
}

test('what a program set, as its history tells it', async () => {
  const en = await inLanguage('en-US');
  expect(en('region', 'Northeastern United States')).toEqual(['Region', 'Northeastern United States']);
  expect(en('chosenRules', ['sweet-corn-fall-armyworm-catch-maine'])).toEqual([
    'Rules chosen by name',
    'Catch of fall armyworm in sweet corn: 3 per week (Maine): sends people to look',
  ]);
  expect(en('chosenRules', ['a-rule-no-longer-there'])[1]).toBe('a-rule-no-longer-there');
  const es = await inLanguage('es-MX');
  expect(es('region', 'Northeastern United States')).toEqual(['Región', 'noreste de los Estados Unidos']);
  expect(es('chosenRules', ['sweet-corn-fall-armyworm-catch-maine'])[0]).toBe('Reglas elegidas por su nombre');
  expect(es('chosenRules', ['sweet-corn-fall-armyworm-catch-maine'])[1]).toMatch(
    /^Captura de .* en maíz dulce: 3 por semana \(Maine\)/,
  );
});
