import fc from 'fast-check';
import { expect, test } from 'vitest';
import { editDistance, nearest, nearestFew } from './nearest.ts';

/** Worked examples from the literature: kitten/sitting (Levenshtein), ca/abc (optimal string alignment gives 3). */
test.each([
  ['kitten', 'sitting', 3],
  ['ca', 'abc', 3],
  ['traget', 'target', 1],
  ['', 'abc', 3],
])('%s and %s are %i steps apart', (a, b, distance) => {
  expect(editDistance(a, b)).toBe(distance);
});

test('a distance is none to itself, the same both ways, and at most the longer word', () => {
  const word = fc.string({ maxLength: 8 });
  fc.assert(
    fc.property(word, word, (a, b) => {
      expect(editDistance(a, a)).toBe(0);
      expect(editDistance(a, b)).toBe(editDistance(b, a));
      expect(editDistance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
    }),
  );
});

test('a slip finds its word; something else finds none', () => {
  const columns = ['trap_id', 'checked_on', 'target_count', 'other_count'];
  expect(nearest('Traget Count', columns)).toBe('target_count');
  expect(nearest('moon', columns)).toBeNull();
  expect(nearestFew('T22', ['T2', 'T12', 'B7'])).toEqual(['T2', 'T12']);
});
