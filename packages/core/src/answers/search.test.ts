import { expect, test } from 'vitest';
import { checkOf, decisionOf, fieldOf, programOf, trapOf, treatmentOf } from '../advice/test-program.ts';
import { scopeProgram } from '../records/scope.ts';
import { type SearchHit, searchSchema, searchView } from './search.ts';

const PEOPLE = [{ name: 'Pía Robledo', role: 'scout' as const }];
const program = programOf({
  fields: [
    fieldOf({ fieldId: 'pena', name: 'Peña Alta', farm: 'Robledal' }),
    fieldOf({ fieldId: 'kiln', name: 'Kiln Strip', farm: 'Quernstead' }),
    fieldOf({ fieldId: 'long', name: 'Long Strip', farm: 'Quernstead' }),
  ],
  traps: [
    trapOf({ trapId: 'QU10-HZ', station: 'Quernstead 10', informs: ['kiln'] }),
    trapOf({ trapId: 'QU2-HZ', station: 'Quernstead 2', informs: ['kiln'] }),
    trapOf({ trapId: 'QU1-HZ', station: 'Quernstead 1', informs: ['kiln'], takenDownOn: '2025-07-01' }),
  ],
  checks: [
    checkOf('2025-07-01', 4, { trapId: 'QU2-HZ', note: 'Flooded by the ditch' }),
    checkOf('2025-07-08', 4, { trapId: 'QU2-HZ', note: 'ditch is dry, flooded no more' }),
  ],
  treatments: [treatmentOf('2025-07-01', { fieldId: 'pena', product: 'Elder mixture' })],
  decisions: [decisionOf('2025-07-09', { fieldId: 'pena', note: 'too windy' })],
});

const nameOf = (hit: SearchHit): string => {
  if (hit.kind === 'field') return hit.name;
  if (hit.kind === 'farm') return `${hit.farm} (${hit.fields})`;
  if (hit.kind === 'trap') return hit.trapId;
  if (hit.kind === 'insect') return hit.scientificName;
  if (hit.kind === 'person') return hit.name;
  return `${hit.of} ${hit.on}: ${hit.text}`;
};
const names = (hits: readonly SearchHit[]) => hits.map(nameOf);
const found = (typed: string) => names(searchView(program, PEOPLE, typed).hits);

test('a name is found without its accents, and a field by its farm too', () => {
  expect(found('pena')).toEqual(['Peña Alta']);
  expect(found('ROBLED')).toEqual(['Peña Alta', 'Robledal (1)', 'Pía Robledo']);
  expect(found('strip quern')).toEqual(['Kiln Strip', 'Long Strip']);
  expect(found('pia')).toEqual(['Pía Robledo']);
});

test('traps come in the order of their numbers, those taken down after those that hang', () => {
  expect(found('qu')).toEqual(['Kiln Strip', 'Long Strip', 'Quernstead (2)', 'QU2-HZ', 'QU10-HZ', 'QU1-HZ']);
  // The very name first.
  expect(found('qu1-hz')[0]).toBe('QU1-HZ');
});

test('an insect is found by its common name in either language and by its scientific name', () => {
  for (const typed of ['corn earworm', 'elotero', 'helicoverpa zea', 'zea'])
    expect(found(typed), typed).toContain('Helicoverpa zea');
});

test('what people wrote is found, the newest first, with where it belongs', () => {
  // What begins so comes before what holds it.
  expect(found('flooded')).toEqual([
    'checks 2025-07-01: Flooded by the ditch',
    'checks 2025-07-08: ditch is dry, flooded no more',
  ]);
  expect(found('itch').map((each) => each.slice(0, 17))).toEqual(['checks 2025-07-08', 'checks 2025-07-01']);
  expect(searchView(program, [], 'elder').hits).toMatchObject([{ kind: 'record', of: 'treatments', fieldId: 'pena' }]);
  expect(found('windy')).toEqual(['decisions 2025-07-09: too windy']);
});

test('nothing typed finds nothing, and so do words that are not all there', () => {
  for (const typed of ['', '   ', 'kiln pena', 'zzz', '🦋', '.*', '%']) expect(found(typed), typed).toEqual([]);
});

test('of many the best of each kind are told, and how many there are', () => {
  const many = programOf({
    traps: Array.from({ length: 5_000 }, (_, index) => trapOf({ trapId: `T${index}-HZ`, station: `Station ${index}` })),
  });
  const { hits, of } = searchView(many, [], 'station');
  expect(names(hits)).toEqual(['T0-HZ', 'T1-HZ', 'T2-HZ', 'T3-HZ', 'T4-HZ', 'T5-HZ']);
  expect(of).toBe(5_000);
  expect(names(searchView(many, [], 't4321').hits)).toEqual(['T4321-HZ']);
  expect(searchSchema.parse(searchView(many, PEOPLE, 'p'))).toBeTruthy();
});

test('a grower finds the own farm and nothing of another', () => {
  const own = scopeProgram(program, { role: 'grower', farms: ['Robledal'], disabled: false });
  const hits = (typed: string) => names(searchView(own, [], typed).hits);
  expect(hits('rob')).toEqual(['Peña Alta', 'Robledal (1)']);
  expect(hits('elder')).toEqual(['treatments 2025-07-01: Elder mixture']);
  for (const typed of ['kiln', 'quern', 'qu2', 'flooded']) expect(hits(typed), typed).toEqual([]);
});
