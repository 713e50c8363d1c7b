import { expect, test } from 'vitest';

/** Texts that are the same in both languages: names, units, marks, commands, and words that both have. */
const ALIKE = new Set([
  'app.name',
  'import.megabytes',
  'people.people.no',
  'people.people.single.command',
  'settings.units.F',
  'settings.units.C',
  'settings.about.version',
  'round.units.kilobytes',
  'map.north',
  'history.by',
  'record.no',
  'record.rateUnits.l-per-ha',
  'record.rateUnits.ml-per-ha',
  'record.rateUnits.kg-per-ha',
  'record.rateUnits.g-per-ha',
  'record.rateUnits.lb-per-acre',
  'record.rateUnits.oz-per-acre',
  'season.parts.plan',
  'season.numbers.no',
  'season.budget.units.driving-hour',
  'season.budget.units.driving-km',
  'import.units.C',
  'import.units.F',
  'import.units.mm',
  'help.terms.biofix.word',
  'help.keyboard.tab.keys',
  'help.keyboard.escape.keys',
]);

type Texts = { readonly [key: string]: Texts | string | readonly string[] | ((...values: never[]) => string) };
type Text = string | ((...values: unknown[]) => string);

const modules = import.meta.glob<Record<string, Texts>>(['./*.ts', '!./*.test.ts'], { eager: true });
const files = Object.keys(modules).map((path) => path.slice(2));
/** '' is what the pages share. */
const areas: readonly string[] = files.flatMap((file) =>
  /^([\w-]+\.)?en\.ts$/.test(file) ? [file.replace(/\.?en\.ts$/, '')] : [],
);

const fileOf = (area: string, language: 'en' | 'es') => [area, language, 'ts'].filter(Boolean).join('.');

function textsOf(area: string, language: 'en' | 'es'): Map<string, Text> {
  const [texts] = Object.values(modules[`./${fileOf(area, language)}`]!);
  const found = new Map<string, Text>();
  const walk = (each: Texts, path: string) => {
    for (const [key, value] of Object.entries(each)) {
      const at = path ? `${path}.${key}` : key;
      if (typeof value === 'object') walk(value as Texts, at);
      else found.set(at, value as Text);
    }
  };
  walk(texts!, area);
  return found;
}

/** What a text says, and which of the values handed to it are in that. */
function said(text: Text): { readonly words: string; readonly placeholders: readonly boolean[] } {
  if (typeof text === 'string') return { words: text, placeholders: [] };
  // A number reads as whatever a text takes: a figure, a name, a date.
  const values = Array.from({ length: text.length }, (_, index) => 1_000_003 + index * 7);
  const words = String(text(...values));
  return { words, placeholders: values.map((value) => words.includes(String(value))) };
}

test('every area of the app has its words in both languages', () => {
  expect(areas).toContain('people');
  for (const area of areas) expect(files).toContain(fileOf(area, 'es'));
});

test.each(areas)('%j says the same messages in both languages, each with the same values in it', (area) => {
  const [en, es] = [textsOf(area, 'en'), textsOf(area, 'es')];
  expect([...es.keys()].sort()).toEqual([...en.keys()].sort());
  const different = [...en].filter(([key, text]) => {
    const other = es.get(key)!;
    return JSON.stringify(said(text).placeholders) !== JSON.stringify(said(other).placeholders);
  });
  expect(different.map(([key]) => key)).toEqual([]);
});

test.each(areas)('%j leaves no message in English', (area) => {
  const [en, es] = [textsOf(area, 'en'), textsOf(area, 'es')];
  const left = [...en]
    .filter(([key, text]) => /\p{L}/u.test(said(text).words) && said(text).words === said(es.get(key)!).words && !ALIKE.has(key))
    .map(([key, text]) => `${key}: ${said(text).words}`);
  expect(left).toEqual([]);
});

test('what may be alike is alike', () => {
  const texts = (language: 'en' | 'es') => new Map(areas.flatMap((area) => [...textsOf(area, language)]));
  const [en, es] = [texts('en'), texts('es')];
  for (const key of ALIKE) expect(said(en.get(key)!), key).toEqual(said(es.get(key)!));
});

test('no message is empty', () => {
  for (const area of areas)
    for (const language of ['en', 'es'] as const)
      for (const [key, text] of textsOf(area, language)) expect(said(text).words.trim(), key).not.toBe('');
});
