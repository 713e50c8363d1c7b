import { expect, it } from 'vitest';
import { throttle } from './throttle.ts';

it('a delay doubles up to the longest, and attempts are forgotten after a while without any', () => {
  let now = 0;
  const guesses = throttle({ free: 2, longestS: 10, memoryS: 100 }, () => now);
  expect([guesses.attempt('ida'), guesses.attempt('ida')]).toEqual([null, null]);
  for (const wait of [1, 2, 4, 8, 10, 10]) {
    expect(guesses.attempt('ida')).toBe(wait);
    now += wait;
    expect(guesses.attempt('ida')).toBeNull();
  }
  now += 100;
  expect([guesses.attempt('ida'), guesses.attempt('ida')]).toEqual([null, null]);
});

it('what is tried too early does not lengthen the wait, and other names wait for nothing', () => {
  let now = 0;
  const guesses = throttle({ free: 0, longestS: 60, memoryS: 600 }, () => now);
  guesses.attempt('ida');
  for (let n = 0; n < 50; n++) expect(guesses.attempt('ida')).toBe(2);
  expect(guesses.attempt('bo')).toBeNull();
  now += 2;
  expect(guesses.attempt('ida')).toBeNull();
});
