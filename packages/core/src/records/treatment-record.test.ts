import { expect, test } from 'vitest';
import { checkProgram } from './check-program.ts';
import { emptyProgram } from './program.ts';
import { type TreatmentRecord, treatmentSchema } from './schema.ts';

const plain: TreatmentRecord = {
  fieldId: 'f',
  insect: 'helicoverpa-zea',
  appliedOn: '2026-07-08',
  product: 'Product A (invented)',
  protectsDays: 4,
  reentryHours: 12,
  preharvestDays: 3,
};
const field = {
  fieldId: 'f',
  farm: 'a',
  name: 'f',
  crop: 'sweet-corn',
  growthHabit: null,
  plantedOn: null,
  harvestOn: null,
  latitude: null,
  longitude: null,
  timeZone: null,
  weatherSource: null,
};
const faults = (more: Partial<TreatmentRecord>) =>
  checkProgram({ ...emptyProgram(), fields: [field], treatments: [{ ...plain, ...more }] }).map(({ where, fault }) => [
    where.column,
    fault?.kind,
  ]);

test('a treatment written before the rate was asked for stays as it is', () => {
  expect(treatmentSchema.parse(plain)).toEqual(plain);
  expect(faults({})).toEqual([]);
});

test('a product that nobody knows is a fact, and cannot have a name as well', () => {
  expect(faults({ product: '', productUnknown: true })).toEqual([]);
  expect(faults({ productUnknown: true })).toEqual([['product_unknown', 'product-said']]);
});

test('a rate needs its unit, and a unit its rate', () => {
  expect(faults({ rate: 0.7, rateUnit: 'l-per-ha' })).toEqual([]);
  expect(faults({ rate: 0.7 })).toEqual([['rate_unit', 'rate-without-unit']]);
  expect(faults({ rateUnit: 'l-per-ha' })).toEqual([['rate', 'rate-without-unit']]);
});

test.each(['6:30', '24:00', '06:60', 'morning', '06.30'])('%s is no time of day', (appliedAt) => {
  expect(treatmentSchema.safeParse({ ...plain, appliedAt }).success).toBe(false);
});
