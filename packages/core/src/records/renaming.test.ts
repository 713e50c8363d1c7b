import { expect, test } from 'vitest';
import { checkOf, fieldOf, programOf, trapOf } from '../advice/test-program.ts';
import { identifierOf, isTaken, renamed } from './renaming.ts';

const program = programOf({
  fields: [fieldOf({ fieldId: 'a', weatherSource: 'yard' }), fieldOf({ fieldId: 'b' })],
  stages: [{ fieldId: 'a', observedOn: '2025-07-01', stage: 'silk' }],
  traps: [trapOf({ trapId: 'T1', informs: ['b', 'a'] }), trapOf({ trapId: 'T2', informs: ['b'] })],
  checks: [checkOf('2025-07-03', 4, { trapId: 'T1' }), checkOf('2025-07-03', 4, { trapId: 'T2' })],
  lures: [{ trapId: 'T1', placedOn: '2025-07-01', lifeDays: 28 }],
  weather: [{ sourceId: 'yard', date: '2025-07-01', tminC: 10, tmaxC: 20, precipitationMm: null }],
});

const said = (all: ReturnType<typeof renamed>) => all.map(({ kind, after }) => ({ kind, ...after }));

test('what names a field, a trap or a source names it by its new identifier, and nothing else is touched', () => {
  expect(said(renamed(program, 'fields', 'a', 'home'))).toMatchObject([
    { kind: 'fields', fieldId: 'home' },
    { kind: 'stages', fieldId: 'home' },
    { kind: 'traps', trapId: 'T1', informs: ['b', 'home'] },
  ]);
  expect(said(renamed(program, 'traps', 'T1', 'gate'))).toMatchObject([
    { kind: 'traps', trapId: 'gate' },
    { kind: 'lures', trapId: 'gate' },
    { kind: 'checks', trapId: 'gate' },
  ]);
  expect(said(renamed(program, 'sources', 'yard', 'hill'))).toMatchObject([
    { kind: 'weather', sourceId: 'hill' },
    { kind: 'fields', fieldId: 'a', weatherSource: 'hill' },
  ]);
  expect(isTaken(program, 'sources', 'yard')).toBe(true);
  expect(isTaken(program, 'traps', 'gate')).toBe(false);
});

test('an identifier is made of names in any script, short, and of no other', () => {
  const taken = new Set(['brook-meadow', 'brook-meadow-2']);
  expect(identifierOf(['Brook', 'Meadow'], (id) => taken.has(id))).toBe('brook-meadow-3');
  expect(identifierOf(['Finca Muñoz', 'Parcela 3; norte|sur'], () => false)).toBe('finca-munoz-parcela-3-norte-sur');
  expect(identifierOf(['北の畑'], () => false)).toBe('北の畑');
  expect(identifierOf([' — '], () => false)).toBe('');
  expect(identifierOf(['x'.repeat(200)], () => false)).toHaveLength(60);
});
