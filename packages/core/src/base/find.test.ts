import { expect, test } from 'vitest';
import { foldText, matchOf, typedWords } from './find.ts';

const match = (typed: string, ...names: string[]) => matchOf(typedWords(typed), names.map(foldText));

test('accents and case do not matter, in what is typed or in what is there', () => {
  expect(match('PENA', 'Peña Alta')).toBe(1);
  expect(match('peña alta', 'Pena Alta')).toBe(0);
  // Written as a letter and an accent of its own, as some keyboards do.
  expect(match('maíz', 'Maíz tardío')).toBe(1);
});

test('the very name comes before its beginning, that before words of it, and those before anything within', () => {
  expect(match('kiln', 'Kiln')).toBe(0);
  expect(match('kiln', 'Kiln Strip')).toBe(1);
  expect(match('strip', 'Kiln Strip')).toBe(2);
  expect(match('strip kiln', 'Kiln Strip')).toBe(2);
  expect(match('quern kiln', 'Kiln Strip', 'Quernstead')).toBe(2);
  expect(match('rip', 'Kiln Strip')).toBe(3);
});

test('every word must be there, and a code is found by its parts', () => {
  expect(match('kiln owl', 'Kiln Strip', 'Quernstead')).toBeNull();
  expect(match('26', 'CR2-MC-26')).toBe(2);
  expect(match('', 'Kiln')).toBeNull();
  expect(match('  ', 'Kiln')).toBeNull();
  // A word found first within another, then at a beginning.
  expect(match('row', 'Arrow Row')).toBe(2);
});
