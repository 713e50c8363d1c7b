import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nameFault, nameKey, tidyName } from './names.ts';

test.each([
  ['full-width letters', 'ＩＤＡ Brook'],
  ['other spaces', ' Ida\u00a0\u2003Brook '],
  ['capitals', 'IDA BROOK'],
])('%s make no other name', (_what, written) => {
  expect(nameKey(written)).toBe('ida brook');
});

test('an accent written as one character or as two is the same', () => {
  expect(nameKey('José')).toBe(nameKey('Jose\u0301'));
  expect(nameKey('José')).not.toBe(nameKey('Jose'));
});

test.each([
  ['   ', 'missing'],
  ['x'.repeat(81), 'too-long'],
  ['Ida\u200bBrook', 'invisible-characters'],
  ['Ida\u202eBrook', 'invisible-characters'],
  ['\u3164', 'invisible-characters'],
  ['Ida\0', 'invisible-characters'],
  ['Id\u0430 Brook', 'mixed-alphabets'],
  ['\u0399da Brook', 'mixed-alphabets'],
])('%j is refused as %s', (written, fault) => {
  expect(nameFault(written)).toBe(fault);
});

test.each(["Siobhán O'Neill-Ruiz", 'Ñusta Quispe', 'Łukasz', 'Мария Иванова', '山田 太郎', 'Bo 2', "'; drop table people; --"])(
  '%s is a name',
  (written) => {
    expect(nameFault(written)).toBeNull();
  },
);

test('a name once tidied stays as it is', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (written) => {
      expect(tidyName(tidyName(written))).toBe(tidyName(written));
      expect(nameKey(tidyName(written))).toBe(nameKey(written));
    }),
  );
});
