import { expect, test } from 'vitest';
import { uuidv7 } from './uuid.ts';

test('an id is a UUID of version 7 and variant 10 that carries the millisecond it was made in (RFC 9562, 5.7)', () => {
  const before = Date.now();
  const id = uuidv7();
  expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  const ms = Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16);
  expect(ms).toBeGreaterThanOrEqual(before);
  expect(ms).toBeLessThanOrEqual(Date.now());
});

test('ids made by one process are unique and sort in the order they were made, more than 4,096 to a millisecond or with the clock set back', () => {
  const ids = Array.from({ length: 50_000 }, (_, n) => uuidv7(1_800_000_000_000 - Math.floor(n / 20_000) * 5_000));
  expect(new Set(ids).size).toBe(ids.length);
  expect([...ids].sort().join()).toBe(ids.join());
});
