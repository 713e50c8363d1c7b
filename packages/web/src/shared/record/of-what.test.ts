import type { FieldRecord, TrapRecord } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { ofWhat } from './of-what.ts';

const around = {
  fields: [{ fieldId: 'f', name: 'Sparrow Corner', farm: 'Dunnoch End', crop: 'sweet-corn', growthHabit: null } as FieldRecord],
  traps: [{ trapId: 'DU1-HZ-26', station: 'Dunnoch End 1', insect: 'helicoverpa-zea' } as TrapRecord],
};

test('a form says which field, which insect and which day, as far as they are chosen', () => {
  expect(ofWhat('treatments', { fieldId: 'f', insect: 'ostrinia-nubilalis', appliedOn: '2026-07-15' }, around)).toMatch(
    /^Sparrow Corner, Dunnoch End · sweet corn · European corn borer · .*2026$/,
  );
  expect(ofWhat('treatments', { fieldId: 'f', insect: '', appliedOn: '2026-07' }, around)).toBe(
    'Sparrow Corner, Dunnoch End · sweet corn',
  );
});

test('a form of a trap says its name, its station and its insect', () => {
  expect(ofWhat('checks', { trapId: 'DU1-HZ-26', checkedOn: '' }, around)).toMatch(/^DU1-HZ-26 · Dunnoch End 1 · corn earworm/);
});

test('what does not happen on a day says nothing over its boxes', () => {
  expect(ofWhat('fields', { fieldId: 'f' }, around)).toBe(null);
});
