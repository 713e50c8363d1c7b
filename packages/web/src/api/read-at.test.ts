import { expect, test } from 'vitest';
import { readingOf, rememberReading, shareAnswers } from './read-at.ts';

const kept = (ms: number) => new Response('{}', { headers: { 'x-duskwatch-read': String(ms) } });
const fresh = new Response('{}');

test('an answer that the device kept tells when it was read, one of the server does not', () => {
  const [old, now] = [{ fields: 1 }, { fields: 1 }];
  rememberReading(old, kept(5_000));
  rememberReading(now, fresh);
  expect(readingOf(old)).toBe(5_000);
  expect(readingOf(now)).toBeNull();
  expect(readingOf(undefined)).toBeNull();
});

test('an answer that is as before is as old as it was read last', () => {
  const first = { fields: [1, 2] };
  const again = { fields: [1, 2] };
  rememberReading(again, kept(7_000));
  const shared = shareAnswers(first, again);
  expect(shared).toBe(first);
  expect(readingOf(shared)).toBe(7_000);
  expect(readingOf(shareAnswers(shared, { fields: [1, 2] }))).toBeNull();
  const other = { fields: [3] };
  rememberReading(other, kept(9_000));
  expect(readingOf(shareAnswers(shared, other))).toBe(9_000);
});
