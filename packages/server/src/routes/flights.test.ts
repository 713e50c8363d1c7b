import { type FlightRows, fieldFlightsSchema, flightRowsSchema } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { twoFarms } from '../people/two-farms.testing.ts';
import { buildServer } from '../server.ts';
import { memoryStore } from '../small-program.testing.ts';

const app = buildServer({ store: memoryStore(twoFarms) });

test('a field’s flights, dates and larvae come in the shape the API states', async () => {
  const answer = await app.inject('/api/fields/birch-1/flights');
  expect(answer.statusCode).toBe(200);
  expect(fieldFlightsSchema.parse(answer.json())).toEqual(answer.json());
  expect((await app.inject('/api/fields/nowhere/flights')).statusCode).toBe(404);
});

test('the program’s flights are told row by row, and going on from a row loses none and repeats none', async () => {
  const all = (await app.inject('/api/flights')).json() as FlightRows;
  expect(flightRowsSchema.parse(all)).toEqual(all);
  expect(all.rows.length).toBeGreaterThan(1);
  expect(all.next).toBeNull();
  expect(all.of).toBe(all.rows.length);
  const rest = (await app.inject('/api/flights?from=1')).json() as FlightRows;
  expect([all.rows[0], ...rest.rows]).toEqual(all.rows);
  expect((await app.inject('/api/flights?from=-1')).statusCode).toBe(400);
});
