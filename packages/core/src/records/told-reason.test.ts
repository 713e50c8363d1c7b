import { expect, test } from 'vitest';
import { withReason } from './told-reason.ts';

const unfit = (note: string | null) => ({ condition: 'unfit' as const, note });

test.each([
  ['down', 'down', null],
  ['caída. Un ciervo', 'down', 'Un ciervo'],
  ['sin atrayente. down. again', 'lure-missing', 'down. again'],
  ['stolen. gate open', 'stolen', 'gate open'],
] as const)('a note %j of an unfit visit tells %s, and the rest stays a note', (note, reason, rest) => {
  expect(withReason(unfit(note))).toEqual({ condition: 'unfit', unfitReason: reason, note: rest });
});

test('nothing is read out of a note that only resembles one, of a visit that was fit, or where the reason was asked for', () => {
  for (const check of [unfit('downed by wind'), unfit(null), { condition: 'fit' as const, note: 'down' }])
    expect(withReason(check)).toBe(check);
  const asked = { ...unfit('down'), unfitReason: null };
  expect(withReason(asked)).toBe(asked);
});
